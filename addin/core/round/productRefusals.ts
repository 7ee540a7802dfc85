import type { Rate } from '../measuring/quantity';
import type { System } from '../measuring/units';
import { numberInWords, percentInWords, quoted, rateInWords } from './inWords';
import type { Analysis, MixProduct, Refusal } from './round';

// Nothing in a litre of finished solution takes up more than the litre; no powder is that heavy in one.
const MOST = { volume: 1, mass: 2_000 } as const;
const LEAST = { volume: 1e-9, mass: 1e-6 } as const;

/** The ends of a product's numbers, g/mL, g/L, in money, in shares: what refuses them here, on the sheet and in the pane. */
export const PRODUCT_LIMITS = {
  density: { least: 0.01, most: 30 },
  solubility: { least: 0.001, most: 100_000 },
  price: { least: 0, most: 1e9 },
  share: { least: 0, most: 1 },
} as const;

const SHARES = ['N', 'P2O5', 'K2O', 'Fe'] as const satisfies readonly (keyof Analysis)[];

interface Ends {
  readonly least: number;
  readonly most: number;
}

const within = (value: number, { least, most }: Ends): boolean => value >= least && value <= most;

const endsInWords = ({ least, most }: Ends): string => `${numberInWords(least)} to ${numberInWords(most)}`;

const ofSize = (rate: Rate): boolean =>
  within(rate.kind === 'volume' ? rate.volume : rate.mass, {
    least: LEAST[rate.kind],
    most: MOST[rate.kind],
  });

const rateRange = (rate: Rate, system: System): string => {
  const least = rateInWords({ ...rate, [rate.kind]: LEAST[rate.kind] }, system);
  return `${least} to ${rateInWords({ ...rate, [rate.kind]: MOST[rate.kind] }, system)}`;
};

/** What is wrong with one product, as the end of a sentence that names it. */
const oddity = (product: MixProduct, system: System): string | undefined => {
  const { rate, greatestRate, density, solubility, analysis, unitPrice } = product;
  const limits = PRODUCT_LIMITS;
  const odd = (name: string, given: string, allowed: string) =>
    `${name} of ${quoted(product.name)}: ${given} was given; use ${allowed}.`;
  if (!ofSize(rate)) return odd('Rate', rateInWords(rate, system), rateRange(rate, system));
  if (greatestRate !== undefined && !ofSize(greatestRate)) {
    return odd("Label's greatest rate", rateInWords(greatestRate, system), rateRange(greatestRate, system));
  }
  if (density !== undefined && !within(density, limits.density)) {
    return odd('Density', `${numberInWords(density)} g/mL`, `${endsInWords(limits.density)} g/mL`);
  }
  if (solubility !== undefined && !within(solubility, limits.solubility)) {
    return odd('Solubility', `${numberInWords(solubility)} g/L`, `${endsInWords(limits.solubility)} g/L`);
  }
  if (unitPrice !== undefined && !within(unitPrice.price, limits.price)) {
    return odd('Price', numberInWords(unitPrice.price), endsInWords(limits.price));
  }
  const share = SHARES.find((nutrient) => !within(analysis[nutrient] ?? 0, limits.share));
  if (share === undefined) return undefined;
  return odd(share, `${numberInWords(analysis[share]! * 100)} %`, '0 to 100 %');
};

/** The first product of a mix that cannot be planned with; undefined where all can, and for plain water. */
export const productRefusal = (mix: readonly MixProduct[], system: System): Refusal | undefined => {
  const names = new Set<string>();
  let liquid = 0;
  for (const product of mix) {
    const name = product.name.trim().toLowerCase();
    if (names.has(name)) {
      return {
        refused: `Mix: ${quoted(product.name)} was given twice; use one rate a product.`,
        place: 'mix',
      };
    }
    names.add(name);
    const refused = oddity(product, system);
    if (refused !== undefined) return { refused, place: 'mix' };
    if (product.form === 'liquid' && product.rate.kind === 'volume') liquid += product.rate.volume;
  }
  if (liquid <= 1) return undefined;
  return {
    refused: `Mix: liquids of ${percentInWords(liquid)} of the finished solution were given; use 100 % or less in all.`,
    place: 'mix',
  };
};

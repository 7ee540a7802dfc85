import {
  density as gramsPerMillilitre,
  findRateUnit,
  findUnit,
  finestMeasure,
  grams,
  litres,
  nameKey,
  ofMass,
  ofVolume,
  toAmount,
  toRate,
  unitCost,
  type Analysis,
  type MixProduct,
  type Rate,
  type Refusal,
} from '../core';
import type { Measured } from './fields/holds';
import type { Garden, MixRow, Product } from './garden';

const refusal = (refused: string): Refusal => ({ refused, place: 'mix' });

const rateOf = ({ value, unit }: Measured): Rate | undefined => {
  const known = findRateUnit(unit);
  return known && toRate(value, known);
};

/** Per cent of the label as shares; what the label does not state is left out. */
const analysisOf = (product: Product): Analysis =>
  Object.fromEntries(
    (['N', 'P2O5', 'K2O', 'Fe'] as const).flatMap((nutrient) => {
      const percent = product[nutrient];
      return percent === undefined || percent === 0 ? [] : [[nutrient, percent / 100]];
    }),
  );

/** Price of a gram or a litre, in the kind of the rate; undefined where price, pack or density is missing. */
const unitPriceOf = ({ price, pack, density }: Product, rate: Rate): MixProduct['unitPrice'] => {
  const unit = pack && findUnit(pack.unit);
  if (price === undefined || pack === undefined || unit === undefined) return undefined;
  const per = rate.kind === 'mass' ? ofMass(grams(1)) : ofVolume(litres(1));
  const known = density === undefined ? undefined : gramsPerMillilitre(density);
  const one = unitCost(price, toAmount(pack.value, unit), per, known);
  return one === undefined ? undefined : { per: rate.kind === 'mass' ? 'gram' : 'litre', price: one };
};

const mixProduct = (row: MixRow, product: Product | undefined): MixProduct | Refusal => {
  if (!product)
    return refusal(
      `Mix: “${row.product}” is not on the Products sheet; add it there, or take it out of the mix.`,
    );
  if (product.form === 'dry')
    return refusal(`Mix: “${product.name}” is spread dry; use a powder or a liquid in the barrel.`);
  const rate = rateOf(row.rate);
  if (!rate)
    return refusal(
      `Mix: “${row.rate.unit}” was given as the unit of “${row.product}”; use a rate as labels print it, such as tbsp/gal, mL/L or oz/100 gal.`,
    );
  const measuredIn = findRateUnit(row.rate.unit)!.amount;
  const greatestRate = product.greatestRate && rateOf(product.greatestRate);
  const unitPrice = unitPriceOf(product, rate);
  return {
    name: product.name,
    form: product.form,
    rate,
    measuredIn: finestMeasure(measuredIn).unit,
    analysis: analysisOf(product),
    ...(greatestRate === undefined ? {} : { greatestRate }),
    ...(product.density === undefined ? {} : { density: gramsPerMillilitre(product.density) }),
    ...(product.solubility === undefined ? {} : { solubility: product.solubility }),
    ...(unitPrice === undefined ? {} : { unitPrice }),
  };
};

/** The products of the mix in the planner's units, and every one that cannot be used. */
export const roundMix = ({ mix, products }: Garden): { mix: MixProduct[]; refusals: Refusal[] } => {
  const byName = new Map([...products].reverse().map((product) => [nameKey(product.name), product]));
  const made = mix.map((row) => mixProduct(row, byName.get(nameKey(row.product))));
  return {
    mix: made.filter((one) => 'name' in one),
    refusals: made.filter((one) => 'refused' in one),
  };
};

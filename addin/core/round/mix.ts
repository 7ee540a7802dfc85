import { massOf, volumeOf } from '../measuring/amounts';
import { productFor } from '../measuring/dilution';
import { litres } from '../measuring/quantity';
import type { Amount, Litres } from '../measuring/quantity';
import { leastWater } from '../premix/leastWater';
import type { FillProduct, MixProduct } from './round';

/**
 * What is measured for a volume made up: each product's rate × the volume, water and products together.
 *
 * @param makeUp finished solution made up, L, ≥ 0
 */
export const productsFor = (mix: readonly MixProduct[], makeUp: Litres): readonly FillProduct[] =>
  mix.map(({ name, rate }) => ({ name, amount: productFor(rate, makeUp) }));

/**
 * Least hot water for the powders of one fill, L: each powder's own at 0.8 of saturation, added up, as powders that
 * share an ion dissolve less together than alone.
 *
 * @returns 0 without powders; undefined where a powder's solubility, or the density of one measured by volume, is
 *   not known
 * @example 800 g of a powder of which 200 g/L dissolve: 5 L
 */
export const premixWater = (mix: readonly MixProduct[], makeUp: Litres): Litres | undefined => {
  let water = 0;
  for (const { form, rate, density, solubility } of mix) {
    if (form !== 'powder') continue;
    const mass = massOf(productFor(rate, makeUp), density);
    if (mass === undefined || solubility === undefined) return undefined;
    water += leastWater(mass, solubility);
  }
  return litres(water);
};

const priced = (product: MixProduct, amount: Amount): number | undefined => {
  if (product.unitPrice === undefined) return undefined;
  const { per, price } = product.unitPrice;
  const measured = per === 'gram' ? massOf(amount, product.density) : volumeOf(amount, product.density);
  return measured === undefined ? undefined : measured * price;
};

/**
 * Price of the products in a volume made up, in the currency of their prices.
 *
 * @returns undefined without products, or where the price of one, or the density it takes, is not known
 */
export const mixCost = (mix: readonly MixProduct[], madeUp: Litres): number | undefined => {
  if (mix.length === 0) return undefined;
  let total = 0;
  for (const product of mix) {
    const price = priced(product, productFor(product.rate, madeUp));
    if (price === undefined) return undefined;
    total += price;
  }
  return total;
};

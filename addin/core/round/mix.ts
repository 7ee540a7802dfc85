import { massOf, toAmount, volumeOf } from '../measuring/amounts';
import { productFor } from '../measuring/dilution';
import { litres } from '../measuring/quantity';
import type { Amount, Litres } from '../measuring/quantity';
import type { Unit } from '../measuring/units';
import { findUnit } from '../measuring/units';
import { leastWater } from '../premix/leastWater';
import { cardMeasure } from './cardMeasure';
import type { FillProduct, MixProduct } from './round';

/** Unit in which a product is measured. */
const measuringUnit = ({ rate, measuredIn }: MixProduct): Unit =>
  measuredIn?.family === rate.kind ? measuredIn : findUnit(rate.kind === 'volume' ? 'mL' : 'g')!;

/**
 * What goes into a volume made up: of each product its rate × the volume, water and products together, and what is
 * measured for that.
 *
 * @param makeUp finished solution made up, L, > 0
 */
export const productsFor = (mix: readonly MixProduct[], makeUp: Litres): readonly FillProduct[] =>
  mix.map((product) => {
    const { name, rate, greatestRate, density } = product;
    const unit = measuringUnit(product);
    const amount = productFor(rate, makeUp);
    const measure = cardMeasure(amount, unit, greatestRate, makeUp, density)!;
    return { name, amount, measure, measured: toAmount(measure.measured, unit) };
  });

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

/**
 * Price of so much of a product, in the currency of its price.
 *
 * @returns undefined where the price, or the density it takes, is not known
 */
export const priceOf = (product: MixProduct, amount: Amount): number | undefined => {
  if (product.unitPrice === undefined) return undefined;
  const { per, price } = product.unitPrice;
  const measured = per === 'gram' ? massOf(amount, product.density) : volumeOf(amount, product.density);
  return measured === undefined ? undefined : measured * price;
};

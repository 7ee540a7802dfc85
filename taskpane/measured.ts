import { cardMeasure, findRateUnit } from '../addin/core';
import type { Amount, Litres, MixProduct } from '../addin/core';
import type { MixRow } from '../addin/workbook/garden';
import { nameKey } from '../addin/workbook/walk';

import { percentWords } from './quantityWords';

/** A product of the plan and the line of the mix that it came from. */
export interface MixedProduct {
  readonly product: MixProduct;
  readonly row: MixRow;
}

/** The plan's products with their lines of the mix, in the order of the plan. */
export const mixedProducts = (mix: readonly MixProduct[], rows: readonly MixRow[]): MixedProduct[] =>
  mix.flatMap((product) => {
    const row = rows.find((one) => nameKey(one.product) === nameKey(product.name));
    return row === undefined ? [] : [{ product, row }];
  });

/** An error of half a per cent or less is nothing that a kitchen measure can tell. */
const TELLING = 0.005;

/** A measure in words, and what is worth knowing of it: '0.8 % over', 'rounded down for the label'. */
export interface MeasureInWords {
  readonly words: string;
  readonly remark?: string;
}

/**
 * What to measure for a fill in the measures that people own; where it cannot be measured the words say why.
 *
 * @example { words: '3 3/4 cups' }, { words: '1 cup 2 tbsp', remark: '0.8 % over' }
 */
export const measureInWords = (
  { product, row }: MixedProduct,
  amount: Amount,
  volume: Litres,
): MeasureInWords => {
  const unit = findRateUnit(row.rate.unit)?.amount;
  if (unit === undefined) return { words: `The rate unit ${row.rate.unit} is not known.` };
  const measured = cardMeasure(amount, unit, product.rate, product.greatestRate, volume, product.density);
  if ('refused' in measured) return { words: measured.refused };
  const { words, error, rounding } = measured;
  const remarks = [
    Math.abs(error) < TELLING ? '' : `${percentWords(Math.abs(error))} ${error > 0 ? 'over' : 'under'}`,
    rounding === 'down' ? 'rounded down for the label' : '',
  ].filter((remark) => remark !== '');
  return { words, ...(remarks.length === 0 ? {} : { remark: remarks.join(', ') }) };
};

/** @example withRemark({ words: '1 cup 2 tbsp', remark: '0.8 % over' }) // '1 cup 2 tbsp, 0.8 % over' */
export const withRemark = ({ words, remark }: MeasureInWords): string =>
  remark === undefined ? words : `${words}, ${remark}`;

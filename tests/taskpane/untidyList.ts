import type { CellInput } from '../../addin/workbook/change';

/** A grower's list as growers keep them: a title above, words of their own, a row that is no rose. Names are invented. */
export const UNTIDY: readonly (readonly CellInput[])[] = [
  ['Roses at the Mill House', null, null, null, null],
  [null, null, null, null, null],
  ['Variety', 'Bed', 'Type', 'Pot?', 'Qty'],
  ['Amber Kettle', 'Front', 'HT', '', 40],
  ['Quiet Harbour', 'Front', 'hybrid teas', '', 60],
  ['Plum Lantern', 'Long border', 'Flori.', '', 100],
  ['Grey Sparrow', 'Long border', 'H.T.', '', 60],
  ['Tin Whistle', 'Terrace', 'mini', 'pot', 88],
  ['Little Ferry', 'Terrace', 'miniature', 'in pot', 'a dozen or so?'],
];

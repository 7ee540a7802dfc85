/*
 * Numbers outside the range that a comment states are kept out by the callers, who have the words for the user: a
 * function that checks says so under @throws or @returns, and none of the others is called with them.
 */
export * from './measuring/quantity';
export * from './measuring/units';
export * from './measuring/amounts';
export * from './measuring/rates';
export * from './measuring/dilution';
export * from './measuring/kitchenMeasure';
export * from './measuring/measurable';
export * from './measuring/stockMeasure';
export * from './measuring/howMuch';
export * from './measuring/roundedUp';
export * from './clock/inWords';
export * from './nutrients/ppm';
export * from './nutrients/oxides';
export * from './barrels/geometry';
export * from './barrels/weight';
export * from './barrels/fills';
export { studentT } from './flow/studentT';
export * from './flow/timedBucket';
export * from './flow/counts';
export * from './premix/leastWater';
export * from './cost';
export * from './fingerprint';
export * from './names';
export * from './round/round';
export * from './round/planRound';
export * from './round/compareTanks';
export * from './round/cardMeasure';
export * from './round/food';
export * from './round/labelRate';
export {
  barrelWeightText,
  COUNTS_APART,
  countsApartText,
  LABEL_DECIDES,
  LABEL_MAY_BIND,
  notCheckedText,
} from './round/cautions';
export { numberInWords, weightUnitOf } from './round/inWords';
export { premixWater, productsFor } from './round/mix';
export { PRODUCT_LIMITS } from './round/productRefusals';
export { MOST_ROUND_FILLS } from './round/refusals';
export { LEAST_DOSE, RIG_LIMITS, rigRefusal, type RigNumber } from './round/rigRefusals';
export * from './adopt/adoption';
export * from './adopt/sizeClass';
export * from './adopt/proposeAdoption';
export * from './adopt/readList';

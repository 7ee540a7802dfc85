import { columnLetters } from '../address';
import type { FormulaText } from '../change';
import type { CardSources, MeasuredCell } from './cardSources';

/** A cell of the same sheet, such as $B$4 with both fixed. */
export const cell = (row: number, column: number): string => `$${columnLetters(column)}$${row + 1}`;

export const cells = (row: number, column: number, lastRow: number, lastColumn: number): string =>
  `${cell(row, column)}:${cell(lastRow, lastColumn)}`;

export const formula = (text: string): FormulaText => ({ formula: `=${text}` });

/** Text in a formula: quotes doubled. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** The unit in which the measures of a card are counted, for each way a rate is written. */
export const MEASURED_IN = {
  'US volume': 'tsp',
  'imperial volume': 'imp fl oz',
  'metric volume': 'mL',
  'US mass': 'oz',
  'metric mass': 'g',
} as const;

export type MeasuringWay = keyof typeof MEASURED_IN;

const lookUp = (wanted: string, from: string, keys: string): string =>
  `INDEX(${from},MATCH(${wanted},${keys},0))`;

/** A blank cell that INDEX fetches counts as 0, which the functions take as left out. */
export const ofMix = ({ mix }: CardSources, product: string, what: 'rate' | 'rateUnit'): string =>
  lookUp(product, mix[what], mix.product);

export const ofProduct = (
  { products }: CardSources,
  product: string,
  what: Exclude<keyof CardSources['products'], 'product'>,
): string => lookUp(product, products[what], products.product);

export const doseOf = ({ doses }: CardSources, sizeClass: string): string =>
  lookUp(sizeClass, doses.dose, doses.sizeClass);

export const plantsOf = ({ plants }: CardSources, bed: string, sizeClass: string): string =>
  `SUMIFS(${plants.howMany},${plants.bed},${bed},${plants.sizeClass},${sizeClass})`;

/** A measured cell in another unit. */
export const inUnit = ({ value, unit }: MeasuredCell, wanted: string): string =>
  `FEED.INUNITS(${value},${unit},${wanted})`;

/** What runs out of an open wand on the way between so many plants, in the barrel's unit. */
export const spilledBetween = ({ rig }: CardSources, plants: string): string =>
  `IF(AND(${rig.wandStaysOpen}="yes",${rig.betweenPlants}*${plants}>0),` +
  `FEED.DOSE(${rig.betweenPlants}*${plants},${rig.flow.value},${rig.flow.unit},${rig.barrel.unit}),0)`;

/** Fills and heel of one barrel in its own unit: the arguments that FILLS and FILLPLAN share. */
export const barrelArguments = ({ rig }: CardSources): string =>
  `${rig.barrel.value},${rig.barrel.unit},${inUnit(rig.heel, rig.barrel.unit)},${rig.fillLine}`;

/** A time of day as "9:05", without a format code, which some languages spell otherwise. */
export const clock = (time: string): string =>
  `INT(ROUND(${time}*1440,0)/60)&":"&RIGHT("0"&MOD(ROUND(${time}*1440,0),60),2)`;

/** A stretch of days as "about 1 h 35 min", to five minutes. */
export const about = (days: string): string => {
  const minutes = `ROUND(${days}*288,0)*5`;
  const past = `MOD(${minutes},60)`;
  return (
    `"about "&IF(${minutes}>=60,INT(${minutes}/60)&" h"&IF(${past}=0,""," "&${past}&" min"),` +
    `${minutes}&" min")`
  );
};

export const minutesAsDays = (minutes: string): string => `(${minutes})/1440`;

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

export const plantsOf = ({ plants }: CardSources, bed: string, sizeClass: string): string =>
  `SUMIFS(${plants.howMany},${plants.bed},${bed},${plants.sizeClass},${sizeClass})`;

/** A measured cell in another unit. */
export const inUnit = ({ value, unit }: MeasuredCell, wanted: string): string =>
  `FEED.INUNITS(${value},${unit},${wanted})`;

/** The value of a cell that counts as something else while it is blank. */
export const orElse = (reference: string, blank: number): string =>
  `IF(ISBLANK(${reference}),${blank},${reference})`;

/** True where the wand stays open between plants. */
export const wandOpen = ({ rig }: CardSources): string =>
  `OR(TRIM(${rig.wandStaysOpen})="yes",${rig.wandStaysOpen}=TRUE)`;

/** The core's rounding to whole minutes. */
export const wholeMinutes = (minutes: string): string => `INT(${minutes}+0.500001)`;

/** The core's `clock` as a formula, without a format code, which some languages spell otherwise. */
export const clockWords = (whole: string): string =>
  `INT(MOD(${whole},1440)/60)&":"&RIGHT("0"&MOD(${whole},60),2)&IF(${whole}<1440,"",` +
  `IF(${whole}<2880," next day",", "&INT(${whole}/1440)&" days on"))`;

import type { Injector, Nullable } from '@univerjs/core';
import {
  IFormulaCurrentConfigService,
  type IFormulaData,
  type IFormulaDataItem,
} from '@univerjs/preset-sheets-core';
import { relativeTo } from './relativeTo';

/** Formulas of a sheet: rows, then columns. */
type SheetFormulas = Record<number, Record<number, Nullable<IFormulaDataItem>>>;
/** A formula and the rows below that it was copied to. */
interface Run {
  readonly row: number;
  readonly first: IFormulaDataItem;
  readonly relative: string;
}

const COPIES = 'copies-';

/** The same formulas, those that are copied down a column told as copies of the first. */
const shared = (formulas: SheetFormulas): SheetFormulas => {
  const runs = new Map<number, Run>();
  const told: SheetFormulas = {};
  for (const [key, line] of Object.entries(formulas)) {
    const row = Number(key);
    for (const [place, item] of Object.entries(line ?? {})) {
      const column = Number(place);
      const cells = (told[row] ??= {});
      cells[column] = item;
      const relative = item?.f && !item.si ? relativeTo(row, item.f) : undefined;
      if (!item || relative === undefined) continue;
      const run = runs.get(column);
      if (run?.relative !== relative) {
        runs.set(column, { row, first: item, relative });
        continue;
      }
      const si = `${COPIES}${run.row}-${column}`;
      told[run.row]![column] = { ...run.first, si };
      cells[column] = { f: run.first.f, si, x: 0, y: row - run.row };
    }
  }
  return told;
};

/**
 * Lets the grid take a formula that is copied down a column apart once, and not once a row at every calculation: the
 * calculation is told of copies as the grid itself tells them. The cells keep each its own formula.
 */
export const shareFormulas = (injector: Injector): void => {
  const calculation = injector.get(IFormulaCurrentConfigService);
  const load = calculation.load.bind(calculation);
  calculation.load = (data) => {
    const formulaData: IFormulaData = {};
    for (const [unit, sheets] of Object.entries(data.formulaData))
      formulaData[unit] = Object.fromEntries(
        Object.entries(sheets ?? {}).map(([sheet, formulas]) => [sheet, shared(formulas ?? {})]),
      );
    load({ ...data, formulaData });
  };
};

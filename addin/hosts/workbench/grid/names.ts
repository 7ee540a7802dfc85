import type { Worksheet } from '@univerjs/core';
import {
  IDefinedNamesService,
  IFunctionService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  type IDefinedNamesServiceParam,
} from '@univerjs/preset-sheets-core';

import type { Patches } from './cellPatches';
import { WHOLE_BOOK } from './kept';
import { inside, openBook, type Grid } from './openGrid';
import { formulaOf, worksheets } from './readBook';

const definitions = (grid: Grid): IDefinedNamesServiceParam[] =>
  Object.values(inside(grid).get(IDefinedNamesService).getDefinedNameMap(openBook(grid).getId()) ?? {});

/** The definition of a name that holds in every sheet; letter case is ignored. */
export const nameOf = (grid: Grid, name: string): IDefinedNamesServiceParam | undefined =>
  definitions(grid).find(
    (one) => one.name.toLowerCase() === name.toLowerCase() && (one.localSheetId ?? WHOLE_BOOK) === WHOLE_BOOK,
  );

/** Every formula that uses a name, as it stands, by sheet. */
export const formulasWith = (grid: Grid, name: string): [Worksheet, Patches][] => {
  const used = new RegExp(`(?<![\\w.])${name.replaceAll('.', '\\.')}(?![\\w.(])`, 'i');
  const found: [Worksheet, Patches][] = [];
  for (const sheet of worksheets(grid)) {
    const patches: Patches = {};
    sheet.getCellMatrix().forValue((row, column, cell) => {
      const formula = cell ? formulaOf(grid, sheet, row, column, cell) : undefined;
      if (formula && used.test(formula)) (patches[row] ??= {})[column] = { f: formula, si: null };
    });
    if (Object.keys(patches).length > 0) found.push([sheet, patches]);
  }
  return found;
};

/**
 * The grid keeps formulas as it once took them apart, with what a name then stood for; each time a name changes,
 * undo included, those are taken apart anew.
 */
export const followNames = (grid: Grid): void => {
  const functions = inside(grid).get(IFunctionService);
  grid.commands.onCommandExecuted(({ id, params }) => {
    if (id !== SetDefinedNameMutation.id && id !== RemoveDefinedNameMutation.id) return;
    const { name } = params as IDefinedNamesServiceParam;
    functions.deleteFormulaAstCacheKey(name, name.toLowerCase(), name.toUpperCase());
  });
};

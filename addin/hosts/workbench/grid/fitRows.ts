import { WrapStrategy, type ICellData, type IStyleData, type Nullable, type Worksheet } from '@univerjs/core';
import { SheetInterceptorService } from '@univerjs/preset-sheets-core';

import { watchGrid } from './gridEvents';
import { inside, openBook, type Grid } from './openGrid';
import { worksheets } from './readBook';

/** Fonts larger than this need a taller row, points. */
const ORDINARY_SIZE = 11;
/** A change is followed this long after the last of its kind, ms. */
const PAUSE = 200;
/** Rows fitted at one go; a longer list has rows of one height. */
const MOST_ROWS = 1_000;

/** Rows with a large font or with text on several lines, where the height follows from what the cells show. */
const rowsToFit = (sheet: Worksheet, styleOf: (cell: ICellData) => Nullable<IStyleData>): number[] => {
  const rows = new Set<number>();
  sheet.getCellMatrix().forValue((row, _column, cell) => {
    const style = cell ? styleOf(cell) : undefined;
    if (style && ((style.fs ?? 0) > ORDINARY_SIZE || style.tb === WrapStrategy.WRAP)) rows.add(row);
    return rows.size < MOST_ROWS;
  });
  return [...rows].sort((a, b) => a - b);
};

/**
 * Makes rows as high as what they show, results of formulas included: the grid itself measures a row when it is
 * written, before its formulas are computed. Heights that a user set stay; nothing of it goes on the undo.
 */
export const fitRows = async (grid: Grid): Promise<void> => {
  const unitId = openBook(grid).getId();
  await grid.settled();
  if (grid.opening || openBook(grid).getId() !== unitId) return;
  const styles = openBook(grid).getWorkbook().getStyles();
  for (const sheet of worksheets(grid)) {
    const endColumn = sheet.getColumnCount() - 1;
    const ranges = rowsToFit(sheet, (cell) => styles.getStyleByCell(cell)).map((row) => ({
      startRow: row,
      endRow: row,
      startColumn: 0,
      endColumn,
    }));
    if (ranges.length === 0) continue;
    const { redos } = inside(grid)
      .get(SheetInterceptorService)
      .generateMutationsOfAutoHeight({ unitId, subUnitId: sheet.getSheetId(), ranges });
    for (const { id, params } of redos) grid.commands.syncExecuteCommand(id, params);
  }
};

/** Fits the rows again after every change: a measure that grew must not be cut off where it is read from the sheet. */
export const keepRowsFitted = (grid: Grid): void => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const fit = (): void =>
    void fitRows(grid).catch((reason: unknown) => console.warn('Rows were not fitted.', reason));
  watchGrid(grid, {
    changed: () => {
      clearTimeout(timer);
      timer = setTimeout(fit, PAUSE);
    },
    selected: () => undefined,
  });
};

import type { Area, ChartEdit } from '../change';
import { sheetNameRefusal } from '../validateChange';
import { WorkbookError } from '../port';
import type { Overlay, MemoryBook, MemoryCell, MemorySheet } from './book';
import { moveFormulaDown, renameInFormula, shiftArea, shiftFormula, shiftIndex, type Shift } from './shift';

/**
 * What a user does to a workbook by hand, with the consequences a spreadsheet gives it: names, formulas, notes,
 * lists and charts follow. Tests use these to play the user.
 */

const kept = <T>(items: readonly T[], next: (item: T) => T | undefined): T[] =>
  items.flatMap((item) => {
    const moved = next(item);
    return moved === undefined ? [] : [moved];
  });

const keptKeys = <T>(
  map: ReadonlyMap<number, T>,
  next: (key: number) => number | undefined,
): Map<number, T> =>
  new Map(
    [...map].flatMap(([key, value]) => {
      const moved = next(key);
      return moved === undefined ? [] : [[moved, value] as const];
    }),
  );

const withFormulas = (
  cells: MemorySheet['cells'],
  next: (formula: string, row: number) => string,
): Map<number, ReadonlyMap<number, MemoryCell>> =>
  new Map(
    [...cells].map(([row, inRow]) => [
      row,
      new Map(
        [...inRow].map(([column, cell]) => [
          column,
          cell.formula === undefined ? cell : { ...cell, formula: next(cell.formula, row) },
        ]),
      ),
    ]),
  );

const movedOverlay = (overlay: Overlay, move: (area: Area) => Area | undefined): Overlay | undefined => {
  const area = move(overlay.area);
  if (!area) return undefined;
  if (overlay.kind !== 'list') return { ...overlay, area };
  const source = 'length' in overlay.list.source ? overlay.list.source : move(overlay.list.source);
  return source && { ...overlay, area, list: { ...overlay.list, area, source } };
};

const movedChart = (chart: ChartEdit, move: (area: Area) => Area | undefined): ChartEdit | undefined => {
  const labels = move(chart.labels);
  const series = kept(chart.series, (one) => {
    const values = move(one.values);
    return values && { ...one, values };
  });
  const at = move({ sheet: chart.sheet, row: chart.row, column: chart.column, rows: 1, columns: 1 });
  return labels && { ...chart, sheet: at?.sheet ?? chart.sheet, row: at?.row ?? chart.row, labels, series };
};

const movedSheet = (sheet: MemorySheet, move: (area: Area) => Area | undefined): MemorySheet => {
  const page = sheet.page && move(sheet.page.area);
  return {
    ...sheet,
    overlays: kept(sheet.overlays, (overlay) => movedOverlay(overlay, move)),
    merges: kept(sheet.merges, move),
    charts: kept(sheet.charts, (chart) => movedChart(chart, move)),
    page: sheet.page && page && { ...sheet.page, area: page },
  };
};

const movedNames = (book: MemoryBook, move: (area: Area) => Area | undefined): MemoryBook['names'] =>
  Object.fromEntries(
    kept(Object.entries(book.names), ([name, area]) => {
      const moved = move(area);
      return moved && ([name, moved] as [string, Area]);
    }),
  );

/** Puts rows or columns in, or takes them out. */
export const shiftBook = (book: MemoryBook, shift: Shift): MemoryBook => {
  const move = (area: Area) => shiftArea(area, shift);
  const index = (i: number) => shiftIndex(i, shift);
  const sheets = book.sheets.map((sheet) => {
    const next = movedSheet(sheet, move);
    const formulas = withFormulas(next.cells, (formula) => shiftFormula(formula, sheet.name, shift));
    if (sheet.name !== shift.sheet) return { ...next, cells: formulas };
    if (shift.axis === 'row') return { ...next, cells: keptKeys(formulas, index) };
    const cells = new Map([...formulas].map(([row, inRow]) => [row, keptKeys(inRow, index)]));
    return { ...next, cells, widths: keptKeys(next.widths, index) };
  });
  return { ...book, sheets, names: movedNames(book, move) };
};

export const renameSheet = (book: MemoryBook, from: string, to: string): MemoryBook => {
  const refusal = sheetNameRefusal(to);
  if (refusal) throw new WorkbookError(refusal);
  const move = (area: Area): Area => (area.sheet === from ? { ...area, sheet: to } : area);
  const sheets = book.sheets.map((sheet) => {
    const next = movedSheet(sheet, move);
    return {
      ...next,
      name: sheet.name === from ? to : sheet.name,
      cells: withFormulas(next.cells, (formula) => renameInFormula(formula, from, to)),
    };
  });
  const active = book.active.sheet === from ? { ...book.active, sheet: to } : book.active;
  return { sheets, names: movedNames(book, move), active };
};

/** Puts a sheet at another place among the tabs. */
export const moveSheet = (book: MemoryBook, name: string, to: number): MemoryBook => {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new WorkbookError(`There is no sheet “${name}”.`);
  const others = book.sheets.filter((candidate) => candidate !== sheet);
  return { ...book, sheets: [...others.slice(0, to), sheet, ...others.slice(to)] };
};

/** Takes a sheet away; names that pointed to it point nowhere. */
export const deleteSheet = (book: MemoryBook, name: string): MemoryBook => {
  const sheets = book.sheets.filter((sheet) => sheet.name !== name);
  const [first] = sheets;
  if (!first) throw new WorkbookError('The last sheet of a workbook cannot be deleted.');
  const names = movedNames(book, (area) => (area.sheet === name ? undefined : area));
  return { sheets, names, active: { sheet: first.name, row: 0, column: 0 } };
};

/** Sorts whole rows: row first + i becomes what row first + order[i] was. Formulas move with their rows. */
export const reorderRows = (
  book: MemoryBook,
  name: string,
  first: number,
  order: readonly number[],
): MemoryBook => ({
  ...book,
  sheets: book.sheets.map((sheet) => {
    if (sheet.name !== name) return sheet;
    const cells = new Map(sheet.cells);
    order.forEach((from, to) => {
      const source = sheet.cells.get(first + from);
      if (!source) cells.delete(first + to);
      else
        cells.set(
          first + to,
          new Map(
            [...source].map(([column, cell]) => [
              column,
              cell.formula === undefined
                ? cell
                : { ...cell, formula: moveFormulaDown(cell.formula, to - from) },
            ]),
          ),
        );
    });
    return { ...sheet, cells };
  }),
});

import { sameArea } from '../address';
import type { Area, CellInput, Edit } from '../change';
import {
  emptySheet,
  withSheet,
  type Overlay,
  type MemoryBook,
  type MemoryCell,
  type MemorySheet,
} from './book';

/** Supplies what a formula comes to, for a workbook that computes nothing itself. */
export type Answer = (formula: string, sheet: string, row: number, column: number) => MemoryCell['value'];

const cellFor = (input: CellInput, answer: () => MemoryCell['value']): MemoryCell | undefined => {
  if (input === null || input === '') return undefined;
  return typeof input === 'object' ? { value: answer(), formula: input.formula } : { value: input };
};

const written = (sheet: MemorySheet, edit: Edit & { kind: 'write' }, answer: Answer): MemorySheet => {
  const cells = new Map(sheet.cells);
  edit.cells.forEach((line, down) => {
    const row = edit.row + down;
    const inRow = new Map(cells.get(row));
    line.forEach((input, across) => {
      const column = edit.column + across;
      if (input === undefined) return;
      const cell = cellFor(input, () =>
        typeof input === 'object' && input !== null ? answer(input.formula, sheet.name, row, column) : null,
      );
      if (cell) inRow.set(column, cell);
      else inRow.delete(column);
    });
    if (inRow.size > 0) cells.set(row, inRow);
    else cells.delete(row);
  });
  return { ...sheet, cells };
};

const withOverlay = (sheet: MemorySheet, overlay: Overlay): MemorySheet => ({
  ...sheet,
  overlays: [
    ...sheet.overlays.filter((old) => old.kind !== overlay.kind || !sameArea(old.area, overlay.area)),
    overlay,
  ],
});

const widened = (sheet: MemorySheet, edit: Edit & { kind: 'width' }): MemorySheet => {
  const widths = new Map(sheet.widths);
  for (let column = edit.column; column < edit.column + edit.columns; column++)
    widths.set(column, edit.characters);
  return { ...sheet, widths };
};

const named = (book: MemoryBook, name: string, area: Area): MemoryBook => {
  const others = Object.entries(book.names).filter(([known]) => known.toLowerCase() !== name.toLowerCase());
  return { ...book, names: Object.fromEntries([...others, [name, area]]) };
};

/** The book after one edit that has been validated. */
export const applyEdit = (book: MemoryBook, edit: Edit, answer: Answer): MemoryBook => {
  const on = (sheet: string, next: (sheet: MemorySheet) => MemorySheet) => withSheet(book, sheet, next);
  switch (edit.kind) {
    case 'addSheet':
      return { ...book, sheets: [...book.sheets, emptySheet(edit.sheet)] };
    case 'write':
      return on(edit.sheet, (sheet) => written(sheet, edit, answer));
    case 'format':
    case 'style':
    case 'wrap':
      return on(edit.area.sheet, (sheet) => withOverlay(sheet, edit));
    case 'list':
      return on(edit.area.sheet, (sheet) => {
        const { area, source, message } = edit;
        return withOverlay(sheet, { kind: 'list', area, list: { area, source, message } });
      });
    case 'note': {
      const area = { sheet: edit.sheet, row: edit.row, column: edit.column, rows: 1, columns: 1 };
      return on(edit.sheet, (sheet) => withOverlay(sheet, { kind: 'note', area, text: edit.text }));
    }
    case 'width':
      return on(edit.sheet, (sheet) => widened(sheet, edit));
    case 'merge':
      return on(edit.area.sheet, (sheet) =>
        sheet.merges.some((merge) => sameArea(merge, edit.area))
          ? sheet
          : { ...sheet, merges: [...sheet.merges, edit.area] },
      );
    case 'freeze':
      return on(edit.sheet, (sheet) => ({ ...sheet, frozen: { rows: edit.rows, columns: edit.columns } }));
    case 'name':
      return named(book, edit.name, edit.area);
    case 'chart':
      return on(edit.sheet, (sheet) => ({
        ...sheet,
        charts: [...sheet.charts.filter((chart) => chart.id !== edit.id), edit],
      }));
    case 'page': {
      const { area, landscape, repeatRows, pagesHigh } = edit;
      return on(area.sheet, (sheet) => ({ ...sheet, page: { area, landscape, repeatRows, pagesHigh } }));
    }
    case 'activate':
      return { ...book, active: { sheet: edit.sheet, row: edit.row, column: edit.column } };
  }
};

import { fixedReference } from '../../../../addin/workbook/address';
import type { CellValue } from '../../../../addin/workbook/change';
import { emptySheet, type MemoryBook, type MemoryCell } from '../../../../addin/workbook/memory/book';
import { areaOfReference } from '../../../../addin/workbook/references';
import { openHeadlessGrid } from '../../../workbook/headlessGrid';

/** A cell by its place "row,column" on a sheet. */
export interface PlacedCell {
  readonly value: string | number | boolean;
  readonly formula?: string;
  readonly error?: boolean;
}

/** A workbook as far as it computes. */
export interface Computed {
  readonly sheets: readonly {
    readonly id: string;
    readonly name: string;
    readonly cells: ReadonlyMap<string, PlacedCell>;
  }[];
  readonly names: readonly { readonly name: string; readonly formula: string }[];
}

const STRINGS = /("(?:[^"]|"")*")/;

/** A formula with what stands outside its strings changed. */
export const outsideStrings = (formula: string, change: (part: string) => string): string =>
  formula
    .split(STRINGS)
    .map((part, at) => (at % 2 === 1 ? part : change(part)))
    .join('');

export const placeOf = (text: string): [number, number] => text.split(',').map(Number) as [number, number];

/** Names written out, because the engine behind knows none. */
const withoutNames = (formula: string, names: Computed['names']): string =>
  outsideStrings(formula, (part) =>
    names.reduce((text, { name, formula: stands }) => {
      const area = areaOfReference(stands);
      if (!area) return text;
      const word = new RegExp(`(?<![\\w.!'])${name.replaceAll('.', '\\.')}(?![\\w.(])`, 'gi');
      return text.replace(word, () => fixedReference(area));
    }, part),
  );

const inMemory = ({ sheets, names }: Computed): MemoryBook => ({
  names: {},
  active: { sheet: '', row: 0, column: 0 },
  sheets: sheets.map((sheet) => {
    const cells = new Map<number, Map<number, MemoryCell>>();
    for (const [place, { value, formula }] of sheet.cells) {
      const [row, column] = placeOf(place);
      if (!cells.has(row)) cells.set(row, new Map());
      const told = {
        value: value as CellValue,
        ...(formula ? { formula: withoutNames(formula, names) } : {}),
      };
      cells.get(row)!.set(column, told);
    }
    return { ...emptySheet(sheet.name), cells };
  }),
});

/** What workbooks came to that were computed before. */
const answers = new Map<string, ReadonlyMap<string, PlacedCell>>();

/** What the formulas of a workbook come to, by "sheet id!row,column", as the workbench's formula engine has it. */
export const computedCells = async (book: Computed): Promise<ReadonlyMap<string, PlacedCell>> => {
  const asked = JSON.stringify([
    book.names,
    book.sheets.map(({ name, id, cells }) => [name, id, [...cells]]),
  ]);
  const known = answers.get(asked);
  if (known) return known;
  const found = new Map<string, PlacedCell>();
  const withFormulas = book.sheets.flatMap((sheet) =>
    [...sheet.cells].flatMap(([place, { formula }]) => (formula === undefined ? [] : [{ sheet, place }])),
  );
  if (withFormulas.length > 0) {
    const grid = await openHeadlessGrid(inMemory(book));
    for (const { sheet, place } of withFormulas) {
      const value = grid.value(sheet.name, ...placeOf(place)) as string | number | boolean;
      const error = typeof value === 'string' && /^#[A-Z/0!?]+$/.test(value);
      found.set(`${sheet.id}!${place}`, { value, ...(error ? { error } : {}) });
    }
    grid.close();
  }
  answers.set(asked, found);
  return found;
};

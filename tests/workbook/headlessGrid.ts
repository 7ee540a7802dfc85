import {
  CellValueType,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
  type ICellData,
} from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { ArrayValueObject, UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { UniverSheetsPlugin } from '@univerjs/sheets';
import { UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets-formula/facade';
import '@univerjs/sheets/facade';
import { call, catalogue, type RawArgument, type RawScalar } from '../../functions';
import { fillMissingRows } from '../../addin/hosts/workbench/grid/missingRows';
import type { Area, CellInput } from '../../addin/workbook/change';
import type { MemoryBook, MemoryCell } from '../../addin/workbook/memory/book';

/** The workbench's formula engine without a page: what the formulas of a memory workbook come to. */
export interface HeadlessGrid {
  /** A number or text, an error such as '#N/A', or '' for a cell that shows nothing. */
  value(sheet: string, row: number, column: number): unknown;
  /** The same for every cell of an area. */
  values(area: Area): readonly (readonly unknown[])[];
  set(sheet: string, row: number, column: number, value: string | number | null): Promise<void>;
  /** One cell after the other; resolves once everything is worked out. */
  type(cells: readonly { sheet: string; row: number; column: number; input: CellInput }[]): Promise<void>;
  /** Takes whole rows out, or puts empty ones in. */
  rows(how: 'delete' | 'insert', sheet: string, at: number): Promise<void>;
  close(): void;
}

const ERRORS = new Set(['#N/A', '#VALUE!', '#REF!', '#DIV/0!', '#NUM!', '#NAME?', '#NULL!']);

const scalar = (value: unknown): RawScalar => {
  if (typeof value === 'string') return ERRORS.has(value) ? { error: value } : value;
  return typeof value === 'number' || typeof value === 'boolean' ? value : null;
};
const argument = (value: unknown): RawArgument =>
  Array.isArray(value) ? value.map((row: unknown[]) => row.map(scalar)) : scalar(value);

const dataOf = (cell: MemoryCell): ICellData => {
  if (cell.formula !== undefined) return { f: cell.formula };
  if (typeof cell.value === 'number') return { v: cell.value, t: CellValueType.NUMBER };
  if (typeof cell.value === 'boolean') return { v: cell.value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: cell.value ?? '', t: CellValueType.STRING };
};

const sheetData = (sheet: MemoryBook['sheets'][number], id: string) => ({
  id,
  name: sheet.name,
  rowCount: 3000,
  columnCount: 120,
  cellData: Object.fromEntries(
    [...sheet.cells].map(([row, cells]) => [
      row,
      Object.fromEntries([...cells].map(([column, cell]) => [column, dataOf(cell)])),
    ]),
  ),
});

fillMissingRows(ArrayValueObject);

let opened = 0;

export const openHeadlessGrid = async (book: MemoryBook): Promise<HeadlessGrid> => {
  const univer = new Univer({
    logLevel: LogLevel.ERROR,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
  });
  univer.registerPlugin(UniverFormulaEnginePlugin);
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin);
  opened += 1;
  const sheets = book.sheets.map((sheet, index) => sheetData(sheet, `s${opened}-${index}`));
  const api = FUniver.newAPI(univer);
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, {
    id: `w${opened}`,
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  });
  const formulas = api.getFormula();
  for (const { name } of catalogue)
    formulas.registerFunction(
      `FEED.${name}`,
      (...given: unknown[]) => {
        const outcome = call(name, given.map(argument));
        return ('error' in outcome ? outcome.error : outcome.value) as never;
      },
      name,
    );
  // Asked for after a change: the time within which a calculation begins does not run while the change is made.
  const settled = () => formulas.onCalculationResultApplied(120_000);
  formulas.executeCalculation();
  await settled();
  const range = (sheet: string, row: number, column: number) =>
    api.getActiveWorkbook()!.getSheetByName(sheet)!.getRange(row, column);
  const put = (sheet: string, row: number, column: number, input: CellInput) => {
    const cell = typeof input === 'object' && input !== null ? { value: null, ...input } : { value: input };
    const blank = input === null;
    range(sheet, row, column).setValue(blank ? { v: null, t: null, f: null } : { f: null, ...dataOf(cell) });
  };
  return {
    value: (sheet, row, column) => range(sheet, row, column).getValue() ?? '',
    values: ({ sheet, row, column, rows, columns }) =>
      api.getActiveWorkbook()!.getSheetByName(sheet)!.getRange(row, column, rows, columns).getValues(),
    set: async (sheet, row, column, value) => {
      put(sheet, row, column, value);
      await settled();
    },
    type: async (cells) => {
      for (const { sheet, row, column, input } of cells) {
        put(sheet, row, column, input);
        await settled();
      }
    },
    rows: async (how, sheet, at) => {
      const there = api.getActiveWorkbook()!.getSheetByName(sheet)!;
      // As a user does, on the sheet that is shown: the grid moves references to that one, whichever loses the rows.
      there.activate();
      if (how === 'delete') there.deleteRows(at, 1);
      else there.insertRows(at, 1);
      await settled();
    },
    close: () => univer.dispose(),
  };
};

import { afterEach, beforeEach, expect, type TestContext } from 'vitest';
import type { Area, Change, Edit } from '../../../addin/workbook/change';
import type { Block, CellState, Outline, Workbook } from '../../../addin/workbook/port';
import type { HostUnderTest } from './hostUnderTest';

/** The sheet that every check finds empty. */
export const SHEET = 'Contract';

export const area = (row: number, column: number, rows = 1, columns = 1, sheet = SHEET): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

export const write = (
  row: number,
  column: number,
  cells: (Edit & { kind: 'write' })['cells'],
  sheet = SHEET,
): Edit => ({
  kind: 'write',
  sheet,
  row,
  column,
  cells,
});

export const change = (...edits: readonly Edit[]): Change => ({ title: 'Try the contract', edits });

/** What a host offers, or the check is skipped with the reason. */
export const told = <T>(context: TestContext, what: string, member: T | undefined): NonNullable<T> => {
  if (member === undefined || member === null) return context.skip(`this host does not offer ${what}`);
  return member;
};

/** The workbook of the check that runs, in few words. */
export interface Trial {
  readonly host: HostUnderTest;
  readonly outline: Workbook['outline'];
  readonly read: Workbook['read'];
  /** Applies the edits as one change. */
  apply(...edits: readonly Edit[]): Promise<void>;
  cells(
    row: number,
    column: number,
    rows?: number,
    columns?: number,
    sheet?: string,
  ): Promise<Block['cells']>;
  cell(row: number, column: number, sheet?: string): Promise<CellState>;
  /** All that the port tells of the workbook. */
  everything(): Promise<Pick<Outline, 'sheets' | 'names'> & { blocks: readonly Block[] }>;
}

/** Opens a workbook with the sheet for each check of the group it is called in, and closes it after. */
export const trialOf = (open: () => Promise<HostUnderTest>): Trial => {
  let host: HostUnderTest;
  const apply: Trial['apply'] = (...edits) => host.workbook.apply(change(...edits));
  const outline = () => host.workbook.outline();
  const read: Trial['read'] = (areas) => host.workbook.read(areas);
  const cells: Trial['cells'] = async (row, column, rows = 1, columns = 1, sheet = SHEET) => {
    const snapshot = await read([area(row, column, rows, columns, sheet)]);
    expect(snapshot.blocks).toHaveLength(1);
    return snapshot.blocks[0]!.cells;
  };
  beforeEach(async () => {
    host = await open();
    await apply({ kind: 'addSheet', sheet: SHEET });
  });
  afterEach(async () => host.close?.());
  return {
    get host() {
      return host;
    },
    outline,
    read,
    apply,
    cells,
    cell: async (row, column, sheet = SHEET) => (await cells(row, column, 1, 1, sheet))[0]![0]!,
    everything: async () => {
      const { sheets, names } = await outline();
      const used = sheets
        .filter((sheet) => sheet.rows > 0)
        .map((sheet) => area(0, 0, sheet.rows, sheet.columns, sheet.name));
      return { sheets, names, blocks: (await read(used)).blocks };
    },
  };
};

import { describe, expect, test } from 'vitest';

import type { Area } from '../../addin/workbook/change';
import { faultyCell, placeInWords } from '../../addin/workbook/faultyCell';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { CellState, Workbook } from '../../addin/workbook/port';

/** A workbook whose cells of these addresses show an error. */
const withErrors = (
  ...faulty: readonly (readonly [sheet: string, row: number, column: number])[]
): Workbook => {
  const memory = memoryWorkbook({
    sheets: {
      Try: [
        [1, 2, 3],
        [4, 5, 6],
        [7, 8, 9],
      ],
      'My rig': [
        [1, 2],
        [3, 4],
      ],
    },
  });
  return {
    outline: async () => ({
      ...(await memory.outline()),
      names: { flow: { sheet: 'My rig', row: 1, column: 1, rows: 1, columns: 1 } },
    }),
    apply: (change) => memory.apply(change),
    read: async (areas) => {
      const snapshot = await memory.read(areas);
      const blocks = snapshot.blocks.map(({ area, cells }) => ({
        area,
        cells: cells.map((line, r) =>
          line.map((cell, c): CellState => {
            const isFaulty = faulty.some(
              ([sheet, row, column]) =>
                sheet === area.sheet && row === area.row + r && column === area.column + c,
            );
            return isFaulty ? { value: null, error: '#REF!' } : cell;
          }),
        ),
      }));
      return { ...snapshot, blocks };
    },
  };
};

const AT = { sheet: 'Try', row: 8, column: 8 };

const found = async (workbook: Workbook, formula: string): Promise<string | undefined> => {
  const place = await faultyCell(workbook, AT, formula);
  return place && placeInWords(place, AT.sheet);
};

describe('the first cell with an error that a formula reads', () => {
  test.each([
    ['a cell', '=FEED.SECONDS(A1,"gal",B2,"gal/min")', 'B2'],
    ['a cell with dollar signs, in small letters', '=2*$b$2', 'B2'],
    ['a cell of a range', '=FEED.FLOWSPREAD(A1:C3)', 'B2'],
    ['a cell of whole columns', '=FEED.NEED(A:B,C:C,"gal","gal")', 'B2'],
    ['a cell of another sheet', "=A1+'My rig'!B2", 'B2 on My rig'],
    ['what a name stands for', '=FEED.SECONDS(0.7,"gal",Flow,"gal/min")', 'B2 on My rig'],
  ])('%s: %s', async (_what, formula, place) => {
    expect(await found(withErrors(['Try', 1, 1], ['My rig', 1, 1]), formula)).toBe(place);
  });

  test('is the first one as the formula stands, not as the sheet does', async () => {
    expect(await found(withErrors(['Try', 0, 0], ['Try', 2, 2]), '=C3+A1')).toBe('C3');
  });

  test.each([
    ['a text', '=LEN("B2")'],
    ['a name of a function', '=B2(1)'],
    ['a sheet’s name', "='B2'!A1"],
    ['a word that begins like a cell', '=B2x+1'],
    ['cells that are not there', '=Gone!B2+Z99'],
    ['cells without an error', '=A1:A3'],
    ['no cells', '=FEED.SECONDS(1,"gallon",2,"gal/min")'],
  ])('is none for %s: %s', async (_what, formula) => {
    expect(await found(withErrors(['Try', 1, 1]), formula)).toBeUndefined();
  });

  test('is not the cell itself', async () => {
    const place = await faultyCell(
      withErrors(['Try', 1, 1]),
      { sheet: 'Try', row: 1, column: 1 },
      '=SUM(A1:C3)',
    );
    expect(place).toBeUndefined();
  });

  test('is found far down a long range, of which no more is read than to there', async () => {
    const memory = memoryWorkbook({ sheets: { Try: Array.from({ length: 20_000 }, (_, row) => [row]) } });
    const asked: Area[][] = [];
    const workbook: Workbook = {
      ...memory,
      outline: () => memory.outline(),
      read: async (wanted) => {
        const snapshot = await memory.read(wanted);
        asked.push(snapshot.blocks.map(({ area }) => area));
        const blocks = snapshot.blocks.map(({ area, cells }) => ({
          area,
          cells: cells.map((line) =>
            line.map((cell) => (cell.value === 7_000 ? { value: null, error: '#REF!' } : cell)),
          ),
        }));
        return { ...snapshot, blocks };
      },
    };
    expect(await found(workbook, '=A1+SUM(A2:A20000)')).toBe('A7001');
    expect(asked.map((areas) => areas.map(({ row, rows }) => [row, rows]))).toEqual([
      [[0, 1]],
      [[1, 5_000]],
      [[5_001, 5_000]],
    ]);
  });
});

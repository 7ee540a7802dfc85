import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { columnLetters } from '../../../addin/workbook/address';
import type { CellInput, Edit } from '../../../addin/workbook/change';
import type { CellState, Snapshot } from '../../../addin/workbook/port';
import type { CellExplanation } from '../../../taskpane/cell/explainCell';
import { catalogue, type RawArgument, type RawScalar } from '../../../functions';
import { openTestPage, type TestPage } from './openTestPage';

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage();
});
afterAll(() => bench?.close());
beforeEach(() => bench.call('open'));

const SHEET = 'Sheet1';
const write = (row: number, column: number, cells: readonly (readonly CellInput[])[]): Edit => ({
  kind: 'write',
  sheet: SHEET,
  row,
  column,
  cells,
});
const apply = (...edits: Edit[]) => bench.call('apply', { title: 'Try a function', edits });
const read = async (
  row: number,
  column: number,
  rows = 1,
  columns = 1,
): Promise<readonly (readonly CellState[])[]> => {
  const snapshot: Snapshot = await bench.call('read', [{ sheet: SHEET, row, column, rows, columns }]);
  return snapshot.blocks[0]!.cells;
};

const literal = (value: RawScalar): string => {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string') return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === 'object') return value.error;
  return String(value).toUpperCase();
};

/** The example as a user would write it: ranges stand in cells, to the right of the formula. */
const asFormula = (name: string, args: readonly RawArgument[]): { formula: string; cells: Edit[] } => {
  const cells: Edit[] = [];
  let column = 10;
  const words = args.map((argument) => {
    if (!Array.isArray(argument)) return literal(argument as RawScalar);
    const rows = argument as readonly (readonly RawScalar[])[];
    const width = rows[0]?.length ?? 1;
    cells.push(
      write(
        0,
        column,
        rows.map((row) => row.map((cell) => (typeof cell === 'object' ? null : (cell ?? null)))),
      ),
    );
    const reference = `${columnLetters(column)}1:${columnLetters(column + width - 1)}${rows.length}`;
    column += width + 1;
    return reference;
  });
  return { formula: `FEED.${name}(${words.join(',')})`, cells };
};

const EXAMPLES = catalogue.flatMap(({ name, examples }) =>
  examples.map((example, index) => [`${name}, example ${index + 1}`, name, example] as const),
);

describe('the examples of the reference page, in the grid', () => {
  test.each(EXAMPLES)('%s', async (_which, name, { args, answer }) => {
    const { formula, cells } = asFormula(name, args);
    const rows = Array.isArray(answer) ? (answer as (number | string)[][]) : [[answer as number | string]];
    const asked = rows.map((row, down) =>
      row.map((_value, across) => ({
        formula: Array.isArray(answer) ? `=INDEX(${formula},${down + 1},${across + 1})` : `=${formula}`,
      })),
    );
    await apply(...cells, write(0, 0, asked));
    const shown = (await read(0, 0, rows.length, rows[0]!.length)).map((row) =>
      row.map(({ value, error }) => value ?? error),
    );
    const wanted = rows.map((row) =>
      row.map((value) => (typeof value === 'number' ? expect.closeTo(value, 9) : value)),
    );
    expect(shown).toEqual(wanted);
  });
});

test('what refuses shows its error, other functions can catch it, and the rest goes on', async () => {
  await apply(
    write(0, 0, [
      [{ formula: '=FEED.SECONDS("much","gal",2.8,"gal/min")' }, { formula: '=IFERROR(A1,"caught")' }],
      [
        { formula: '=FEED.SECONDS(0.7,"bucket",2.8,"gal/min")' },
        { formula: '=FEED.SECONDS(1/0,"gal",2.8,"gal/min")' },
      ],
      [{ formula: '=FEED.SECONDS()' }, { formula: '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")' }],
    ]),
  );
  const shown = (await read(0, 0, 3, 2)).map((row) => row.map(({ value, error }) => value ?? error));
  expect(shown).toEqual([
    ['#VALUE!', 'caught'],
    ['#N/A', '#DIV/0!'],
    ['#VALUE!', expect.closeTo(15, 9)],
  ]);
});

test('rows of a sheet that is not there are refused, and the rest goes on', async () => {
  const formulas = ['=FEED.NEED(Nowhere!A1:A3,B5:B7,"gal","gal")', '=1+1'];
  await apply(write(0, 0, [formulas.map((formula) => ({ formula }))]));
  const shown = (await read(0, 0, 1, 2))[0]!.map(({ value, error }) => error ?? value);
  expect(shown).toEqual(['#VALUE!', 2]);
});

test('a recalculation follows through thousands of cells', async () => {
  const doses = Array.from({ length: 3_000 }, (_, row) => [
    0.5 + row / 1_000,
    { formula: `=FEED.SECONDS(A${row + 2},"gal",$A$1,"gal/min")` },
  ]);
  await apply(write(0, 0, [[2]]), write(1, 0, doses));
  expect((await read(3_000, 1))[0]![0]!.value).toBeCloseTo((3.499 / 2) * 60, 9);
  await apply(write(0, 0, [[4]]));
  expect((await read(3_000, 1))[0]![0]!.value).toBeCloseTo((3.499 / 4) * 60, 9);
});

describe('the selected cell', () => {
  const explained = async (formula: string): Promise<CellExplanation | undefined> => {
    await apply(write(1, 0, [['gal', 0.7]]), write(0, 0, [[{ formula }]]));
    await bench.call('outline');
    return bench.call('explain', SHEET, 0, 0);
  };

  test('tells its computation in steps, with the source', async () => {
    const told = await explained('=feed.seconds(B2,A2,2.8,"gal/min")');
    expect(told).toMatchObject({ sheet: SHEET, row: 0, column: 0, shows: '15' });
    expect(told?.formula).toBe('=FEED.SECONDS(B2,A2,2.8,"gal/min")');
    expect(told?.sentence).toBeUndefined();
    expect(told?.working.join('\n')).toMatch(/0\.7 gal.*2\.8 gal\/min[^]*15/);
    expect(told?.working.at(-1)).toMatch(/^Source: /);
  });

  test('tells why it refuses', async () => {
    const told = await explained('=2*FEED.SECONDS("much",A2,2.8,"gal/min")');
    expect(told?.shows).toBe('#VALUE!');
    expect(told?.sentence).toMatch(/dose.*much/);
  });

  test('names the cell that an error comes from', async () => {
    await apply(write(2, 1, [[0.7], [{ formula: '=1/0' }], [0.9]]));
    const [passedOn, range] = [
      await explained('=FEED.SECONDS(B4,A2,2.8,"gal/min")'),
      await explained('=FEED.FLOWSPREAD(B3:B5)'),
    ];
    const sentence = 'B4 shows an error, and this formula uses it. Put that cell right first.';
    expect(passedOn).toMatchObject({ shows: '#DIV/0!', sentence });
    expect(range).toMatchObject({ shows: '#DIV/0!', sentence });
  });

  test('tells each computation of a formula with several', async () => {
    const told = await explained('=FEED.SECONDS(B2,A2,2.8,"gal/min")+FEED.SECONDS(1,A2,2.8,"gal/min")');
    expect(told?.working.filter((line) => line.startsWith('SECONDS'))).toHaveLength(2);
  });

  test('has nothing to tell where there is no formula', async () => {
    await apply(write(0, 0, [['text']]));
    expect(await bench.call('explain', SHEET, 0, 0)).toBeUndefined();
  });
});

test('the page said nothing of errors', () => {
  expect(bench.troubles).toEqual([]);
});

test('a change that is made while the grid calculates is waited for too', async () => {
  const bench = await openTestPage();
  const write = (column: number, cells: unknown[][]) =>
    bench.call('apply', {
      title: 'Write',
      edits: [{ kind: 'write', sheet: 'Sheet1', row: 0, column, cells }],
    });
  const rows = 6_000;
  const long = Array.from({ length: rows }, (_, row) => [
    { formula: `=FEED.SECONDS(${row + 1},"gal",2,"gal/min")` },
  ]);
  const before: number = await bench.call('calculations');
  await write(0, long);
  await expect.poll(() => bench.call('calculations')).toBeGreaterThan(before);
  for (const factor of [2, 3]) {
    await write(1, [[{ formula: `=A${rows}*${factor}` }]]);
    const { blocks } = (await bench.call('read', [
      { sheet: 'Sheet1', row: 0, column: 1, rows: 1, columns: 1 },
    ])) as { blocks: { cells: { value: unknown }[][] }[] };
    expect(blocks[0]!.cells[0]![0]!.value).toBe(rows * 30 * factor);
  }
  await bench.close();
});

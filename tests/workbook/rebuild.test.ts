import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AdoptedPlant, Inventory } from '../../addin/core';
import type { Change } from '../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { adoptList } from '../../addin/workbook/useCases/adoptList';
import { keepRig } from '../../addin/workbook/useCases/keepRig';
import { newGarden } from '../../addin/workbook/useCases/newGarden';
import { act, gardenOf, newGardenWorkbook, snapshotOf } from './gardens';

const BEDS = ['East', 'West', 'Pots'];
const SIZES = ['Large bush', 'Bush', 'Miniature', 'Not known'] as const;

const plant = (number: number): AdoptedPlant => ({
  plant: `Rose ${number}`,
  bed: BEDS[number % BEDS.length]!,
  sizeClass: SIZES[number % SIZES.length]!,
  roseClass: '',
  pot: number % 3 === 2,
  count: 1 + (number % 4),
  notes: '',
  sourceRows: [number],
});

const listOf = (numbers: readonly number[]): Inventory =>
  ({ plants: numbers.map(plant) }) as unknown as Inventory;

const adopt = (workbook: MemoryWorkbook, numbers: readonly number[]) =>
  act(workbook, (snapshot) => adoptList(snapshot, listOf(numbers), 'US').change);

const rebuild = (workbook: MemoryWorkbook): Promise<Change> =>
  act(workbook, (snapshot) => newGarden(snapshot, 'US'));

const sheetOf = async (workbook: MemoryWorkbook, name: string) =>
  (await workbook.outline()).names[name]!.sheet;

const builtGarden = async (): Promise<MemoryWorkbook> => {
  const workbook = await newGardenWorkbook();
  await adopt(workbook, [1, 2, 3, 4, 5, 6]);
  return workbook;
};

/** Every cell that holds something other than a formula, so that nothing of it can get lost. */
const typedCells = (workbook: MemoryWorkbook): string[] =>
  workbook
    .inspect()
    .sheets.flatMap((sheet) =>
      [...sheet.cells].flatMap(([row, cells]) =>
        [...cells].flatMap(([column, cell]) =>
          cell.formula === undefined ? [`${sheet.name} ${row} ${column}: ${String(cell.value)}`] : [],
        ),
      ),
    );

const effects = (change: Change) => change.edits.filter(({ kind }) => kind !== 'activate');

describe('what the user did by hand stays', () => {
  test('a second time changes nothing', async () => {
    const workbook = await builtGarden();
    expect(effects(await rebuild(workbook))).toEqual([]);
    expect(effects(await adopt(workbook, [1, 2, 3]))).toEqual([]);
  });

  test('lines of a list that are there already are told, new ones go below', async () => {
    const workbook = await builtGarden();
    const snapshot = await snapshotOf(workbook);
    const { change, added, already } = adoptList(snapshot, listOf([5, 6, 7, 8]), 'US');
    expect({ added, already }).toEqual({ added: 2, already: 2 });
    await workbook.apply(change);
    const { plants } = await gardenOf(workbook);
    expect(plants.map(({ plant: name }) => name)).toEqual([1, 2, 3, 4, 5, 6, 7, 8].map((n) => `Rose ${n}`));
  });

  test('an entry changed by hand is not written back', async () => {
    const workbook = await builtGarden();
    workbook.user.type('Plants', 4, 3, 12);
    workbook.user.type('Doses', 5, 1, 0.9);
    await adopt(workbook, [1, 2, 9]);
    expect(workbook.cell('Plants', 4, 3).value).toBe(12);
    expect(workbook.cell('Doses', 5, 1).value).toBe(0.9);
  });

  test('a number or formula typed over a formula stays, a formula that was lost comes back', async () => {
    const workbook = await builtGarden();
    const formula = workbook.cell('Plants', 5, 6).formula!;
    workbook.user.type('Plants', 4, 6, 0.5);
    workbook.user.type('Plants', 5, 6, null);
    workbook.user.type('Plants', 6, 6, { formula: '=1+1' });
    await rebuild(workbook);
    expect(workbook.cell('Plants', 4, 6)).toEqual({ value: 0.5 });
    expect(workbook.cell('Plants', 5, 6).formula).toBe(formula);
    expect(workbook.cell('Plants', 6, 6).formula).toBe('=1+1');
  });

  test('a line that the user writes below gets its formulas', async () => {
    const workbook = await builtGarden();
    ['New', 'East', 'Bush', 2].forEach((entry, column) => workbook.user.type('Plants', 10, column, entry));
    await rebuild(workbook);
    expect(workbook.cell('Plants', 10, 10).formula).toContain('$C11');
    expect(workbook.cell('Plants', 10, 8).formula).toContain('FEED.NEED($D11,$G11');
  });

  test('columns of the user stay, between ours and beside them, and new lines leave them empty', async () => {
    const workbook = await builtGarden();
    workbook.user.insertColumns('Plants', 2, 1);
    workbook.user.type('Plants', 3, 2, 'Bought');
    workbook.user.type('Plants', 4, 2, 2014);
    workbook.user.type('Plants', 3, 11, 'Price');
    workbook.user.type('Plants', 4, 11, 18.5);
    await adopt(workbook, [7]);
    expect([workbook.cell('Plants', 4, 2).value, workbook.cell('Plants', 4, 11).value]).toEqual([2014, 18.5]);
    expect(workbook.cell('Plants', 10, 0).value).toBe('Rose 7');
    expect(workbook.cell('Plants', 10, 3).value).toBe('Not known');
    expect([workbook.cell('Plants', 10, 2).value, workbook.cell('Plants', 10, 11).value]).toEqual([
      null,
      null,
    ]);
  });

  test('notes that stand below the list are not written over', async () => {
    const workbook = await builtGarden();
    workbook.user.type('Plants', 14, 9, 'Order stakes');
    await adopt(workbook, [7]);
    expect(workbook.cell('Plants', 14, 9).value).toBe('Order stakes');
    expect(workbook.cell('Plants', 15, 0).value).toBe('Rose 7');
  });

  test('entries in a column of the user that reach further down are not written beside', async () => {
    const workbook = await builtGarden();
    workbook.user.type('Plants', 3, 10, 'Bought');
    workbook.user.type('Plants', 12, 10, 'total 12');
    await adopt(workbook, [7]);
    expect(workbook.cell('Plants', 13, 0).value).toBe('Rose 7');
  });

  test('a column that is put back goes past what stands beside the table without a header', async () => {
    const workbook = await builtGarden();
    workbook.user.type('Plants', 6, 10, 'loose');
    workbook.user.deleteColumns('Plants', 6, 1);
    await rebuild(workbook);
    expect(workbook.cell('Plants', 6, 9)).toEqual({ value: 'loose' });
    expect(workbook.cell('Plants', 3, 10).value).toBe('Dose');
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('a bed that is new goes to the end of the walk', async () => {
    const workbook = await builtGarden();
    ['New', 'North', 'Bush', 2].forEach((entry, column) => workbook.user.type('Plants', 10, column, entry));
    await rebuild(workbook);
    expect((await gardenOf(workbook)).beds.map(({ bed, walk, station }) => [bed, walk, station])).toEqual([
      ['West', 1, 'A'],
      ['Pots', 2, 'A'],
      ['East', 3, 'A'],
      ['North', 4, ''],
    ]);
  });

  test('a column of ours that was deleted is put back at the end, the formulas that use it are mended', async () => {
    const workbook = await builtGarden();
    workbook.user.deleteColumns('Plants', 6, 1);
    expect(workbook.cell('Plants', 4, 6).formula).toContain('#REF!');
    await rebuild(workbook);
    expect(workbook.cell('Plants', 3, 10).value).toBe('Dose');
    expect(workbook.cell('Plants', 4, 6).formula).toContain('ISNUMBER($K5)');
    expect((await workbook.outline()).names['Wandcount_Plants']).toMatchObject({ column: 0, columns: 11 });
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('a sheet that was deleted is made again and the others find it', async () => {
    const workbook = await builtGarden();
    workbook.user.deleteSheet('Rig');
    await rebuild(workbook);
    const { has, rig } = await gardenOf(workbook);
    expect(has.rig && has.timedBuckets).toBe(true);
    expect(rig.heel).toEqual({ value: 1, unit: 'gal' });
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('a line of the rig that was deleted is put back below the others', async () => {
    const workbook = await builtGarden();
    workbook.user.deleteRows('Rig', 6, 1);
    const lines = Object.entries((await workbook.outline()).names).filter(([name]) =>
      name.startsWith('Rig_'),
    );
    const below = 1 + Math.max(...lines.map(([, { row }]) => row));
    workbook.user.type('Rig', below, 1, 'my note');
    expect((await gardenOf(workbook)).problems.map(({ sentence }) => sentence)).toEqual([
      'Rig has no line “Heel” any more; keep the rig again, and it comes back.',
    ]);
    await rebuild(workbook);
    expect(workbook.cell('Rig', below, 1).value).toBe('my note');
    expect(workbook.cell('Rig', below + 1, 0).value).toBe('Heel');
    expect((await gardenOf(workbook)).rig.heel).toEqual({ value: 1, unit: 'gal' });
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('the unit of the doses is asked for again where its row was deleted, and not guessed', async () => {
    const workbook = await builtGarden();
    const sentences = async () => (await gardenOf(workbook)).problems.map(({ sentence }) => sentence);
    workbook.user.deleteRows('Doses', 2, 1);
    expect(await sentences()).toEqual([
      'Doses has no cell “Doses are in” any more; keep the doses again, and it comes back.',
    ]);
    await rebuild(workbook);
    expect((await workbook.outline()).names['Doses_unit']).toMatchObject({
      sheet: 'Doses',
      row: 2,
      column: 1,
    });
    expect((await sentences())[0]).toMatch(
      /^Doses, cell B3 \(Doses are in\): nothing was given; use one of mL, L, /,
    );
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('timed buckets that were deleted come back beside the rig, which keeps its own heading', async () => {
    const workbook = await builtGarden();
    workbook.user.type('Rig', 0, 0, 'My rig');
    workbook.user.deleteColumns('Rig', 5, 2);
    await rebuild(workbook);
    expect(workbook.cell('Rig', 0, 0).value).toBe('My rig');
    expect(workbook.cell('Rig', 3, 5).value).toBe('Timed bucket, seconds');
    expect(workbook.cell('Rig', 7, 1).formula).toContain('COUNTA(Rig!$F$5:$F$64)');
    expect(effects(await rebuild(workbook))).toEqual([]);
  });

  test('a cell above the table comes back beside its label', async () => {
    const workbook = await builtGarden();
    workbook.user.deleteColumns('Doses', 1, 1);
    await rebuild(workbook);
    expect((await workbook.outline()).names['Doses_unit']).toMatchObject({ row: 2, column: 1 });
  });

  test('a sheet of the user with our title keeps it', async () => {
    const workbook = await builtGarden();
    const own = memoryWorkbook({
      sheets: { plants: [['my list']], Doses: [['mine']], 'Doses 2': [['too']] },
    });
    await rebuild(own);
    expect(await sheetOf(own, 'Wandcount_Plants')).toBe('Plants 2');
    expect(await sheetOf(own, 'Wandcount_Doses')).toBe('Doses 3');
    expect(own.cell('plants', 0, 0).value).toBe('my list');
    expect((await gardenOf(own)).doses).toEqual((await gardenOf(workbook)).doses.slice(0, 8));
  });

  test('a name of the user that a new sheet needs is not taken from him', async () => {
    const own = memoryWorkbook({ sheets: { Mine: [[2.6]] } });
    const area = { sheet: 'Mine', row: 0, column: 0, rows: 1, columns: 1 };
    await own.apply({ title: 'Name it', edits: [{ kind: 'name', name: 'rig_flow', area }] });
    await expect(rebuild(own)).rejects.toThrow(
      'The workbook has a name “Rig_flow” already, which the sheet “Rig” needs. Rename or delete it in the list of names, then try again.',
    );
  });

  test('a long list makes the formulas look further down', async () => {
    const workbook = await newGardenWorkbook();
    await adopt(
      workbook,
      Array.from({ length: 1_800 }, (_, n) => n),
    );
    expect(workbook.cell('Doses', 5, 5).formula).toContain('Plants!$D$4:$D$3004');
  });
});

/** Things that users do, with numbers that are brought into range when they are done. */
const userAction = fc.oneof(
  fc.record({
    kind: fc.constant('insertRows' as const),
    sheet: fc.nat(),
    at: fc.nat(12),
    count: fc.integer({ min: 1, max: 3 }),
  }),
  fc.record({
    kind: fc.constant('insertColumns' as const),
    sheet: fc.nat(),
    at: fc.nat(8),
    count: fc.integer({ min: 1, max: 2 }),
  }),
  fc.record({
    kind: fc.constant('ownColumn' as const),
    sheet: fc.nat(),
    header: fc.constantFrom('Bought', 'Label', 'x'),
  }),
  fc.record({
    kind: fc.constant('ownNote' as const),
    sheet: fc.nat(),
    row: fc.nat(25),
    column: fc.integer({ min: 15, max: 18 }),
  }),
  fc.record({ kind: fc.constant('rename' as const), sheet: fc.nat() }),
  fc.record({ kind: fc.constant('move' as const), sheet: fc.nat(), to: fc.nat(8) }),
  fc.record({
    kind: fc.constant('sort' as const),
    order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
  }),
  fc.record({ kind: fc.constant('howMany' as const), line: fc.nat(5), value: fc.nat(40) }),
  fc.record({
    kind: fc.constant('bedOf' as const),
    line: fc.nat(5),
    bed: fc.constantFrom('East', 'North', 'Terrace'),
  }),
  fc.record({ kind: fc.constant('deleteLine' as const), line: fc.nat(5) }),
  fc.record({
    kind: fc.constant('ownLine' as const),
    name: fc.constantFrom('Ada', 'Bea', 'Cleo'),
    size: fc.constantFrom(...SIZES),
  }),
  fc.record({ kind: fc.constant('adopt' as const), numbers: fc.uniqueArray(fc.nat(30), { maxLength: 5 }) }),
);
type UserAction = typeof userAction extends fc.Arbitrary<infer T> ? T : never;

const play = async (workbook: MemoryWorkbook, action: UserAction, index: number): Promise<void> => {
  const outline = await workbook.outline();
  const sheet =
    'sheet' in action ? outline.sheets[action.sheet % outline.sheets.length]! : outline.sheets[0]!;
  const garden = await gardenOf(workbook);
  const plants = outline.names['Wandcount_Plants']!;
  const line = 'line' in action ? garden.plants[action.line % Math.max(1, garden.plants.length)] : undefined;
  const columnOf = (header: string): number => {
    const cells = workbook
      .inspect()
      .sheets.find(({ name }) => name === plants.sheet)!
      .cells.get(plants.row)!;
    return [...cells].find(([, cell]) => cell.value === header)![0];
  };
  const { user } = workbook;
  switch (action.kind) {
    case 'insertRows':
      return user.insertRows(sheet.name, action.at, action.count);
    case 'insertColumns':
      return user.insertColumns(sheet.name, action.at, action.count);
    case 'ownColumn':
      user.type(plants.sheet, plants.row, plants.column + plants.columns, `${action.header} ${index}`);
      return user.type(plants.sheet, plants.row + 1, plants.column + plants.columns, 'own entry');
    case 'ownNote':
      return user.type(sheet.name, action.row, sheet.columns + action.column, `note ${index}`);
    case 'rename':
      return user.renameSheet(sheet.name, `Mine ${index}`);
    case 'move':
      return user.moveSheet(sheet.name, action.to);
    case 'sort': {
      const rows = garden.plants.map(({ row }) => row);
      const together = rows.length >= 6 && rows[5]! - rows[0]! === 5;
      return together ? user.reorderRows(plants.sheet, rows[0]!, action.order) : undefined;
    }
    case 'howMany':
      return line && user.type(plants.sheet, line.row, columnOf('How many'), action.value);
    case 'bedOf':
      return line && user.type(plants.sheet, line.row, columnOf('Bed'), action.bed);
    case 'deleteLine':
      return line && user.deleteRows(plants.sheet, line.row, 1);
    case 'ownLine': {
      const row = (await workbook.outline()).sheets.find(({ name }) => name === plants.sheet)!.rows + 1;
      user.type(plants.sheet, row, columnOf('Plant'), action.name);
      user.type(plants.sheet, row, columnOf('Bed'), 'Terrace');
      user.type(plants.sheet, row, columnOf('Size class'), action.size);
      return user.type(plants.sheet, row, columnOf('How many'), 1);
    }
    case 'adopt':
      await adopt(workbook, action.numbers);
  }
};

describe('whatever the user does by hand', () => {
  test('building again loses nothing, deletes no row, fills every formula, and the second time does nothing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(userAction, { minLength: 1, maxLength: 10 }), async (actions) => {
        const workbook = await builtGarden();
        for (const [index, action] of actions.entries()) await play(workbook, action, index);
        const before = typedCells(workbook);
        const { plants } = await gardenOf(workbook);
        await adopt(workbook, [3, 41, 42]);

        const after = new Set(typedCells(workbook));
        expect(before.filter((cell) => !after.has(cell))).toEqual([]);

        const garden = await gardenOf(workbook);
        expect(garden.problems).toEqual([]);
        expect(garden.plants.slice(0, plants.length)).toEqual(plants);
        expect(new Set(garden.beds.map(({ bed }) => bed))).toEqual(
          new Set([...garden.beds, ...garden.plants].map(({ bed }) => bed)),
        );
        const { names } = await workbook.outline();
        const { sheet, row } = names['Wandcount_Plants']!;
        const cells = workbook.inspect().sheets.find(({ name }) => name === sheet)!.cells;
        const dose = [...cells.get(row)!].find(([, cell]) => cell.value === 'Dose')![0];
        for (const line of garden.plants)
          expect(cells.get(line.row)!.get(dose)?.formula).toContain(`$${line.row + 1}`.slice(1));
        expect(JSON.stringify([...cells])).not.toContain('#REF!');

        expect(effects(await rebuild(workbook))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  test('keeping the rig writes the rig and nothing else', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(userAction, { maxLength: 6 }), async (actions) => {
        const workbook = await builtGarden();
        for (const [index, action] of actions.entries()) await play(workbook, action, index);
        await rebuild(workbook);
        const before = await gardenOf(workbook);
        const kept = {
          rig: {
            ...before.rig,
            barrel: { value: 60, unit: 'gal' },
            flow: { value: 2.6, unit: 'gal/min' },
            bucket: { value: 8, unit: 'L' },
          },
          timedBuckets: [48, 47.5, 48.2],
        };
        const change = await act(workbook, (snapshot) => keepRig(snapshot, kept, 'US'));
        const rig = (await workbook.outline()).names['Wandcount_Rig']!.sheet;
        expect(effects(change).map((edit) => ('sheet' in edit ? edit.sheet : undefined))).toEqual(
          effects(change).map(() => rig),
        );
        const after = await gardenOf(workbook);
        expect(after).toEqual({ ...before, ...kept });
      }),
      { numRuns: 30 },
    );
  }, 60_000);
});

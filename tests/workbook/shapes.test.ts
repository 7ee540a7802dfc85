import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

import { cardSources } from '../../addin/workbook/card/cardSources';
import { cardAreas } from '../../addin/workbook/card/cardNames';
import type { Area } from '../../addin/workbook/change';
import { sameFormula } from '../../addin/workbook/formula/sameFormula';
import { logAreas } from '../../addin/workbook/log/logRound';
import type { MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Snapshot, Workbook } from '../../addin/workbook/port';
import { gardenAreas } from '../../addin/workbook/readGarden';
import { inShape, newerWords, SHAPE, shapeAreas, shapeOf } from '../../addin/workbook/shapes';
import { sheetShape } from '../../addin/workbook/shapes/shape';
import { snapshotAfter } from '../../addin/workbook/shapes/snapshotAfter';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { mixTable } from '../../addin/workbook/sheets/mix';
import { productsTable } from '../../addin/workbook/sheets/products';
import { SHAPE_CELL } from '../../addin/workbook/sheets/settings';
import { standingSheets } from '../../addin/workbook/sheets/standingSheets';
import { areaNamed, cellAt } from '../../addin/workbook/snapshot';
import { placesOf } from '../../addin/workbook/tables/buildSheets';
import { lackingWords } from '../../addin/workbook/tables/layOut';
import { locateTable } from '../../addin/workbook/tables/site';
import { isComputed } from '../../addin/workbook/tables/table';
import { fillTemplate } from '../../addin/workbook/tables/template';
import { keepDoses } from '../../addin/workbook/useCases/keepDoses';
import { keepMix } from '../../addin/workbook/useCases/keepMix';
import { keepRig } from '../../addin/workbook/useCases/keepRig';
import { restoreSheets } from '../../addin/workbook/useCases/newGarden';
import { earlierFiles } from './earlierFiles';
import { act, gardenOf, newGardenWorkbook, snapshotOf } from './gardens';
import { savedBook } from './savedBook';

const look = (workbook: Workbook): Promise<Snapshot> =>
  workbook.read((outline) => [...gardenAreas(outline), ...cardAreas(outline), ...logAreas(outline)]);

const FILES = earlierFiles(['xlsx']);
const opened = (name: string): Promise<MemoryWorkbook> =>
  savedBook(readFileSync(FILES.find((file) => file.name === name)!.path));

const brought = async (workbook: MemoryWorkbook) => {
  const shaped = inShape(await look(workbook), 'US');
  await workbook.apply({ title: 'Bring it into shape', edits: shaped.edits });
  return shaped;
};

const mixFormulas = async (workbook: MemoryWorkbook): Promise<string[]> => {
  const snapshot = await look(workbook);
  const { sheet, rows, columns } = locateTable(mixTable, snapshot)!;
  return rows.flatMap((row) =>
    Object.values(columns).flatMap((column) => cellAt(snapshot, sheet, row, column).formula ?? []),
  );
};

const cellBelow = async (workbook: MemoryWorkbook, key: string) => {
  const { sheet, rows, columns } = locateTable(mixTable, await look(workbook))!;
  return { sheet, row: rows[0]!, column: columns[key]! };
};

describe('the cell that says which shape a workbook has', () => {
  test('is made with the first sheets, and found wherever it stands', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.renameSheet('Settings', "Gran's settings");
    workbook.user.insertRows("Gran's settings", 2, 3);
    const snapshot = await snapshotOf(workbook);
    expect(shapeOf(snapshot)).toBe(SHAPE);
    expect(inShape(snapshot, 'US')).toEqual({ snapshot, edits: [], says: [] });
  });

  test.each([null, 'two', 0, -3, true])(
    'with %s in it tells nothing, and is written again',
    async (typed) => {
      const workbook = await newGardenWorkbook();
      const { sheet, row, column } = areaNamed(await workbook.outline(), SHAPE_CELL)!;
      workbook.user.type(sheet, row, column, typed);
      expect(shapeOf(await look(workbook))).toBe(0);
      await brought(workbook);
      expect(workbook.cell(sheet, row, column).value).toBe(SHAPE);
    },
  );

  test('comes back where its sheet was deleted', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.deleteSheet('Settings');
    expect((await brought(workbook)).says).toEqual([
      'Added what this program keeps besides: the sheet “Settings”.',
    ]);
    expect(shapeOf(await look(workbook))).toBe(SHAPE);
  });

  test('above the number of this program says that a newer one made the workbook', async () => {
    const workbook = await newGardenWorkbook();
    const { sheet, row, column } = areaNamed(await workbook.outline(), SHAPE_CELL)!;
    workbook.user.type(sheet, row, column, SHAPE + 1);
    const snapshot = await workbook.read(shapeAreas);
    expect(newerWords(snapshot)).toMatch(
      /^A newer program has worked on these sheets \(Settings, cell B\d+\)/,
    );
    await expect(
      act(workbook, (now) => keepDoses(now, { doses: [{ sizeClass: 'Bush', dose: 0.4 }] }, 'US')),
    ).rejects.toThrow('writes nothing');
  });

  test('is not made in a workbook that holds no garden', async () => {
    const workbook = await opened('live-card/untidy-list.workbench.xlsx');
    expect((await brought(workbook)).edits).toEqual([]);
  });
});

/** Cells that the sheets work out by another formula than the one this program writes. */
const notOfToday = (snapshot: Snapshot): string[] => {
  const places = placesOf(gardenSheets, snapshot)!;
  const other = (what: string, at: Area, formula: string): string[] => {
    const now = cellAt(snapshot, at.sheet, at.row, at.column).formula;
    return now !== undefined && sameFormula(now, formula) ? [] : [`${what}: ${now}`];
  };
  return gardenSheets.sheets.flatMap((entry) => {
    if (entry.kind === 'form')
      return Object.values(entry.form.lines).flatMap(({ name, formula }) =>
        formula === undefined ? [] : other(name, places.cells[name]!, fillTemplate(formula, places)(0)),
      );
    const site = places.sites[entry.table.key]!;
    return Object.entries(entry.table.columns).flatMap(([key, column]) => {
      if (!isComputed(column)) return [];
      const formulaOf = fillTemplate(column.formula, places, site);
      const at = { sheet: site.sheet, column: site.columns[key]!, rows: 1, columns: 1 };
      return site.rows.flatMap((row) => other(`${entry.table.key}.${key}`, { ...at, row }, formulaOf(row)));
    });
  });
};

describe.each(FILES)('$name, brought into shape', ({ path }) => {
  test('tells its shape, lacks nothing, and is what was foretold; once more changes nothing', async () => {
    const workbook = await savedBook(readFileSync(path));
    const before = await look(workbook);
    if (gardenAreas(before).length === 0) return expect(inShape(before, 'US').edits).toEqual([]);
    const shaped = await brought(workbook);
    const after = await look(workbook);
    expect(shapeOf(after)).toBe(SHAPE);
    expect(lackingWords(gardenSheets, after)).toEqual([]);
    expect(notOfToday(after)).toEqual([]);
    expect(inShape(after, 'US').edits).toEqual([]);
    const entries = ({ blocks }: Snapshot) =>
      new Map(
        blocks.flatMap(({ area: { sheet }, cells }) =>
          cells.flatMap((line, row) =>
            line.flatMap(({ value, formula }, column) =>
              (formula ?? value) === null ? [] : [[`${sheet} ${row} ${column}`, formula ?? value] as const],
            ),
          ),
        ),
      );
    expect(entries(shaped.snapshot)).toEqual(entries(after));
    expect(shaped.snapshot.names).toEqual(after.names);
  });
});

describe('formulas of an earlier program', () => {
  test('give way to those of today, and those of the user stay', async () => {
    const workbook = await opened('before-live-card/whole-garden.workbench.xlsx');
    const own = await cellBelow(workbook, 'N');
    workbook.user.type(own.sheet, own.row, own.column, { formula: '=MATCH(1,A1:A9,0)' });
    expect((await mixFormulas(workbook)).filter((text) => text.includes('MATCH(')).length).toBeGreaterThan(8);
    const { says } = await brought(workbook);
    expect((await mixFormulas(workbook)).filter((text) => text.includes('MATCH('))).toEqual([
      '=MATCH(1,A1:A9,0)',
    ]);
    expect(says[0]).toContain('the column “Row of Products” on Mix');
    expect(says[1]).toBe('Brought formulas up to date on Mix.');
  });

  test('that another name or number was put into are the user’s own', async () => {
    const workbook = await opened('before-live-card/whole-garden.workbench.xlsx');
    const { sheet, row, column } = await cellBelow(workbook, 'label');
    const touched = workbook.cell(sheet, row, column).formula!.replace('1E-9', '0.05');
    expect(touched).toContain('0.05');
    workbook.user.type(sheet, row, column, { formula: touched });
    await brought(workbook);
    expect(workbook.cell(sheet, row, column).formula).toBe(touched);
  });

  test('are found after rows were put in and columns moved', async () => {
    const workbook = await opened('before-live-card/own-columns.workbench.xlsx');
    const { sheet } = await cellBelow(workbook, 'label');
    workbook.user.insertRows(sheet, 0, 2);
    await brought(workbook);
    expect((await mixFormulas(workbook)).filter((text) => text.includes('MATCH('))).toEqual([]);
  });

  test('can be named by a later shape: only cells that hold exactly them are renewed', async () => {
    const workbook = await newGardenWorkbook();
    await act(workbook, (snapshot) => restoreSheets(snapshot, 'US'));
    const earlier = '=IF({sizeClass}="","","in "&{Doses_unit})';
    const { sheet, rows, columns } = placesOf(gardenSheets, await look(workbook))!.sites['doses']!;
    const unit = { sheet, column: columns['unit']! };
    const [first, second, third] = rows as [number, number, number];
    const today = workbook.cell(sheet, first, unit.column).formula!;
    const { sheet: on, row, column } = areaNamed(await workbook.outline(), 'Doses_unit')!;
    const spelled = (at: number) =>
      `=IF($A${at + 1}="","","in "&'${on}'!$${String.fromCharCode(65 + column)}$${row + 1})`;
    workbook.user.type(sheet, first, unit.column, { formula: spelled(first) });
    workbook.user.type(sheet, second, unit.column, { formula: `${spelled(second)}&"!"` });
    workbook.user.type(sheet, third, unit.column, 'typed');
    const change = sheetShape({ renew: { 'doses.unit': [earlier] } }).step(await look(workbook), 'US')!;
    await workbook.apply(change);
    expect(change.says).toEqual(['Brought formulas up to date on Doses.']);
    expect(workbook.cell(sheet, first, unit.column).formula).toBe(today);
    expect(workbook.cell(sheet, second, unit.column).formula).toBe(`${spelled(second)}&"!"`);
    expect(workbook.cell(sheet, third, unit.column)).toEqual({ value: 'typed' });
  });
});

describe('what the user took away', () => {
  const without = async (header: string) => {
    const workbook = await newGardenWorkbook();
    await act(workbook, (snapshot) =>
      keepMix(
        snapshot,
        {
          mix: [{ product: 'Fish', rate: { value: 1, unit: 'tbsp/gal' } }],
          products: [{ name: 'Fish', form: 'liquid' }],
        },
        'US',
      ),
    );
    const snapshot = await look(workbook);
    const at = Object.values(placesOf(gardenSheets, snapshot)!.sites).find(({ table }) =>
      Object.values(table.columns).some((column) => column.header === header),
    )!;
    const key = Object.keys(at.columns).find((one) => at.table.columns[one]!.header === header)!;
    workbook.user.deleteColumns(at.sheet, at.columns[key]!, 1);
    return workbook;
  };
  const dose = (workbook: MemoryWorkbook) =>
    act(workbook, (snapshot) => keepDoses(snapshot, { doses: [{ sizeClass: 'Bush', dose: 0.4 }] }, 'US'));

  test('stays away, is told in words, and comes back when it is asked for', async () => {
    const workbook = await without('Notes');
    expect((await dose(workbook)).says).toEqual([]);
    expect(lackingWords(gardenSheets, await look(workbook))).toEqual(['the column “Notes” on Plants']);
    expect((await act(workbook, (snapshot) => restoreSheets(snapshot, 'US'))).says).toEqual([
      'Put back the column “Notes” on Plants.',
    ]);
    expect(lackingWords(gardenSheets, await look(workbook))).toEqual([]);
  });

  test('comes back where something is put into it, and that is told', async () => {
    const workbook = await without('Rate');
    const kept = await act(workbook, (snapshot) =>
      keepMix(snapshot, { mix: [{ product: 'Fish', rate: { value: 2, unit: 'tbsp/gal' } }] }, 'US'),
    );
    expect(kept.says).toEqual(['Put back the column “Rate” on Mix.']);
  });

  test('a line of the rig comes back where the rig is kept', async () => {
    const workbook = await newGardenWorkbook();
    const { row } = areaNamed(await workbook.outline(), 'Rig_heel')!;
    workbook.user.deleteRows('Rig', row, 1);
    expect((await dose(workbook)).says).toEqual([]);
    const garden = await gardenOf(workbook);
    const kept = await act(workbook, (snapshot) => keepRig(snapshot, garden, 'US'));
    expect(kept.says).toEqual(['Put back the line “Heel” on Rig.']);
  });

  test('the card puts back what it reads, and nothing else', async () => {
    const workbook = await without('Notes');
    const { sheet, columns } = locateTable(productsTable, await look(workbook))!;
    workbook.user.deleteColumns(sheet, columns['price']!, 1);
    const { made } = standingSheets(await look(workbook), 'US', cardSources, 'make the card');
    expect(made).toEqual(['the column “Price of a pack” on Products']);
  });

  test('without a sheet that it reads no card is made, and the pane’s own button is named', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.deleteSheet('Mix');
    const snapshot = await look(workbook);
    expect(() => standingSheets(snapshot, 'US', cardSources, 'make the card')).toThrow(
      'The sheet “Mix” is not there any more. Put it back under Garden, then make the card.',
    );
  });

  test('and what the user’s own formula lost by it is his to mend', async () => {
    const workbook = await without('Notes');
    const { sheet, row, column } = await cellBelow(workbook, 'barrelful');
    for (const own of ['=#REF!*2', "=IF('Mix'!#REF!,1)"]) {
      workbook.user.type(sheet, row, column, { formula: own });
      await act(workbook, (snapshot) => restoreSheets(snapshot, 'US'));
      expect(workbook.cell(sheet, row, column).formula).toBe(own);
    }
  });

  test('is not remade by formulas that read it, and those are left as they are', async () => {
    const workbook = await without('N, %');
    const broken = (await mixFormulas(workbook)).filter((text) => text.includes('#REF!'));
    expect(broken.length).toBeGreaterThan(0);
    await dose(workbook);
    expect((await mixFormulas(workbook)).filter((text) => text.includes('#REF!'))).toEqual(broken);
    await act(workbook, (snapshot) => restoreSheets(snapshot, 'US'));
    expect((await mixFormulas(workbook)).filter((text) => text.includes('#REF!'))).toEqual([]);
  });

  test('a sheet stays away too', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.deleteSheet('Mix');
    expect((await dose(workbook)).says).toEqual([]);
    expect(lackingWords(gardenSheets, await look(workbook))).toEqual(['the sheet “Mix”']);
    expect((await workbook.outline()).names['Wandcount_Mix']).toBeUndefined();
  });
});

test('a reading foretold knows sheets, names and cells that are added and emptied', async () => {
  const workbook = await newGardenWorkbook();
  const snapshot = await look(workbook);
  const area = { sheet: 'More', row: 2, column: 1, rows: 1, columns: 1 };
  const edits = [
    { kind: 'addSheet', sheet: 'More' },
    { kind: 'write', sheet: 'More', row: 2, column: 1, cells: [[5, null, { formula: '=1+1' }]] },
    { kind: 'name', name: 'wandcount_CARD', area },
    { kind: 'write', sheet: 'Settings', row: 0, column: 0, cells: [[null]] },
  ] as const;
  const foretold = snapshotAfter(snapshot, edits);
  await workbook.apply({ title: 'More', edits });
  const { sheets, names } = await workbook.outline();
  expect({ sheets: foretold.sheets, names: foretold.names }).toEqual({ sheets, names });
  expect(cellAt(foretold, 'More', 2, 3)).toEqual({ value: null, formula: '=1+1' });
  expect(cellAt(foretold, 'Settings', 0, 0)).toEqual({ value: null });
});

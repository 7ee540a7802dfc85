import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

import { repairFormulas } from '../../../addin/hosts/office/repairFormulas';
import { ribbonActions } from '../../../addin/hosts/office/ribbonActions';
import { selectedCell } from '../../../addin/hosts/office/selectedCell';
import { themeOf } from '../../../addin/hosts/office/theme';
import { watchWorkbook } from '../../../addin/hosts/office/watchWorkbook';
import { CARD } from '../../../addin/workbook/card/cardNames';
import type { Edit } from '../../../addin/workbook/change';
import { explainCell, type CellExplanation } from '../../../taskpane/cell/explainCell';
import { createPane } from '../../../taskpane/pane';
import type { HostEvent } from '../../../taskpane/services';

import { openFake, type OpenFake } from './openFake';

const SECONDS = '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")';

let open: OpenFake;
beforeEach(() => {
  open = openFake();
});

const apply = (...edits: Edit[]): Promise<void> => open.workbook.apply({ title: 'Try', edits });
const write = (row: number, column: number, ...cells: (string | number | null)[]): Edit => ({
  kind: 'write',
  sheet: 'Sheet1',
  row,
  column,
  cells: [cells.map((text) => (typeof text === 'string' && text.startsWith('=') ? { formula: text } : text))],
});

describe('the selected cell', () => {
  const explained = async (): Promise<CellExplanation | undefined> => {
    const selected = await selectedCell(open.program);
    return selected && explainCell(open.workbook, selected);
  };

  test('is told in steps, in the program’s own spelling', async () => {
    await apply(write(0, 0, SECONDS));
    open.book.storedSpelling = true;
    const told = await explained();
    expect(told).toMatchObject({ sheet: 'Sheet1', row: 0, column: 0, formula: SECONDS, shows: '15' });
    expect(told!.sentence).toBeUndefined();
    expect(told!.working[0]).toMatch(/^SECONDS: /);
    expect(told!.working.at(-1)).toMatch(/^Source: /);
  });

  test('tells the sentence of a function that refused', async () => {
    await apply(write(0, 0, '=FEED.SECONDS(0.7,"ft",2.8,"gal/min")'));
    const told = await explained();
    expect(told!.shows).toBe('#VALUE!');
    expect(told!.sentence).toContain('dose_unit: "ft" was given; use a volume unit');
    expect(told!.working).toEqual([]);
  });

  test('names the cell that an error comes from', async () => {
    await apply(
      write(0, 0, '=FEED.SECONDS(B2,"gal",2.8,"gal/min")'),
      write(1, 1, '=FEED.SECONDS(1,"ft",2,"L/min")'),
    );
    expect(await explained()).toMatchObject({
      shows: '#VALUE!',
      sentence: 'B2 shows an error, and this formula uses it. Put that cell right first.',
    });
  });

  test('with a formula that is not ours tells its cells; with none, nothing', async () => {
    await apply(write(0, 0, '=B1*2', 4));
    expect(await explained()).toMatchObject({ formula: '=B1*2', shows: '8', cells: ['B1: 4'], working: [] });
    await apply(write(0, 0, '5'));
    expect(await explained()).toBeUndefined();
  });
});

describe('repairing formulas', () => {
  /** A workbook whose FEED formulas were put in while the functions were not there. */
  const leftUnknown = async (): Promise<void> => {
    await apply(
      write(0, 0, SECONDS, 5, SECONDS),
      write(1, 0, SECONDS, '=UNKNOWN(1)', '=1+1'),
      write(2, 0, 'text', '=B1*2', SECONDS),
    );
    open.book.unknown = true;
  };

  test('writes those anew that show #NAME?, and no others', async () => {
    await leftUnknown();
    const cells = () =>
      [...open.book.sheetNamed('Sheet1').cells].map(([place, { formula, value }]) => [
        place,
        formula ?? value,
      ]);
    const was = cells();
    const written: string[] = [];
    const { write: put } = open.book;
    open.book.write = (at, inputs) => {
      written.push(`${at.row},${at.column}+${at.rows}`);
      open.book.unknown = false;
      return put(at, inputs);
    };
    expect(await repairFormulas(open.workbook)).toBe(4);
    expect(written).toEqual(['0,0+2', '0,2+1', '2,2+1']);
    expect(cells().sort()).toEqual(was.sort());
    const { blocks } = await open.workbook.read([
      { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1 },
    ]);
    expect(blocks[0]!.cells[0]![0]).toEqual({ value: 15, formula: SECONDS });
  });

  test('reads them as files store them, and writes them as people do', async () => {
    await leftUnknown();
    open.book.storedSpelling = true;
    expect(await repairFormulas(open.workbook)).toBe(4);
    expect(open.book.sheetNamed('Sheet1').cells.get('0,0')!.formula).toBe(SECONDS);
  });

  test('writes nothing where nothing is wrong', async () => {
    await apply(write(0, 0, SECONDS, '=UNKNOWN(1)'));
    const { writes } = open.fake.traffic;
    expect(await repairFormulas(open.workbook)).toBe(0);
    expect(open.fake.traffic.writes).toBe(writes);
  });
});

describe('a button of the ribbon', () => {
  const services = { today: () => '2026-05-03', measures: 'US' } as const;

  test('to make the card says what the round still needs', async () => {
    const pane = createPane(open.workbook, services);
    const said = await ribbonActions(pane, open.workbook).makeCard();
    expect(said).toBe(pane.view().message!.text);
    expect(pane.view().section.id).toBe('round');
    pane.close();
  });

  test('to show the card goes there, or says that there is none', async () => {
    const pane = createPane(open.workbook, services);
    const { showCard } = ribbonActions(pane, open.workbook);
    expect(await showCard()).toBe('There is no card to show: make the card first.');
    const area = { sheet: 'Card', row: 2, column: 1, rows: 3, columns: 3 };
    await apply({ kind: 'addSheet', sheet: 'Card' }, { kind: 'name', name: CARD, area });
    expect(await showCard()).toBeUndefined();
    expect((await open.workbook.outline()).active).toBe('Card');
    pane.close();
  });

  test('to repair formulas says how many', async () => {
    const pane = createPane(open.workbook, services);
    const repair = () => ribbonActions(pane, open.workbook).repairFormulas();
    expect(await repair()).toBe('No FEED formula shows #NAME?, so nothing was written.');
    await apply(write(0, 0, SECONDS));
    open.book.unknown = true;
    expect(await repair()).toBe('Wrote 1 FEED formula anew.');
    pane.close();
  });
});

describe('the workbook is watched', () => {
  const told: HostEvent[] = [];
  beforeEach(() => void vi.useFakeTimers({ shouldAdvanceTime: true }));
  afterEach(() => void vi.useRealTimers());
  /** Longer than changes are gathered. */
  const settle = () => vi.advanceTimersByTimeAsync(260);
  const changed = (triggerSource: string) => ({ triggerSource, worksheetId: '{1}', address: 'A1' });
  let stop: () => void;

  const watch = async (version: string): Promise<void> => {
    open = openFake({ version });
    told.length = 0;
    stop = watchWorkbook(open.program, open.workbook, (event) => told.push(event));
    await settle();
  };

  test("for the user's changes, told once for many", async () => {
    await watch('1.20');
    for (let at = 0; at < 5; at += 1) open.fake.tell('WorksheetCollection.onChanged', changed('Unknown'));
    await settle();
    expect(told).toEqual([{ kind: 'workbookChanged' }]);
    stop();
    open.fake.tell('WorksheetCollection.onChanged', changed('Unknown'));
    await settle();
    expect(told).toHaveLength(1);
  });

  test('and its own writing is not told, while what a user does meanwhile is', async () => {
    await watch('1.20');
    open.fake.beforeWriting = () =>
      open.fake.tell('WorksheetCollection.onChanged', changed('ThisLocalAddin'));
    await apply(write(0, 0, 'x'));
    await settle();
    expect(told).toEqual([]);
    open.fake.beforeWriting = () => open.fake.tell('WorksheetCollection.onChanged', changed('Unknown'));
    await apply(write(0, 0, 'y'));
    await settle();
    expect(told).toEqual([{ kind: 'workbookChanged' }]);
  });

  test('by the moment of writing where the program does not tell whose change it is', async () => {
    await watch('1.13');
    open.fake.beforeWriting = () => open.fake.tell('WorksheetCollection.onChanged', {});
    await apply(write(0, 0, 'x'));
    await settle();
    expect(told).toEqual([]);
    open.fake.tell('WorksheetCollection.onChanged', {});
    await settle();
    expect(told).toEqual([{ kind: 'workbookChanged' }]);
  });

  test('for the selected cell, by the name that its sheet has now', async () => {
    await watch('1.20');
    open.book.rename('Sheet1', "Gran's roses");
    open.fake.tell('WorksheetCollection.onNameChanged', { worksheetId: '{1}' });
    await settle();
    open.fake.tell('WorksheetCollection.onSelectionChanged', { worksheetId: '{1}', address: 'C5:D9,F1' });
    await settle();
    expect(told.at(-1)).toEqual({ kind: 'selected', sheet: "Gran's roses", row: 4, column: 2 });
  });
});

describe("the program's theme", () => {
  test.each([
    [{ bodyBackgroundColor: '#FFFFFF' }, 'light'],
    [{ bodyBackgroundColor: '#e6e6e6' }, 'light'],
    [{ bodyBackgroundColor: '#262626' }, 'dark'],
    [{ bodyBackgroundColor: '#444444' }, 'dark'],
    [{ bodyBackgroundColor: '#FFFFFF', isDarkTheme: true }, 'dark'],
    [{ bodyBackgroundColor: 'white' }, undefined],
    [undefined, undefined],
  ])('%o is %s', (theme, looks) => {
    expect(themeOf(theme)).toBe(looks);
  });
});

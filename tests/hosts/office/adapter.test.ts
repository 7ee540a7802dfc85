import { beforeEach, describe, expect, test } from 'vitest';

import type { Area, Change, Edit } from '../../../addin/workbook/change';
import type { ExcelProgram } from '../../../addin/hosts/office/excelProgram';
import { officeWorkbook } from '../../../addin/hosts/office/officeWorkbook';
import { WorkbookError, WorkbookMoved, type Outline } from '../../../addin/workbook/port';
import { usedArea } from '../../../addin/workbook/snapshot';

import { openFake, type OpenFake } from './openFake';

let open: OpenFake;
beforeEach(() => {
  open = openFake();
});

const area = (row: number, column: number, rows = 1, columns = 1, sheet = 'Sheet1'): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});
const change = (...edits: Edit[]): Change => ({ title: 'Make the card', edits });
const apply = (...edits: Edit[]): Promise<void> => open.workbook.apply(change(...edits));
const write = (
  row: number,
  column: number,
  cells: (Edit & { kind: 'write' })['cells'],
  sheet = 'Sheet1',
): Edit => ({
  kind: 'write',
  sheet,
  row,
  column,
  cells,
});
const cell = async (row: number, column: number, sheet = 'Sheet1') =>
  (await open.workbook.read([area(row, column, 1, 1, sheet)])).blocks[0]!.cells[0]![0]!;
const refusal = async (done: Promise<unknown>): Promise<string> => {
  const error = await done.then(
    () => new Error('It was not refused.'),
    (reason: unknown) => reason as Error,
  );
  expect(error).toBeInstanceOf(WorkbookError);
  return error.message;
};

/** One of every kind of edit, over a sheet that holds something of every kind already. */
const everything: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'Card' },
  { kind: 'name', name: 'Old_name', area: area(3, 3) },
  { kind: 'name', name: 'New_name', area: area(0, 0, 1, 1, 'Card') },
  { kind: 'merge', area: area(9, 0, 1, 3) },
  write(0, 0, [
    ['new', { formula: '=1+1' }],
    [7, true],
  ]),
  write(0, 0, [['card']], 'Card'),
  { kind: 'format', area: area(0, 0, 2, 2), format: '0.00' },
  { kind: 'style', area: area(0, 0, 3, 3), style: 'input' },
  { kind: 'style', area: area(0, 0, 1, 2, 'Card'), style: 'title' },
  { kind: 'wrap', area: area(0, 0) },
  { kind: 'merge', area: area(15, 0, 1, 2) },
  { kind: 'width', sheet: 'Sheet1', column: 0, columns: 3, characters: 30 },
  { kind: 'freeze', sheet: 'Sheet1', rows: 1, columns: 1 },
  { kind: 'list', area: area(0, 0, 4, 1), source: ['a', 'b'], message: 'a or b' },
  { kind: 'note', sheet: 'Sheet1', row: 0, column: 0, text: 'new note' },
  { kind: 'note', sheet: 'Sheet1', row: 5, column: 0, text: 'another' },
  { kind: 'note', sheet: 'Card', row: 0, column: 0, text: 'on the card' },
  { kind: 'page', area: area(0, 0, 9, 2), landscape: true, repeatRows: 2 },
  {
    kind: 'chart',
    id: 'fills',
    sheet: 'Sheet1',
    row: 12,
    column: 0,
    type: 'bar',
    title: 'New chart',
    finding: 'Fewer.',
    labels: area(0, 0, 2, 1),
    series: [{ name: 'Fills', values: area(0, 1, 2, 1) }],
  },
  { kind: 'activate', sheet: 'Card', row: 0, column: 0 },
];

const before: readonly Edit[] = [
  write(0, 0, [
    ['old', { formula: '=2*3' }, "'tis"],
    ['=text', 5, '1/2'],
  ]),
  write(9, 1, [['under the merge', 3]]),
  { kind: 'merge', area: area(15, 0, 1, 2) },
  { kind: 'format', area: area(1, 1), format: '#,##0' },
  { kind: 'format', area: area(0, 0), format: '@' },
  { kind: 'style', area: area(0, 0, 2, 1), style: 'warning' },
  { kind: 'style', area: area(1, 1), style: 'computed' },
  { kind: 'wrap', area: area(2, 2) },
  { kind: 'width', sheet: 'Sheet1', column: 1, columns: 1, characters: 12 },
  { kind: 'freeze', sheet: 'Sheet1', rows: 3, columns: 0 },
  { kind: 'list', area: area(1, 0, 1, 1), source: area(0, 0, 2, 1), message: 'See above.' },
  { kind: 'name', name: 'Old_name', area: area(1, 1) },
  { kind: 'note', sheet: 'Sheet1', row: 0, column: 0, text: 'old note' },
  { kind: 'page', area: area(0, 0, 3, 3), landscape: false, repeatRows: 1 },
  { ...(everything.find(({ kind }) => kind === 'chart') as Edit & { kind: 'chart' }), title: 'Old chart' },
];

test('a page has little white around it, as in the other hosts: 10 mm are 28.3 points', async () => {
  open = openFake({});
  await apply(...before);
  const { margins } = await open.book.page('{1}');
  for (const side of ['leftMargin', 'rightMargin', 'topMargin', 'bottomMargin'])
    expect(margins[side]).toBeCloseTo(28.346, 2);
});

describe('a workbook that is edited while the program answers', () => {
  const used = (outline: Outline): Area[] => [usedArea(outline, 'Sheet1')!];

  const byHand = async (text: string): Promise<void> =>
    open.book.write({ sheet: '{1}', row: 1, column: 0, rows: 1, columns: 1 }, [[text]]);

  test('is read again where rows were inserted, so that outline and cells are of one moment', async () => {
    await apply(write(0, 0, [['Head'], ['Ada']]));
    let times = 0;
    const { blocks } = await open.workbook.read((outline) => {
      times += 1;
      if (times === 1) open.book.insert('Sheet1', 'row', 0, 2);
      return used(outline);
    });
    expect(times).toBe(2);
    expect(blocks[0]!.cells.map(([first]) => first!.value)).toEqual([null, null, 'Head', 'Ada']);
  });

  test.each([1, 2, 3])(
    'is looked at last of all before it is written: edited after answer %i',
    async (answers) => {
      await apply(write(0, 0, [['Head'], ['Ada']]));
      const seen = await open.workbook.read(used);
      /** A program whose user types after so many answers of a batch. */
      const interrupted: ExcelProgram = {
        ...open.program,
        run: (batch, how) =>
          open.program.run((context) => {
            const sync = context.sync.bind(context);
            let given = 0;
            const watched = async (): Promise<void> => {
              await sync();
              given += 1;
              if (given === answers) await byHand('Bea');
            };
            return batch(Object.assign(context, { sync: watched }));
          }, how),
      };
      const done = officeWorkbook(interrupted).apply(change(write(1, 0, [['Cora']])), seen);
      await expect(done).rejects.toThrow(WorkbookMoved);
      expect((await cell(1, 0)).value).toBe('Bea');
    },
  );
});

describe.each(['1.13', '1.20'])('a change with ExcelApi %s', (version) => {
  beforeEach(async () => {
    open = openFake({ version });
    await apply(...before);
  });

  const countWritings = async (): Promise<number> => {
    let low = 1;
    for (;;) {
      const copy = openFake({ version });
      await copy.workbook.apply(change(...before));
      copy.fake.failAt(low);
      const failed = await copy.workbook.apply(change(...everything)).then(
        () => false,
        () => true,
      );
      if (!failed) return low - 1;
      low += 20;
      if (low > 2_000) throw new Error('It fails for ever.');
    }
  };

  test('that is refused at any of its writings leaves the workbook as it was', async () => {
    const most = await countWritings();
    expect(most).toBeGreaterThan(60);
    open = openFake({ version });
    await apply(...before);
    const was = open.book.state();
    let refusals = 0;
    for (let at = 1; at <= most; at += 1) {
      open.fake.failAt(at);
      const done = apply(...everything);
      const said = await done.then(
        () => undefined,
        (error: Error) => error.message,
      );
      open.fake.failAt(undefined);
      if (said === undefined) break;
      refusals += 1;
      const now = open.book.state();
      expect(said).toBe('“Make the card” could not be written, and the workbook stays as it was.');
      expect(now, `after the refusal of writing ${at}`).toEqual(was);
      open.book.restore(was);
    }
    expect(refusals).toBeGreaterThan(60);
  });

  test('is one request of writing, so that it is one step of the undo', async () => {
    const { undoSteps } = open.fake;
    const { writes } = open.fake.traffic;
    const was = open.book.state();
    await apply(...everything);
    expect(open.fake.traffic.writes - writes).toBe(1);
    expect(open.fake.undoSteps).toBe(undoSteps + 1);
    open.fake.undo();
    expect(open.book.state()).toEqual(was);
  });
});

describe('a change', () => {
  test('is written without grouping where the program groups nothing over new sheets', async () => {
    open = openFake({ addingNotUndone: true });
    await apply({ kind: 'addSheet', sheet: 'Card' }, write(0, 0, [['x']], 'Card'));
    expect((await cell(0, 0, 'Card')).value).toBe('x');
    expect((await open.workbook.outline()).sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Card']);
  });

  test('takes away no sheet of somebody else who was first with the name', async () => {
    open.fake.beforeWriting = async () => {
      open.fake.beforeWriting = undefined;
      const id = await open.book.addSheet('Card');
      await open.book.write({ sheet: id, row: 0, column: 0, rows: 1, columns: 1 }, [['theirs']]);
    };
    const said = await refusal(apply({ kind: 'addSheet', sheet: 'Card' }, write(0, 0, [['ours']], 'Card')));
    expect(said).toBe(
      'There is something of that name in the workbook already. “Make the card” could not be written, and the workbook stays as it was.',
    );
    expect((await cell(0, 0, 'Card')).value).toBe('theirs');
  });

  test('is written where it belongs when the user renames the sheet meanwhile', async () => {
    open.fake.beforeWriting = () => open.book.rename('Sheet1', 'Roses');
    await apply(write(0, 0, [['here']]));
    open.fake.beforeWriting = undefined;
    expect((await cell(0, 0, 'Roses')).value).toBe('here');
  });

  test('is refused in plain words when the user deletes the sheet meanwhile', async () => {
    await apply({ kind: 'addSheet', sheet: 'Other' });
    open.fake.beforeWriting = () => open.book.deleteSheet(open.book.sheetNamed('Other').id);
    const said = await refusal(apply(write(0, 0, [['here']], 'Other')));
    expect(said).toContain('A sheet or an object that this needs is no longer there. Try again.');
  });

  test('keeps what the user types elsewhere meanwhile', async () => {
    open.fake.beforeWriting = async () => {
      open.fake.beforeWriting = undefined;
      const { id } = open.book.sheetNamed('Sheet1');
      await open.book.write({ sheet: id, row: 8, column: 8, rows: 1, columns: 1 }, [["the user's"]]);
    };
    open.fake.failAt(1);
    await refusal(apply(write(0, 0, [['x']])));
    expect((await cell(8, 8)).value).toBe("the user's");
  });

  test('larger than a request is written in several, and taken back whole', async () => {
    const rows = Array.from({ length: 4_000 }, (_, row) => [`Rosé ${row}`.padEnd(1_500, 'é')]);
    await apply(write(0, 0, rows), write(0, 1, [['end']]));
    expect(open.fake.traffic.request).toBeGreaterThan(1_000_000);
    expect(open.fake.traffic.request).toBeLessThan(5 * 1024 * 1024);
    expect((await cell(3_999, 0)).value).toBe(rows[3_999]![0]);
    expect(open.fake.undoSteps).toBe(1);
    open.fake.undo();
    expect((await open.workbook.outline()).sheets[0]).toMatchObject({ rows: 0 });
  });

  test('puts numbers and formulas into cells that are kept as text', async () => {
    await apply({ kind: 'format', area: area(0, 0, 1, 3), format: '@' });
    await apply(write(0, 0, [[5, { formula: '=2*3' }, '007']]));
    expect([(await cell(0, 0)).value, (await cell(0, 1)).value, (await cell(0, 2)).value]).toEqual([
      5,
      6,
      '007',
    ]);
  });

  test('leaves nothing of an old look behind', async () => {
    const fresh = openFake();
    await fresh.workbook.apply(change({ kind: 'style', area: area(0, 0, 2, 2), style: 'note' }));
    await apply({ kind: 'style', area: area(0, 0, 2, 2), style: 'input' });
    await apply({ kind: 'style', area: area(0, 0, 2, 2), style: 'note' });
    expect(open.book.sheetNamed('Sheet1').looks).toEqual(fresh.book.sheetNamed('Sheet1').looks);
  });

  test('tells the finding of a chart under it', async () => {
    await apply(everything.find(({ kind }) => kind === 'chart')!);
    expect(open.book.sheetNamed('Sheet1').charts).toMatchObject([
      { name: 'Wandcount fills', below: 'Fewer.', legend: false },
    ]);
  });

  test('shortens a sentence that the program would not show', async () => {
    await apply({ kind: 'list', area: area(0, 0), source: ['a'], message: 'x'.repeat(400) });
    const { errorAlert } = open.book.sheetNamed('Sheet1').rules.get('0,0')!;
    expect((errorAlert as { message: string }).message).toHaveLength(225);
  });
});

describe('a lock', () => {
  const sentence = async (lock: () => void, ...edits: Edit[]): Promise<string> => {
    await apply(write(0, 0, [['before']]), { kind: 'addSheet', sheet: 'Other' });
    lock();
    const was = open.book.state();
    const said = await refusal(apply(...edits));
    expect(open.book.state()).toEqual(was);
    return said;
  };

  test('on a sheet is said before anything is written', async () => {
    const lock = () => open.book.protect('Sheet1', true);
    expect(await sentence(lock, { kind: 'addSheet', sheet: 'Card' }, write(0, 0, [[1]]))).toBe(
      'The sheet “Sheet1” is protected. Take the protection off, then try again.',
    );
  });

  test('on two sheets names both', async () => {
    const lock = () => ['Sheet1', 'Other'].forEach((name) => open.book.protect(name, true));
    const edits: Edit[] = [
      write(0, 0, [[1]]),
      { kind: 'width', sheet: 'Other', column: 0, columns: 1, characters: 9 },
    ];
    expect(await sentence(lock, ...edits)).toBe(
      'The sheets “Sheet1”, “Other” are protected. Take the protection off, then try again.',
    );
  });

  test('on a sheet that the change does not touch does not matter', async () => {
    await apply({ kind: 'addSheet', sheet: 'Other' });
    open.book.protect('Other', true);
    await apply(write(0, 0, [[1]]), { kind: 'activate', sheet: 'Other', row: 0, column: 0 });
    expect((await cell(0, 0)).value).toBe(1);
  });

  test('on the structure keeps new sheets out, and other changes not', async () => {
    const lock = () => open.book.protect(undefined, true);
    expect(await sentence(lock, { kind: 'addSheet', sheet: 'Card' })).toBe(
      "The workbook's structure is protected, so no sheet can be added. Take the protection off, then try again.",
    );
    await apply(write(0, 0, [[1]]));
  });

  test('of a workbook open for reading is said, and going to a cell is not kept from it', async () => {
    const lock = () => void (open.book.readOnly = true);
    expect(await sentence(lock, write(0, 0, [[1]]))).toBe(
      'This workbook is open for reading only. Open it for editing, or save a copy and open that, then try again.',
    );
    await apply({ kind: 'activate', sheet: 'Other', row: 0, column: 0 });
    expect((await open.workbook.outline()).active).toBe('Other');
  });

  test('by a cell that is being edited is said, at once', async () => {
    const lock = () => void (open.fake.editing = true);
    expect(await sentence(lock, write(0, 0, [[1]]))).toBe(
      'A cell is being edited. Finish it with Enter, or leave it with Esc, then try again. “Make the card” could not be written, and the workbook stays as it was.',
    );
  });

  test('that comes between the check and the writing is said too', async () => {
    open.fake.beforeWriting = () => open.book.protect('Sheet1', true);
    const said = await refusal(apply(write(0, 0, [[1]])));
    expect(said).toContain('the workbook or a sheet is protected');
  });

  test.each([
    ['FilteredRangeConflict', 'A filter hides some of the cells. Clear the filter, then try again.'],
    ['InactiveWorkbook', 'Another workbook is in front. Go back to this one, then try again.'],
    ['MemoryLimitReached', 'That is more than the program takes at once.'],
  ])('that the program calls %s is told in plain words', async (code, words) => {
    open.fake.failAt(1, code);
    expect(await refusal(apply(write(0, 0, [[1]])))).toBe(
      `${words} “Make the card” could not be written, and the workbook stays as it was.`,
    );
  });
});

describe('reading', () => {
  test('waits while the user edits a cell', async () => {
    open.fake.editing = true;
    const reading = open.workbook.outline();
    setTimeout(() => (open.fake.editing = false), 30);
    expect((await reading).active).toBe('Sheet1');
  });

  test('takes as many answers as the cells need', async () => {
    const rows = Array.from({ length: 12_000 }, (_, row) => [
      row,
      `Rose ${row}`,
      row % 2 === 0,
      'x'.repeat(60),
    ]);
    await apply(write(0, 0, rows));
    open.fake.traffic.answer = 0;
    const { blocks } = await open.workbook.read([area(0, 0, 12_000, 4), area(11_999, 1)]);
    expect(blocks[0]!.cells.map((line) => line[1]!.value)).toEqual(rows.map((line) => line[1]));
    expect(blocks[1]!.cells[0]![0]!.value).toBe('Rose 11999');
    expect(open.fake.traffic.answer).toBeLessThan(5 * 1024 * 1024);
  });

  test('asks for less where the texts are long', async () => {
    const rows = Array.from({ length: 600 }, (_, row) => [`${row} ${'long '.repeat(4_000)}`]);
    await apply(write(0, 0, rows));
    const { blocks } = await open.workbook.read([area(0, 0, 600, 1)]);
    expect(blocks[0]!.cells.map((line) => line[0]!.value)).toEqual(rows.map((line) => line[0]));
  });

  test('tells more merged cells than the program tells at once', async () => {
    const merges = Array.from({ length: 700 }, (_, row): Edit => ({
      kind: 'merge',
      area: area(row, 0, 1, 2),
    }));
    await apply(...merges);
    const [sheet] = (await open.workbook.outline()).sheets;
    expect(sheet!.merges).toHaveLength(700);
    expect(new Set(sheet!.merges.map(({ row }) => row)).size).toBe(700);
  });

  test.each([false, true])('tells FEED formulas in one spelling, stored as in a file: %s', async (stored) => {
    open.book.storedSpelling = stored;
    await apply(write(0, 0, [[{ formula: '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")' }]]));
    expect(await cell(0, 0)).toEqual({ value: 15, formula: '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")' });
  });

  test('waits for the answers of functions that were just written', async () => {
    open.book.answersAfter = 3;
    await apply(write(0, 0, [[{ formula: '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")' }]]));
    expect((await cell(0, 0)).value).toBe(15);
  });

  test('tells an error as the cell shows it, a text that reads like one as text', async () => {
    await apply(
      write(0, 0, [[{ formula: '=FEED.SECONDS(0.7,"ft",2.8,"gal/min")' }, '#N/A', { formula: '=1/0' }]]),
    );
    expect(await cell(0, 0)).toMatchObject({ value: null, error: '#VALUE!' });
    expect(await cell(0, 1)).toEqual({ value: '#N/A' });
    expect(await cell(0, 2)).toMatchObject({ value: null, error: '#DIV/0!' });
  });
});

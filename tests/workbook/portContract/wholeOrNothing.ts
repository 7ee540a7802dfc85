import { expect, test } from 'vitest';
import type { Edit, StyleToken } from '../../../addin/workbook/change';
import { WorkbookError } from '../../../addin/workbook/port';
import { changeRefusal, LONGEST_TEXT } from '../../../addin/workbook/validateChange';
import { area, change, SHEET, write, type Trial } from './trial';

/** Each is refused by every host with the sentence of `validateChange`. */
const REFUSED: Readonly<Record<string, Edit>> = {
  'an unknown sheet': write(0, 0, [[1]], 'Nowhere'),
  'a sheet name that is taken': { kind: 'addSheet', sheet: SHEET },
  'a sheet name that is taken in other letter case': { kind: 'addSheet', sheet: SHEET.toUpperCase() },
  'an empty sheet name': { kind: 'addSheet', sheet: '' },
  'a sheet name of spaces': { kind: 'addSheet', sheet: '  ' },
  'a sheet name of 32 characters': { kind: 'addSheet', sheet: 'x'.repeat(32) },
  'a colon in a sheet name': { kind: 'addSheet', sheet: 'a:b' },
  'a backslash in a sheet name': { kind: 'addSheet', sheet: 'a\\b' },
  'a slash in a sheet name': { kind: 'addSheet', sheet: 'a/b' },
  'a question mark in a sheet name': { kind: 'addSheet', sheet: 'a?b' },
  'an asterisk in a sheet name': { kind: 'addSheet', sheet: 'a*b' },
  'an opening bracket in a sheet name': { kind: 'addSheet', sheet: 'a[b' },
  'a closing bracket in a sheet name': { kind: 'addSheet', sheet: 'a]b' },
  'an apostrophe before a sheet name': { kind: 'addSheet', sheet: "'a" },
  'ragged cells': write(0, 0, [[1, 2], [3]]),
  'no cells': write(0, 0, []),
  'a row before the first': write(-1, 0, [[1]]),
  'a column past the last': write(0, 16_384, [[1]]),
  'a row past the last': write(1_048_575, 0, [[1], [2]]),
  'half a row': write(0.5, 0, [[1]]),
  'a number that is not one': write(0, 0, [[Number.NaN]]),
  'a number without end': write(0, 0, [[Number.POSITIVE_INFINITY]]),
  'a text too long for a cell': write(0, 0, [['x'.repeat(LONGEST_TEXT + 1)]]),
  'a formula without its sign': write(0, 0, [[{ formula: 'SUM(A1:A2)' }]]),
  'a format for an area of no rows': { kind: 'format', area: area(0, 0, 0, 1), format: '0.0' },
  'an empty format': { kind: 'format', area: area(0, 0), format: '' },
  'a width of nothing': { kind: 'width', sheet: SHEET, column: 0, columns: 1, characters: 0 },
  'an unknown style': { kind: 'style', area: area(0, 0), style: 'loud' as StyleToken },
  'a merge of one cell': { kind: 'merge', area: area(0, 0) },
  'a list with a comma in an entry': { kind: 'list', area: area(0, 0), source: ['a,b'], message: '' },
  'a list of nothing': { kind: 'list', area: area(0, 0), source: [], message: '' },
  'a list from a block of cells': { kind: 'list', area: area(0, 0), source: area(0, 2, 2, 2), message: '' },
  'a name that reads like a cell': { kind: 'name', name: 'AB12', area: area(0, 0) },
  'a name with a space': { kind: 'name', name: 'my flow', area: area(0, 0) },
  'an empty note': { kind: 'note', sheet: SHEET, row: 0, column: 0, text: ' ' },
  'frozen rows below nothing': { kind: 'freeze', sheet: SHEET, rows: -1, columns: 0 },
  'a chart without values': {
    kind: 'chart',
    id: 'c',
    sheet: SHEET,
    row: 0,
    column: 0,
    type: 'bar',
    title: 't',
    finding: 'f',
    labels: area(0, 0, 2, 1),
    series: [],
  },
  'a page of an unknown sheet': {
    kind: 'page',
    area: area(0, 0, 1, 1, 'Nowhere'),
    landscape: false,
    repeatRows: 0,
  },
  'a sheet fitted to no page': {
    kind: 'page',
    area: area(0, 0),
    landscape: false,
    repeatRows: 0,
    pagesHigh: 0,
  },
  'a cell to select on an unknown sheet': { kind: 'activate', sheet: 'Nowhere', row: 0, column: 0 },
};

/** A change is written whole or not at all, and refused in the same words by every host. */
export const wholeOrNothing = ({ apply, outline, cells, everything }: Trial): void => {
  test.each(Object.entries(REFUSED))(
    '%s in the middle of a change is refused and nothing is written',
    async (_what, bad) => {
      await apply(write(0, 0, [['before']]), { kind: 'name', name: 'Contract_kept', area: area(0, 0) });
      const before = await everything();
      const edits: Edit[] = [
        write(0, 0, [['after', 1]]),
        { kind: 'addSheet', sheet: 'Other' },
        { kind: 'name', name: 'Contract_kept', area: area(0, 1) },
        bad,
        write(1, 0, [['after']]),
      ];
      const sentence = changeRefusal(change(...edits), await outline());
      expect(sentence).toMatch(/\.$/);
      const refused = await apply(...edits).then(
        () => undefined,
        (error: unknown) => error,
      );
      expect(refused).toBeInstanceOf(WorkbookError);
      expect((refused as Error).message).toBe(sentence);
      expect(await everything()).toEqual(before);
    },
  );

  test('a change of thousands of cells is written whole', async () => {
    const rows = Array.from({ length: 2_000 }, (_, row) => [`Rose ${row}`, row, row % 2 === 0]);
    await apply(write(3, 0, rows));
    const last = (await cells(2_002, 0, 1, 3))[0]!.map((state) => state.value);
    expect(last).toEqual(['Rose 1999', 1_999, false]);
  });

  test('a change with nothing to do does nothing', async () => {
    const before = await everything();
    await apply();
    expect(await everything()).toEqual(before);
  });
};

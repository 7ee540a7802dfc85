import { expect, test } from 'vitest';
import { LONGEST_TEXT } from '../../../addin/workbook/validateChange';
import { area, write, type Trial } from './trial';

/** Texts that a spreadsheet would like to take for something else. */
const TEXTS: Readonly<Record<string, string>> = {
  'an equals sign first': '=1+1',
  'an equals sign and a function first': '=HYPERLINK("x","y")',
  'a plus first': '+1',
  'a minus first': '-2 left',
  'an at sign first': '@SUM(1)',
  'an apostrophe first': "'tis",
  'digits with zeros before them': '007',
  'a date in words': '2026-05-03',
  'a fraction': '1/2',
  'a truth word': 'TRUE',
  'a percentage': '5%',
  'an error word': '#N/A',
  'a time': '7:30',
  HTML: '<b onmouseover="x()">Rose &amp; thorn</b>',
  'letters of many scripts': 'Rosé ‘Žluťoučký’ 玫瑰 وردة 🌹',
  'several lines': 'first\nsecond',
  'spaces around': '  spaced  ',
  'as long as a cell holds': 'x'.repeat(LONGEST_TEXT),
};

/** Values, which stay what they were written as. */
export const values = ({ apply, cells, cell }: Trial): void => {
  test('numbers, texts and truth values come back as they were written', async () => {
    await apply(
      write(1, 2, [
        [1.5, 'Rose', true],
        [-3, 'East bed', false],
        [0, null, 1e-9],
      ]),
    );
    const values = (await cells(1, 2, 3, 3)).map((row) => row.map((state) => state.value));
    expect(values).toEqual([
      [1.5, 'Rose', true],
      [-3, 'East bed', false],
      [0, null, 1e-9],
    ]);
  });

  test.each(Object.entries(TEXTS))('text with %s stays text', async (_what, text) => {
    await apply(write(0, 0, [[text]]));
    const state = await cell(0, 0);
    expect(state.value).toBe(text);
    expect(state.formula).toBeUndefined();
    expect(state.error).toBeUndefined();
  });

  test('empty text and null both empty a cell', async () => {
    await apply(write(0, 0, [['a', 'b', 'c']]));
    await apply(write(0, 0, [['', null]]));
    expect((await cells(0, 0, 1, 3))[0]!.map((state) => state.value)).toEqual([null, null, 'c']);
  });

  test('undefined leaves a cell as it is', async () => {
    await apply(write(0, 0, [['a', { formula: '=1+1' }, 'c']]));
    await apply(write(0, 0, [['x', undefined as never, 'z']]));
    const row = (await cells(0, 0, 1, 3))[0]!;
    expect([row[0]!.value, row[1]!.formula, row[2]!.value]).toEqual(['x', '=1+1', 'z']);
  });

  test('a date is its serial number', async () => {
    await apply(write(0, 0, [[46_145]]), { kind: 'format', area: area(0, 0), format: 'yyyy-mm-dd' });
    expect((await cell(0, 0)).value).toBe(46_145);
  });
};

import { describe, expect, test } from 'vitest';
import { LONGEST_NOTES } from '../../../addin/core/adopt/inventory';
import { type ListCell } from '../../../addin/core';
import { adopt, lines, reasons, sentences } from './adopted';

const HEADINGS = ['Variety', 'Bed', 'Class', 'How many', 'Notes'];

describe('lists with nothing to read', () => {
  test.each([
    ['no rows', [], 'The sheet is empty: there is no list to adopt.'],
    ['blank cells only', [[null], [''], ['\u200b\u00a0']], 'The sheet is empty: there is no list to adopt.'],
    [
      'headings only',
      [[], HEADINGS, []],
      'The headings stand in row 2, but no rows follow: there is nothing to adopt.',
    ],
  ] as [string, ListCell[][], string][])('%s', (_what, cells, sentence) => {
    const { proposal, inventory } = adopt(cells);
    expect(proposal.problems).toEqual([{ kind: 'stop', sentence }]);
    expect(inventory).toMatchObject({
      plants: [],
      beds: [],
      outcome: sentence,
      problems: [{ kind: 'stop', sentence }],
    });
  });

  test('rows, but no roses that can be read', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 0],
      ['Brass Lantern', 'Front', 'HT', 'none'],
    ]);
    expect(inventory.outcome).toBe('No roses could be read from 3 rows; 2 rows could not be read.');
  });
});

describe('cells that are no ordinary words', () => {
  test('text that begins like a formula, and HTML, stay text', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['=HYPERLINK("x")', '+Front', 'HT', 1, '@note'],
      ['<b>Amber</b>', '-Back', 'HT', 1, '<script>alert(1)</script>'],
    ]);
    expect(inventory.plants).toMatchObject([
      { plant: '=HYPERLINK("x")', bed: '+Front', notes: '@note' },
      { plant: '<b>Amber</b>', bed: '-Back', notes: '<script>alert(1)</script>' },
    ]);
  });

  test('invisible characters, no-break spaces and line breaks do not part what is the same', () => {
    const { inventory } = adopt([
      ['Vari\u00adety', 'Bed', 'Class', 'How\nmany'],
      ['Amber\u00a0Kettle', '\u200bFront', 'H\u200dT', ' 2 '],
      ['Amber  Kettle\ufeff', 'Front\t', 'HT', 1],
    ]);
    expect(lines(inventory)).toEqual(['3 Amber Kettle, Front, Hybrid tea, Large bush']);
  });

  test('names that are no names are listed with the reason', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['', 'Front', 'HT', 1],
      ['?', 'Front', 'HT', 1],
      ['#REF!', 'Front', 'HT', 1],
      ['y'.repeat(5000), 'Front', 'HT', 1],
      ['Amber Kettle', 'z'.repeat(5000), 'HT', 1],
    ]);
    expect(reasons(inventory)).toEqual([
      'row 2: it names no plant',
      'row 3: “?” is no name of a plant',
      'row 4: its name is the error #REF!',
      'row 5: its name is 5,000 characters long; at most 100 are read',
      'row 6: its bed is 5,000 characters long; at most 100 are read',
    ]);
    for (const { text } of inventory.unread) expect(text.length).toBeLessThanOrEqual(160);
  });

  test('notes that are too long are cut, and it is told', () => {
    const { inventory } = adopt([HEADINGS, ['Amber Kettle', 'Front', 'HT', 1, 'n'.repeat(32_767)]]);
    expect(inventory.plants[0]!.notes).toHaveLength(LONGEST_NOTES);
    expect(sentences(inventory)).toContain('Notes were too long and are cut for the roses of row 2.');
  });

  test('rows of uneven length and numbers that are not finite do not stop it', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle'],
      ['Brass Lantern', 'Front', 'HT', NaN, 'x', 'y', 'z'],
      ['Drift Bell', 'Front', 'HT', Infinity],
    ]);
    expect(inventory.plants.reduce((sum, { count }) => sum + count, 0)).toBe(3);
  });

  test('merges that reach past the cells do not stop it', () => {
    const { inventory } = adopt([HEADINGS, ['Amber Kettle', 'Front', 'HT', 1]], {}, [
      { row: 0, column: 6, rows: 1_048_576, columns: 16_378 },
    ]);
    expect(inventory.tally.plants).toBe(1);
  });
});

test('a list in several languages is read as one', () => {
  const { inventory } = adopt([
    ['Variété', 'Beet', 'Clase', 'Aantal', 'Note'],
    ['Amber Kettle', 'Massif 1', 'Rosier grimpant', 'deux', ''],
    ['Brass Lantern', 'Massif 1', 'Edelrosen', '3 Stück', ''],
    ['Copper Thimble', 'Aiuola 2', 'miniatura', 'tre', ''],
    ['Drift Bell', 'Aiuola 2', 'theehybride', 'x4', ''],
  ]);
  expect(lines(inventory)).toEqual([
    '2 Amber Kettle, Massif 1, Climber, Climber',
    '3 Brass Lantern, Massif 1, Hybrid tea, Large bush',
    '3 Copper Thimble, Aiuola 2, Miniature, Miniature',
    '4 Drift Bell, Aiuola 2, Hybrid tea, Large bush',
  ]);
});

// Generous on purpose: these are about being read at all, the bench is about speed.
const PATIENCE = 60_000;

test('100,000 rows are read, each accounted for', { timeout: PATIENCE }, () => {
  const rows = Array.from({ length: 100_000 }, (_, i): ListCell[] => [
    `Rose ${i % 900}`,
    `Bed ${i % 40}`,
    i % 3 ? 'HT' : 'mini',
    1 + (i % 2),
    null,
  ]);
  const { inventory } = adopt([HEADINGS, ...rows]);
  expect(inventory.tally).toMatchObject({ rows: 100_001, plants: 100_000, headers: 1 });
  expect(inventory.plants.reduce((sum, { count }) => sum + count, 0)).toBe(150_000);
});

test('100,000 rows under a merge each are read', { timeout: PATIENCE }, () => {
  const rows = Array.from({ length: 100_000 }, (_, i): ListCell[] => [
    `Rose ${i}`,
    i % 2 ? null : `Bed ${i}`,
    'HT',
    1,
    null,
  ]);
  const merges = Array.from({ length: 50_000 }, (_, i) => ({
    row: 1 + 2 * i,
    column: 1,
    rows: 2,
    columns: 1,
  }));
  const { inventory } = adopt([HEADINGS, ...rows], {}, merges);
  expect(inventory.beds).toHaveLength(50_000);
});

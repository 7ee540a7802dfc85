import { describe, expect, test } from 'vitest';
import { NOT_KNOWN, type ListCell } from '../../../addin/core';
import { isTotalLine } from '../../../addin/core/adopt/rowKind';
import { adopt, lines, reasons, sentences } from './adopted';

const HEADINGS = ['Variety', 'Bed', 'Class', 'How many'];

describe('repeated rows', () => {
  test('are added up, whatever their spelling', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front bed', 'HT', 3],
      ['Brass Lantern', 'Front bed', 'F', null],
      ['AMBER KETTLE', 'front', 'hybrid tea', 'x2'],
    ]);
    expect(lines(inventory)).toEqual([
      '5 Amber Kettle, Front bed, Hybrid tea, Large bush',
      '1 Brass Lantern, Front bed, Floribunda, Bush',
    ]);
    expect(inventory.plants[0]!.sourceRows).toEqual([1, 3]);
    expect(inventory.beds).toEqual([{ bed: 'Front bed', plants: 6 }]);
    expect(inventory.outcome).toBe('6 roses in 1 bed, read from 3 of 4 rows.');
  });

  test('stay apart where bed, class or pot differ', () => {
    const { inventory } = adopt([
      [...HEADINGS, 'Pot'],
      ['Amber Kettle', 'Front', 'Min', 1, ''],
      ['Amber Kettle', 'Back', 'Min', 1, ''],
      ['Amber Kettle', 'Front', 'Min', 1, 'pot'],
      ['Amber Kettle', 'Front', 'HT', 1, ''],
    ]);
    expect(inventory.plants).toHaveLength(4);
  });

  test('keep the spelling that is used most', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['AMBER KETTLE', 'FRONT', 'HT', 1],
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Amber Kettle', 'Front', 'HT', 1],
    ]);
    expect(lines(inventory)).toEqual(['3 Amber Kettle, Front, Hybrid tea, Large bush']);
    expect(inventory.beds).toEqual([{ bed: 'Front', plants: 3 }]);
  });

  test('keep each note once', () => {
    const { inventory } = adopt([
      [...HEADINGS, 'Source'],
      ['Amber Kettle', 'Front', 'HT', 1, 'swap'],
      ['Amber Kettle', 'Front', 'HT', 1, 'show'],
      ['Amber Kettle', 'Front', 'HT', 1, 'swap'],
    ]);
    expect(inventory.plants[0]!.notes).toBe('Source: swap; Source: show');
  });

  test('tell which spellings were taken as one', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front bed', 'HT', 1],
      ['Amber-Kettle', 'FRONT BED', 'H.T.', 1],
    ]);
    expect(inventory.readings).toEqual([
      { meaning: 'class', reading: 'Hybrid tea', texts: ['HT', 'H.T.'], rows: 2 },
      { meaning: 'bed', reading: 'Front bed', texts: ['Front bed', 'FRONT BED'], rows: 2 },
      { meaning: 'plant', reading: 'Amber Kettle', texts: ['Amber Kettle', 'Amber-Kettle'], rows: 2 },
    ]);
  });
});

describe('the bed of a rose', () => {
  test('is named by a line of its own above it', () => {
    const { inventory } = adopt([
      ['Variety', 'Class', 'How many'],
      ['Front bed'],
      ['Amber Kettle', 'HT', 3],
      [],
      ['Bed: By the shed'],
      ['Copper Thimble', 'Min', 2],
    ]);
    expect(lines(inventory)).toEqual([
      '3 Amber Kettle, Front bed, Hybrid tea, Large bush',
      '2 Copper Thimble, By the shed, Miniature, Miniature',
    ]);
    expect(inventory.sections).toEqual([
      { row: 1, bed: 'Front bed' },
      { row: 4, bed: 'By the shed' },
    ]);
  });

  test('is named by such a line merged over the list, with the number of its roses beside it or not', () => {
    const { inventory } = adopt(
      [
        ['Variety', 'Class', 'How many'],
        ['By the shed', null, null],
        ['Amber Kettle', 'HT', 3],
        ['Patio pots', null, 2],
        ['Copper Thimble', 'Min', 2],
      ],
      {},
      [{ row: 1, column: 0, rows: 1, columns: 3 }],
    );
    expect(lines(inventory)).toEqual([
      '3 Amber Kettle, By the shed, Hybrid tea, Large bush',
      '2 Copper Thimble, Patio pots, Miniature, Potted miniature',
    ]);
  });

  test('is named by a merged line in the middle of the plants', () => {
    const { inventory } = adopt(
      [
        ['Variety', 'Class', 'How many'],
        ['Amber Kettle', 'HT', 3],
        ['By the shed', null, null],
        ['Copper Thimble', 'Min', 2],
      ],
      {},
      [{ row: 2, column: 0, rows: 1, columns: 3 }],
    );
    expect(inventory.sections).toEqual([{ row: 2, bed: 'By the shed' }]);
  });

  test('stands once and means the blank ones under it', () => {
    const list: ListCell[][] = [
      ['Bed', 'Variety', 'Class'],
      ['Front', 'Amber Kettle', 'HT'],
      [null, 'Brass Lantern', 'HT'],
      [null, 'Copper Thimble', 'F'],
      ['Back', 'Drift Bell', 'F'],
      [null, 'Ember Wren', 'Min'],
    ];
    expect(adopt(list).inventory.beds).toEqual([
      { bed: 'Front', plants: 3 },
      { bed: 'Back', plants: 2 },
    ]);
    const merges = [
      { row: 1, column: 0, rows: 3, columns: 1 },
      { row: 4, column: 0, rows: 2, columns: 1 },
    ];
    expect(adopt(list, {}, merges).inventory.beds).toEqual([
      { bed: 'Front', plants: 3 },
      { bed: 'Back', plants: 2 },
    ]);
    expect(adopt(list, { bedFromAbove: false }).inventory.beds).toContainEqual({
      bed: 'No bed named',
      plants: 3,
    });
  });

  test('is told where it is missing', () => {
    const some = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Drift Bell', '', 'HT', 1],
    ]);
    expect(sentences(some.inventory)).toEqual([
      'No bed is named in row 4; those roses stand under “No bed named”.',
    ]);
    const none = adopt([
      ['Variety', 'Class'],
      ['Amber Kettle', 'HT'],
    ]);
    expect(sentences(none.inventory)).toEqual([
      'The list names no beds: all roses are put in one, “Garden”.',
    ]);
  });

  test('is repeated by a ditto mark', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Brass Lantern', '"', 'ditto', 1],
    ]);
    expect(lines(inventory)[1]).toBe('1 Brass Lantern, Front, Hybrid tea, Large bush');
    const first = adopt([HEADINGS, ['Amber Kettle', '"', 'HT', 1], ['Brass Lantern', 'Front', 'HT', 1]]);
    expect(reasons(first.inventory)).toEqual([
      'row 2: the mark in column B repeats the row above, which has nothing there',
    ]);
  });
});

describe('lines between the plants', () => {
  test('headings again, in the same or in other words, are no plants', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      HEADINGS,
      ['Brass Lantern', 'Front', 'HT', 1],
      ['Rose', 'Location', 'Type', 'Qty'],
      ['Drift Bell', 'Front', 'HT', 1],
    ]);
    expect(inventory.tally).toMatchObject({ headers: 3, plants: 3, unread: 0 });
  });

  test('another list under the first is told, not read under wrong headings', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      [],
      ['Bed', 'Class', 'Rose', 'Count'],
      ['Back', 'F', 'Brass Lantern', 2],
    ]);
    expect(reasons(inventory)).toEqual([
      'row 4: it holds the headings of another list',
      'row 5: it belongs to another list, whose headings stand in row 4; adopt that one by its own headings',
    ]);
  });

  test('totals are no plants, and one that does not add up is told', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 3],
      ['Front bed total', null, null, 3],
      ['Brass Lantern', 'Back', 'HT', 2],
      [null, null, null, 5],
      ['Grand total of roses', null, null, 9],
    ]);
    expect(inventory.tally).toMatchObject({ totals: 3, plants: 2, unread: 0 });
    expect(sentences(inventory)).toEqual([
      'The total in row 6 says 9; the rows above it that could be read come to 5.',
    ]);
  });

  test('a total that shows an error says no number', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 3],
      ['Total', null, null, '#DIV/0!'],
    ]);
    expect(inventory.tally).toMatchObject({ totals: 1, plants: 1, unread: 0 });
    expect(sentences(inventory)).toEqual([]);
  });

  test('a bare number that is no total is not read', () => {
    const { inventory } = adopt([HEADINGS, ['Amber Kettle', 'Front', 'HT', 3], [null, null, null, 7]]);
    expect(reasons(inventory)).toEqual(['row 3: it names no plant']);
  });

  test.each([
    'Total',
    'TOTAL:',
    'Total roses',
    'Sub-total',
    'Grand total of all roses',
    'Total: 350',
    'Summe',
    'Front bed total',
    'Total Front bed',
  ])('“%s” is a total', (text) => expect(isTotalLine(text)).toBe(true));
  test.each(['Total Delight', 'Summer Kettle', 'Totally Amber'])('“%s” is a rose', (text) =>
    expect(isTotalLine(text)).toBe(false),
  );

  test('a bed with nothing under it is listed', () => {
    const { inventory } = adopt([
      ['Variety', 'Class', 'How many'],
      ['Front bed'],
      ['Amber Kettle', 'HT', 1],
      [],
      ['* own root, not yet fed'],
    ]);
    expect(inventory.unread).toEqual([
      { row: 4, reason: 'it stands alone: no roses follow under it', text: '* own root, not yet fed' },
    ]);
  });

  test('a rose with its name only is a rose, not a bed', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Drift Bell'],
      ['Brass Lantern', 'Front', 'HT', 1],
    ]);
    expect(lines(inventory)).toContain('1 Drift Bell, No bed named, Not known');
    const twoColumns = adopt([
      ['Variety', 'How many'],
      ['Amber Kettle', 3],
      ['Drift Bell'],
      ['Ember Wren'],
      ['Brass Lantern', 2],
    ]);
    expect(twoColumns.inventory.tally.plants).toBe(4);
  });
});

describe('class and size', () => {
  test('what the list does not tell is asked once for all alike', () => {
    const list: ListCell[][] = [
      [...HEADINGS, 'Pot'],
      ['Amber Kettle', 'Front', 'shrublet', 2, ''],
      ['Brass Lantern', 'Front', 'Shrublet', 1, ''],
      ['Drift Bell', 'Front', 'HT', 1, 'windowsill'],
      ['Ember Wren', 'Front', '', 1, 'pot'],
    ];
    const { inventory } = adopt(list);
    expect(inventory.asked).toEqual([
      { key: 'shrublet||', given: 'class “shrublet”', plants: 3, sourceRows: [1, 2] },
      { key: 'ht||windowsill', given: 'class “HT”, pot or ground “windowsill”', plants: 1, sourceRows: [3] },
      { key: '||pot', given: 'neither class nor size, in a pot', plants: 1, sourceRows: [4] },
    ]);
    expect(inventory.sizeClasses).toEqual([{ sizeClass: NOT_KNOWN, plants: 5 }]);
    expect(sentences(inventory)[0]).toBe(
      'Give 3 roses a size class: the list says class “shrublet” (rows 2 and 3).',
    );

    const answered = adopt(list, {
      sizeClasses: { 'shrublet||': 'Small bush', '||pot': 'Potted miniature' },
    }).inventory;
    expect(answered.asked.map(({ key }) => key)).toEqual(['ht||windowsill']);
    expect(answered.plants[0]).toMatchObject({ roseClass: 'shrublet', sizeClass: 'Small bush' });
  });

  test('a blank class is taken from the other rows of the same rose, if they agree', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Amber Kettle', 'Back', '', 1],
      ['Drift Bell', 'Back', 'F', 1],
      ['Drift Bell', 'Back', 'HT', 1],
      ['Drift Bell', 'Front', '', 1],
    ]);
    expect(lines(inventory)).toEqual([
      '1 Amber Kettle, Front, Hybrid tea, Large bush',
      '1 Amber Kettle, Back, Hybrid tea, Large bush',
      '1 Drift Bell, Back, Floribunda, Bush',
      '1 Drift Bell, Back, Hybrid tea, Large bush',
      '1 Drift Bell, Front, Not known',
    ]);
    expect(sentences(inventory)).toContain(
      'No class is given in row 3; it is taken from the other rows of the same rose.',
    );
  });

  test('a class that is not understood is asked, even where other rows of the rose say one', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', 1],
      ['Amber Kettle', 'Front', 'shrublet', 1],
    ]);
    expect(inventory.asked.map(({ given }) => given)).toEqual(['class “shrublet”']);
  });

  test('a size that is not known leaves the class to decide and is kept in the notes', () => {
    const { inventory } = adopt([
      ['Variety', 'Class', 'Size'],
      ['Amber Kettle', 'HT', '3 ft'],
      ['Brass Lantern', 'HT', 'L'],
    ]);
    expect(inventory.plants[0]).toMatchObject({ sizeClass: 'Large bush', notes: 'Size: 3 ft' });
    expect(sentences(inventory)).toContain(
      'The size in row 2 is not known; the class decides, and the size is kept in the notes.',
    );
  });

  test('class and number may stand beside the name in a list of one column', () => {
    const { inventory } = adopt([
      ['Roses'],
      ['2 x Amber Kettle (HT)'],
      ['Brass Lantern [mini] x3'],
      ['Copper Thimble (F)'],
      ['Copper Thimble (4)'],
      ['Drift Bell (gift)'],
    ]);
    expect(lines(inventory)).toEqual([
      '2 Amber Kettle, Garden, Hybrid tea, Large bush',
      '3 Brass Lantern, Garden, Miniature, Miniature',
      '5 Copper Thimble, Garden, Floribunda, Bush',
      '1 Drift Bell (gift), Garden, Not known',
    ]);
  });

  test('a bed of pots makes its roses potted where no column says it', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Patio pots', 'Min', 1],
      ['Brass Lantern', 'Potting shed', 'Min', 1],
    ]);
    expect(inventory.plants.map(({ sizeClass }) => sizeClass)).toEqual(['Potted miniature', 'Miniature']);
  });

  test('a list without names is counted by class', () => {
    const { inventory } = adopt([
      ['Bed', 'Class', 'Count'],
      ['Front', 'HT', 24],
      ['Patio', 'Mini', 30],
    ]);
    expect(lines(inventory)).toEqual([
      '24 Hybrid tea, Front, Hybrid tea, Large bush',
      '30 Miniature, Patio, Miniature, Miniature',
    ]);
  });
});

describe('numbers of plants', () => {
  test('that are not certain or unusual are told', () => {
    const { inventory } = adopt([
      HEADINGS,
      ['Amber Kettle', 'Front', 'HT', '~5'],
      ['Brass Lantern', 'Front', 'HT', 2014],
    ]);
    expect(sentences(inventory)).toEqual([
      'Row 3 counts 2,014 plants of “Brass Lantern”. Is that right?',
      'The number of plants is not certain in row 2; it is taken as written.',
    ]);
  });

  test('merged over several roses are not read', () => {
    const { inventory } = adopt(
      [
        HEADINGS,
        ['Amber Kettle', 'Front', 'HT', 4],
        ['Brass Lantern', 'Front', 'HT', null],
        ['Drift Bell', 'Front', 'HT', 1],
      ],
      {},
      [{ row: 1, column: 3, rows: 2, columns: 1 }],
    );
    expect(reasons(inventory)).toEqual([
      'row 2: its number of plants is one cell merged over several rows',
      'row 3: its number of plants is one cell merged over several rows',
    ]);
  });
});

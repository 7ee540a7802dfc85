import { describe, expect, test } from 'vitest';
import type { ListCell } from '../../../addin/core';
import { adopt, meanings, sentences } from './adopted';

const HEADINGS = ['Variety', 'Bed', 'Class', 'How many'];
const ROSES: ListCell[][] = [
  ['Amber Kettle', 'Front bed', 'HT', 3],
  ['Brass Lantern', 'Front bed', 'F', 1],
  ['Copper Thimble', 'Patio', 'Min', 2],
  ['Drift Bell', 'Patio', 'Min', 1],
];

describe('where the headings stand', () => {
  test('in the first row', () => {
    const { proposal } = adopt([HEADINGS, ...ROSES]);
    expect(proposal.headerRow).toBe(0);
    expect(proposal.dataRows).toEqual({ first: 1, last: 4 });
    expect(proposal.outcome).toBe('The headings stand in row 1; 4 filled rows follow.');
  });

  test('under titles, a note, a date and blank lines', () => {
    const top: ListCell[][] = [
      ['Our roses'],
      [],
      ['Updated in spring, ask me for changes to the beds'],
      [null, 45000],
      [],
    ];
    const { proposal, inventory } = adopt([...top, HEADINGS, ...ROSES]);
    expect(proposal.headerRow).toBe(5);
    expect(inventory.tally).toMatchObject({ titles: 3, blank: 2, headers: 1, plants: 4 });
  });

  test('under a title merged over the whole list', () => {
    const title = { row: 0, column: 0, rows: 1, columns: 4 };
    expect(
      adopt([['Our roses', null, null, null], HEADINGS, ...ROSES], {}, [title]).proposal.headerRows,
    ).toEqual([1]);
  });

  test('in two rows, groups above and columns below', () => {
    const groups = ['Rose', null, 'Kind', 'Number'];
    const { proposal } = adopt([['Our roses'], groups, HEADINGS, ...ROSES], {}, [
      { row: 1, column: 0, rows: 1, columns: 2 },
    ]);
    expect(proposal.headerRows).toEqual([1, 2]);
    expect(proposal.headerRow).toBe(2);
    expect(proposal.columns.map(({ header }) => header)).toEqual([
      'Rose Variety',
      'Rose Bed',
      'Kind Class',
      'Number How many',
    ]);
  });

  test('in three rows, the third with units in brackets', () => {
    const { proposal } = adopt(
      [
        ['Rose', 'Where', null, 'Number'],
        HEADINGS,
        ['(name)', '(place)', '(show class)', '(plants)'],
        ...ROSES,
      ],
      {},
      [{ row: 0, column: 1, rows: 1, columns: 2 }],
    );
    expect(proposal.headerRows).toEqual([0, 1, 2]);
    expect(proposal.outcome).toBe('The headings stand in rows 1 to 3; 4 filled rows follow.');
  });

  test('nowhere: the columns are guessed by what they hold', () => {
    const { proposal, inventory } = adopt(ROSES);
    expect(proposal.headerRow).toBeNull();
    expect(proposal.columns.map(({ meaning }) => meaning)).toEqual(['plant', 'bed', 'class', 'count']);
    expect(inventory.tally.plants).toBe(4);
  });

  test('nowhere, under a title', () => {
    const { proposal, inventory } = adopt([['Our roses'], [], ...ROSES]);
    expect(proposal.headerRow).toBeNull();
    expect(inventory.tally).toMatchObject({ titles: 1, blank: 1, plants: 4 });
  });

  test('in words of a language that is not known, over a column of numbers', () => {
    const { proposal } = adopt([['Odmiana', 'Rabata', 'Klasa', 'Sztuk'], ...ROSES]);
    expect(proposal.headerRow).toBe(0);
    expect(proposal.columns.map(({ meaning }) => meaning)).toEqual(['plant', 'bed', 'class', 'count']);
  });

  test('a first row of plants with “pot” and a bed is not a row of headings', () => {
    const list: ListCell[][] = [
      ['Amber Kettle', 'Front bed', 'HT', 'pot'],
      ['Brass Lantern', 'Patio', 'F', 'ground'],
    ];
    expect(adopt(list).proposal.headerRow).toBeNull();
  });

  test('not in a first row of plants whose words come again under it', () => {
    const list = ROSES.map(([plant], i) => [plant!, 'Border', ['HT', 'F', 'Min', 'S'][i]!, 'pot']);
    expect(adopt(list).proposal.headerRow).toBeNull();
  });

  test('not in a line that says the same thing three times', () => {
    expect(
      adopt([['Rose', 'Roses', 'Plant'], [], ['Variety', 'Bed'], ['Amber Kettle', 'Front']]).proposal
        .headerRow,
    ).toBe(2);
  });

  test('not in a dated line right above them', () => {
    const { proposal } = adopt([['Our roses', 2024, null, null], HEADINGS, ...ROSES], {}, [
      { row: 0, column: 1, rows: 1, columns: 2 },
    ]);
    expect(proposal.headerRows).toEqual([1]);
  });

  test('where the user says', () => {
    const { proposal, inventory } = adopt([HEADINGS, ...ROSES], { headerRow: 2 });
    expect(proposal.headerRow).toBe(2);
    expect(inventory.tally.titles).toBe(2);
    expect(sentences(proposal)[0]).toMatch(
      /^2 full rows stand above the headings and will not be read, from row 1 on\./,
    );
    expect(adopt([HEADINGS, ...ROSES], { headerRow: null }).inventory.tally.headers).toBe(0);
  });

  test('not below the sheet', () => {
    const { proposal, inventory } = adopt([HEADINGS, ...ROSES], { headerRow: 40 });
    expect(proposal.outcome).toBe('Row 41 holds no headings: the sheet ends at row 5.');
    expect(inventory.plants).toEqual([]);
  });
});

describe('what the columns mean', () => {
  test.each([
    [['Sorte', 'Beet', 'Klasse', 'Anzahl']],
    [['Variété', 'Massif', 'Classe', 'Nombre de plants']],
    [['Variedad', 'Arriate', 'Clase', 'Cantidad']],
    [['Ras', 'Perk', 'Klasse', 'Aantal']],
    [['Varietà', 'Aiuola', 'Classe', 'Quantità']],
    [['ROSE NAME', 'Location in garden', 'Type of rose', 'Qty.']],
    [['Variété', 'Bed', 'Clase', 'Aantal']],
    [['Cultivar / name', 'Where planted', 'Kind', '# of plants']],
  ])('%j are plant, bed, class and how many', (headings) => {
    expect(Object.values(meanings([headings, ...ROSES]))).toEqual(['plant', 'bed', 'class', 'count']);
  });

  test('“Plants” names them where it holds names, and says how many where it holds numbers', () => {
    const [amber, brass] = ROSES;
    expect(meanings([['Plants', 'Bed', 'Class', 'No.'], amber!, brass!])).toEqual({
      0: 'plant',
      1: 'bed',
      2: 'class',
      3: 'count',
    });
    expect(meanings([['Rose', 'Bed', 'Class', 'Plants'], amber!, brass!])).toEqual({
      0: 'plant',
      1: 'bed',
      2: 'class',
      3: 'count',
    });
  });

  test('a better heading wins wherever it stands; equal ones give the same in any order', () => {
    expect(
      meanings([
        ['Name', 'Variety'],
        ['Ada', 'Amber Kettle'],
        ['Ben', 'Drift Bell'],
      ]),
    ).toEqual({ 0: 'notes', 1: 'plant' });
    expect(
      meanings([
        ['Variety', 'Name'],
        ['Amber Kettle', 'Ada'],
        ['Drift Bell', 'Ben'],
      ]),
    ).toEqual({ 0: 'plant', 1: 'notes' });
    expect(
      meanings([
        ['Name', 'Rose'],
        ['Ada', 'Amber Kettle'],
        ['Ben', 'Drift Bell'],
      ]),
    ).toEqual({ 0: 'plant', 1: 'notes' });
    expect(
      meanings([
        ['Rose', 'Name'],
        ['Amber Kettle', 'Ada'],
        ['Drift Bell', 'Ben'],
      ]),
    ).toEqual({ 0: 'notes', 1: 'plant' });
  });

  test('a column that numbers the lines is left out; a count under “No.” is not', () => {
    const numbered = ROSES.map((row, i) => [i + 1, ...row]);
    const gaps: ListCell[] = [1, 2, null, 3, 5, 6, 7, 1, 2, 3];
    const withGaps = gaps.map((number, i) => [number, ...ROSES[i % ROSES.length]!]);
    expect(meanings([[null, ...HEADINGS], ...withGaps])[0]).toBe('leftOut');
    expect(meanings([['No.', ...HEADINGS], ...numbered])[0]).toBe('leftOut');
    expect(
      meanings([
        ['No.', 'Name'],
        [3, 'Amber Kettle'],
        [1, 'Brass Lantern'],
        [1, 'Drift Bell'],
        [2, 'Ember Wren'],
      ])[0],
    ).toBe('count');
  });

  test('any other column is kept as a note under its heading', () => {
    const { inventory } = adopt([
      [...HEADINGS, 'Year', 'Remarks', 'Source'],
      ['Amber Kettle', 'Front', 'HT', 1, 2014, 'mildew', 'swap'],
    ]);
    expect(inventory.plants[0]!.notes).toBe('Year: 2014; mildew; Source: swap');
  });

  test('days under “Planted” are written out as dates', () => {
    // 41730 is 1 April 2014 in the 1900 date system (computed: 30 December 1899 + 41,730 days).
    const { inventory } = adopt([
      [...HEADINGS, 'Planted'],
      ['Amber Kettle', 'Front', 'HT', 1, 41730],
    ]);
    expect(inventory.plants[0]!.notes).toBe('Planted: 2014-04-01');
  });

  test('each guess has a reason, a confidence and samples', () => {
    const { columns } = adopt([HEADINGS, ...ROSES]).proposal;
    expect(columns[2]).toMatchObject({
      header: 'Class',
      reason: 'the heading “Class” names the class',
      samples: ['HT', 'F', 'Min'],
    });
    for (const { confidence } of columns) expect(confidence).toBeGreaterThan(0.5);
    const bare = adopt(ROSES).proposal.columns;
    expect(bare[0]!.reason).toBe('its values look like names of plants: text, nearly all different');
    expect(bare[0]!.confidence).toBeLessThan(columns[0]!.confidence);
  });

  test('headings that come again and totals are no samples of what a column holds', () => {
    const [first, ...others] = ROSES;
    const { columns } = adopt([HEADINGS, first!, HEADINGS, ['Total', null, null, 3], ...others]).proposal;
    expect(columns.map(({ samples }) => samples)).toEqual([
      ['Amber Kettle', 'Brass Lantern', 'Copper Thimble', 'Drift Bell'],
      ['Front bed', 'Patio'],
      ['HT', 'F', 'Min'],
      ['3', '1', '2'],
    ]);
  });

  test('the user’s choice wins, and no other column is guessed for it', () => {
    const list = [
      ['Variety', 'Sold as', 'Bed'],
      ['Amber Kettle', 'Old Amber', 'Front'],
    ];
    expect(meanings(list, { columns: { 1: 'plant' } })).toEqual({ 0: 'notes', 1: 'plant', 2: 'bed' });
    expect(adopt(list, { columns: { 1: 'leftOut' } }).inventory.plants[0]!.notes).toBe('');
  });

  test('the same headings twice are told as two lists side by side', () => {
    const side = ['Variety', 'Bed', null, 'Variety', 'Bed'];
    const { proposal } = adopt([side, ['Amber Kettle', 'Front', null, 'Brass Lantern', 'Back']]);
    expect(sentences(proposal)).toContainEqual(
      'The heading “Variety” stands in columns A and D: two lists side by side? Only the first is read; put the second one under it and adopt the list again.',
    );
  });
});

import { describe, expect, test } from 'vitest';

import type { CardReading } from '../../addin/workbook/card/readCard';
import type { Garden } from '../../addin/workbook/garden';
import type { LoggedRound } from '../../addin/workbook/log/logRound';
import type { PaneState } from '../../taskpane/state';

import { readyGarden } from './gardens';
import { wordsOf } from './paneDriver';
import { actionsOf, blocksOf, headed, labelled, shown, tableOf } from './shown';

// Every figure is reckoned by hand from the garden: 100 plants of 0.75 gal at A, 40 of 0.25 gal at B.

const [powder] = readyGarden.products;
const products: Garden['products'] = [
  { ...powder!, solubility: 350, P2O5: 20 },
  { row: 5, name: 'Seaweed', form: 'liquid', greatestRate: { value: 1, unit: 'fl oz/gal' } },
];
const mix: Garden['mix'] = [
  readyGarden.mix[0]!,
  { row: 5, product: 'Seaweed', rate: { value: 0.5, unit: 'fl oz/gal' } },
];
const beds: Garden['beds'] = [readyGarden.beds[0]!, { ...readyGarden.beds[1]!, station: 'B' }];

const card: CardReading = {
  sheet: 'Round card',
  date: 46145,
  start: 7 / 24,
  finish: 8 / 24,
  style: 'full',
  leaveOutUnread: false,
  mix: 'Powder',
  fills: 2,
  plants: 140,
  madeUp: 86,
  need: 85,
  unit: 'gal',
  products: [{ product: 'Powder', amount: 86, unit: 'tbsp' }],
};

describe('the round shows', () => {
  const blocks = () => blocksOf('round', { products, mix, beds });

  test('how long each size is held, and what that gives', () => {
    expect(headed(blocks(), 'round.counts')).toEqual([
      ['Size', 'Plants', 'Count', 'Gives'],
      ['Large bush', '100', '18 s', '0.75 gal'],
      ['Potted miniature', '40', '6 s', '0.25 gal'],
    ]);
    // Steps of 7 s: 21 s at 2.5 gal/min are 0.875 gal and 7 s are 0.2917 gal, a sixth more each.
    const coarse = blocksOf('round', { rig: { ...readyGarden.rig, countStep: 7 } });
    expect(headed(coarse, 'round.counts').map((row) => row[3])).toEqual([
      'Gives',
      '0.875 gal (+16.7 %)',
      '0.292 gal (+16.7 %)',
    ]);
  });

  test('each fill with its station, what goes into it, and when', () => {
    // Premix 10 min, 5 gal/min in, 2.5 gal/min out, 5 min to B; hot water as 2.852 L for 60 tbsp of powder.
    expect(headed(blocks(), 'round.fills')).toEqual([
      ['Fill, station', 'Make up', 'Measure', 'From, to'],
      [
        '1, A',
        '60 gal',
        'Soluble powder 20-20-20: 3 3/4 cups\nSeaweed: 3 3/4 cups\nHot water: 3.25 qt',
        '7:00\n7:46',
      ],
      [
        '2, A',
        '15 gal',
        'Soluble powder 20-20-20: 3/4 cup 3 tbsp\nSeaweed: 3/4 cup 3 tbsp\nHot water: 1 qt',
        '7:46\n8:05',
      ],
      [
        '3, B',
        '10 gal',
        'Soluble powder 20-20-20: 1/2 cup 2 tbsp\nSeaweed: 1/2 cup 2 tbsp\nHot water: 0.75 qt',
        '8:10\n8:26',
      ],
    ]);
  });

  test('a single station and a single liquid without their names, and plain water without measures', () => {
    const liquid = blocksOf('round', { products, mix: [mix[1]!] });
    expect(headed(liquid, 'round.fills').slice(0, 2)).toEqual([
      ['Fill', 'Make up', 'Seaweed', 'From, to'],
      ['1', '60 gal', '3 3/4 cups', '7:00\n7:46'],
    ]);
    const unknown = blocksOf('round');
    expect(headed(unknown, 'round.fills')[1]![2]).toBe('3 3/4 cups\nHot water: not known');
  });

  test('food where a label states it, and the whole round', () => {
    // 1 tbsp of 0.9 g/mL in a gallon, 20 % of it: 2,662 mg, of which a bush gets three quarters.
    expect(headed(blocks(), 'round.food')).toEqual([
      ['Size', 'N', 'P2O5'],
      ['Large bush', '1,996', '1,996'],
      ['Potted miniature', '665', '665'],
    ]);
    expect(headed(blocks(), 'round.totals')).toEqual([
      ['What', 'How much'],
      ['Plants', '140'],
      ['Made up', '85 gal'],
      ['Pumping', 'about 35 min'],
      ['Done by', '8:26'],
      ['Products cost', 'not known: write packs and prices under Mix, Products'],
    ]);
  });

  test.each<[string, Partial<Garden>]>([
    ['3 fills to at most 60 gal, 2 products, about 1 h 25 min', { products, mix, beds }],
    // 90 gal in two full barrels.
    [
      '2 fills of 45 gal, 2 3/4 cups 1 tbsp of Soluble powder 20-20-20 each, about 1 h 15 min',
      {
        rig: { ...readyGarden.rig, barrel: { value: 45, unit: 'gal' } },
        doses: [readyGarden.doses[0]!, { ...readyGarden.doses[1]!, dose: 0.375 }],
      },
    ],
    // 116 gal with a heel of 2 gal: the first fill makes up 60 gal, the second 58 gal on the heel.
    [
      '2 fills to 60 gal, 3 3/4 cups of Soluble powder 20-20-20 in the first, about 1 h 30 min',
      {
        rig: { ...readyGarden.rig, heel: { value: 2, unit: 'gal' } },
        doses: [
          { ...readyGarden.doses[0]!, dose: 1 },
          { ...readyGarden.doses[1]!, dose: 0.4 },
        ],
      },
    ],
  ])('in one line: %s', (told, garden) => {
    expect(shown('round', garden).section.answer).toBe(told);
  });
});

describe('before a round is fed, the pane shows', () => {
  const outOfDate = 'The round takes 3 fills now; this card was made for 2. Make the card again.';
  const stale = { kind: 'text', tone: 'warning', text: `The card: ${outOfDate}` };

  test('what the card says against itself, planned or not', () => {
    const mixed = { mix: [{ ...readyGarden.mix[0]!, rate: { value: 1.5, unit: 'tbsp/gal' } }] };
    for (const garden of [{}, mixed]) {
      expect(blocksOf('round', garden, { card: { ...card, outOfDate } })).toContainEqual(stale);
      expect(blocksOf('round', garden, { card })).not.toContainEqual(stale);
    }
    const refused = blocksOf('round', mixed);
    expect(actionsOf(refused)).toEqual([{ id: 'go.mix', label: 'Go to Mix', primary: true }]);
  });

  test('what it needs, with the way there', () => {
    const rig = { ...readyGarden.rig, barrel: { unit: 'gal' }, flow: { unit: 'gal/min' } };
    const blocks = blocksOf('round', { rig, mix: [] });
    expect(blocks).toContainEqual({
      kind: 'steps',
      items: [
        'Rig: time a bucket at the wand, and say how big the barrel is',
        'Mix: say what goes into the barrel',
      ],
    });
    expect(actionsOf(blocks)).toEqual([
      { id: 'go.rig', label: 'Go to Rig', primary: true },
      { id: 'go.mix', label: 'Go to Mix' },
    ]);
  });

  test('fills as the last card had them, or as the settings say', () => {
    const settings = { ...readyGarden.settings, fillStyle: 'equal' as const };
    const style = (more: Partial<PaneState>) => labelled(blocksOf('round', { settings }, more)).Fills;
    expect(style({})).toBe('equal');
    expect(style({ card })).toBe('full');
  });
});

describe('the barrels show', () => {
  const blocks = () => blocksOf('tanks');

  test('what each comes to', () => {
    // 85 gal: 10 min a fill, 17 min from the tap, 34 min through the wand; 8.3304 lb a gallon and 25 lb empty.
    expect(headed(blocks(), 'tanks.table')).toEqual([
      ['Barrel', 'Fills', 'Round', 'Weight full', 'Mixing and filling', 'Last fill', 'Moves'],
      ['30 gal', '3', '1 h 20 min', '275 lb', '45 min', '25 gal', '0'],
      ['45 gal', '2', '1 h 10 min', '400 lb', '35 min', '40 gal', '0'],
      ['60 gal', '2', '1 h 10 min', '525 lb', '35 min', '25 gal', '0'],
      ['100 gal', '1', '1 h', '858 lb', '25 min', '85 gal', '0'],
    ]);
    expect(tableOf(blocks(), 'tanks.table').marked).toEqual([]);
    expect(actionsOf(blocks())).toContainEqual({
      id: 'tanks.write',
      label: 'Write the what-if sheet',
      primary: true,
    });
  });

  test('round times as a chart with what it tells', () => {
    const charts = blocks().flatMap((block) => (block.kind === 'chart' ? [block.chart] : []));
    expect(charts).toMatchObject([
      {
        title: 'Round time by barrel',
        finding: '100 gal is quickest, about 20 min shorter than 30 gal.',
        labels: ['30 gal', '45 gal', '60 gal', '100 gal'],
        series: [
          { name: 'Round', unit: 'h', values: [1.35, 1.18, 1.18, 1.02] },
          { name: 'of it mixing and filling', unit: 'h', values: [0.78, 0.62, 0.62, 0.45] },
        ],
      },
    ]);
  });

  const sized = (...sizes: string[]) =>
    Object.fromEntries([0, 1, 2, 3].map((index) => [`tanks.size.${index + 1}`, sizes[index] ?? '']));
  const findings = (typed: Record<string, string>) =>
    blocksOf('tanks', {}, { typed }).flatMap((block) =>
      block.kind === 'chart' ? [block.chart.finding] : [],
    );

  test('no difference where there is none, and no chart of one barrel', () => {
    expect(findings(sized('45', '60'))).toEqual(['The round takes as long with each of them.']);
    expect(findings(sized('45', '30'))).toEqual(['45 gal is quickest, about 10 min shorter than 30 gal.']);
    expect(findings(sized('45'))).toEqual([]);
  });

  test.each([
    [
      sized('60', '30', '45'),
      'From 30 gal (3 fills, about 1 h 20 min) to 60 gal (2 fills, about 1 h 10 min)',
    ],
    [sized('0.5', '100'), '100 gal (1 fill, about 1 h)'],
    [sized('0.5', '0.4'), 'The round cannot be fed from any of these barrels'],
    [{ 'tanks.longest': '70' }, '100 gal is the smallest that meets your limits: 1 fill, about 1 h'],
    [
      { 'tanks.mostWeight': '400' },
      '30 gal is the smallest that meets your limits: 3 fills, about 1 h 20 min',
    ],
  ])('in one line, for %j', (typed, told) => {
    expect(shown('tanks', {}, { typed }).section.answer).toBe(told);
  });

  test('sizes that are sold and the own one, in its unit only, and whole fills', () => {
    const rig = { ...readyGarden.rig, barrel: { value: 50, unit: 'gal' } };
    const sizes = (typed: Record<string, string>) =>
      Object.entries(labelled(blocksOf('tanks', { rig }, { typed })))
        .filter(([label]) => label.startsWith('Barrel '))
        .map(([, value]) => value);
    expect(sizes({})).toEqual(['30', '45', '50', '60', '100', '']);
    expect(sizes({ 'tanks.unit': 'L' })).toEqual(['100', '150', '200', '400', '']);
    const errors = blocksOf('tanks', {}, { typed: { 'tanks.mostFills': '2.5' } }).flatMap((block) =>
      block.kind === 'fields' ? block.fields.flatMap(({ error }) => error ?? []) : [],
    );
    expect(errors).toEqual([expect.stringContaining('Fills, at most: “2.5” was given')]);
  });

  test('nothing beside a barrel that cannot do it but why', () => {
    const impossible = blocksOf('tanks', {}, { typed: sized('0.5', '100') });
    expect(headed(impossible, 'tanks.table')[1]).toEqual(['0.5 gal', 'not possible', '', '', '', '', '']);
  });
});

describe('the mix shows', () => {
  test('its lines, one to spare, and what one barrel takes', () => {
    const blocks = blocksOf('mix', { products, mix });
    expect(labelled(blocks)).toMatchObject({
      'Product 1': 'Soluble powder 20-20-20',
      'Rate of product 1': '1',
      'Product 2': 'Seaweed',
      'Rate of product 2': '0.5',
      'Product 3': '',
      'Rate of product 3': '',
    });
    expect(headed(blocks, 'mix.dryRun')).toEqual([
      ['Product', 'Measure'],
      ['Soluble powder 20-20-20', '3 3/4 cups'],
      ['Seaweed', '3 3/4 cups'],
    ]);
    expect(actionsOf(blocks).slice(0, 2)).toEqual([
      { id: 'mix.keep', label: 'Keep this mix' },
      { id: 'go.round', label: 'Go on to Round', primary: true },
    ]);
  });

  test('a product twice with a line for each, and a first line to begin with', () => {
    const twice = labelled(blocksOf('mix', { products, mix: [mix[0]!, { ...mix[0]!, row: 5 }, mix[1]!] }));
    expect(['1', '2', '3', '4'].map((line) => twice[`Product ${line}`])).toEqual([
      'Soluble powder 20-20-20',
      'Soluble powder 20-20-20',
      'Seaweed',
      '',
    ]);
    const begun = labelled(blocksOf('mix', { products, mix: [] }));
    expect(['1', '2', '3', '4'].map((line) => begun[`Product ${line}`])).toEqual([
      'Soluble powder 20-20-20',
      '',
      '',
      undefined,
    ]);
  });

  test('what is typed before it is kept, and then the button for that first', () => {
    const typed = { 'mix.rate."seaweed"': '0.25' };
    const blocks = blocksOf('mix', { products, mix }, { typed });
    expect(headed(blocks, 'mix.dryRun')[2]).toEqual(['Seaweed', '1 3/4 cups 2 tbsp']);
    expect(actionsOf(blocks)[0]).toEqual({ id: 'mix.keep', label: 'Keep this mix', primary: true });
    expect(actionsOf(blocks).map(({ id }) => id)).not.toContain('go.round');
  });

  test('the unit of a product’s label beside its rate', () => {
    const typed = { 'mix.product.1': 'Seaweed' };
    const fields = blocksOf('mix', { products }, { typed }).flatMap((block) =>
      block.kind === 'fields' ? [...block.fields] : [],
    );
    const unit = (label: string) => {
      const field = fields.find((one) => one.label === label);
      return field?.kind === 'number' && typeof field.unit === 'object' ? field.unit.value : undefined;
    };
    expect(unit('Rate of product 1')).toBe('tbsp/gal');
    expect(unit('Rate of product 2')).toBe('fl oz/gal');
  });

  test('that a powder’s hot water is not known, and nothing of that for a liquid beside it', () => {
    expect(wordsOf(shown('mix', { mix })).join(' ')).toContain(
      'How much hot water Soluble powder 20-20-20 needs is not known',
    );
  });

  test('no hot water for liquids', () => {
    const words = wordsOf(shown('mix', { products, mix: [mix[1]!] })).join(' ');
    expect(words).not.toMatch(/hot water (?:first|.*not known)/);
  });
});

describe('the garden shows', () => {
  test('its doses and its walk', () => {
    const blocks = blocksOf('garden', { beds });
    expect(headed(blocks, 'garden.doses')).toEqual([
      ['Size', 'Plants', 'Dose'],
      ['Large bush', '100', '0.75'],
      ['Potted miniature', '40', '0.25'],
    ]);
    expect(headed(blocks, 'garden.beds')).toEqual([
      ['Bed', 'Plants', 'Walk', 'Station'],
      ['Front', '100', '1', 'A'],
      ['Terrace', '40', '2', 'B'],
    ]);
    expect(actionsOf(blocks)).toEqual([
      { id: 'doses.keep', label: 'Keep the doses' },
      { id: 'beds.keep', label: 'Keep the walk' },
      { id: 'go.rig', label: 'Go on to Rig', primary: true },
    ]);
  });
});

describe('the log shows', () => {
  const unplanned: LoggedRound = {
    round: 1,
    date: 46145,
    mix: 'Powder',
    plants: 140,
    fills: 2,
    madeUp: 86,
    leftOver: 3,
    unit: 'gal',
    notes: '',
  };
  const line: LoggedRound = { ...unplanned, need: 85 };
  const logged = (...rounds: readonly LoggedRound[]): Partial<PaneState> => ({
    card,
    log: { rounds, problems: [] },
  });

  test('the last six rounds, with what was pumped of the plan where there was one', () => {
    const rounds = [line, { ...unplanned, date: 46144 }, { ...line, date: 46143, need: 0 }];
    const blocks = blocksOf('log', {}, logged(...rounds, ...Array.from({ length: 5 }, () => line)));
    expect(headed(blocks, 'log.recent').slice(0, 4)).toEqual([
      ['Day', 'Mix', 'Pumped out'],
      // 83 of 85 gal.
      ['3 May 2026', 'Powder', '83 gal, 98 % of the plan'],
      ['2 May 2026', 'Powder', '83 gal'],
      ['1 May 2026', 'Powder', '83 gal'],
    ]);
    expect(headed(blocks, 'log.recent')).toHaveLength(7);
    expect(blocksOf('log', {}, logged()).some(({ kind }) => kind === 'table')).toBe(false);
  });

  test('a card as logged by its day and mix together', () => {
    const told = (round: LoggedRound) => shown('log', {}, logged(round)).section.answer;
    expect(told(line)).toBe('Logged: 3 May 2026, 2 fills, 86 gal made up');
    expect(told({ ...line, date: 46144 })).toBe('3 May 2026, 2 fills, 86 gal made up');
    expect(told({ ...line, mix: 'Fish' })).toBe('3 May 2026, 2 fills, 86 gal made up');
    const write = (round: LoggedRound) =>
      actionsOf(blocksOf('log', {}, logged(round))).find(({ id }) => id === 'log.write');
    expect(write(line)).toEqual({ id: 'log.write', label: 'Write the log line' });
    expect(write({ ...line, mix: 'Fish' })).toMatchObject({ primary: true });
  });

  test('what is typed as the card planned it, and asks for each that is taken away', () => {
    expect(labelled(blocksOf('log', {}, { card }))).toEqual({
      Day: '2026-05-03',
      Fills: '2',
      'Made up': '86',
      'Left over': '1',
      Notes: '',
    });
    const blank = { 'log.date': '', 'log.fills': '', 'log.madeUp': '', 'log.leftOver': '' };
    const fields = blocksOf('log', {}, { card, typed: blank, tried: ['log'] }).flatMap((block) =>
      block.kind === 'fields' ? [...block.fields] : [],
    );
    expect(fields.map(({ label, error }) => [label, error !== undefined])).toEqual([
      ['Day', true],
      ['Fills', true],
      ['Made up', true],
      ['Left over', true],
      ['Notes', false],
    ]);
  });

  test('both, where the card has followed a change, and logs the one that was fed by', () => {
    const followed = { ...card, fills: 3, madeUp: 100, asMade: card };
    const blocks = blocksOf('log', {}, { card: followed });
    expect(blocks).toContainEqual({
      kind: 'text',
      tone: 'warning',
      text:
        'The sheets have changed since the card was made. Now it says 3 fills, 100 gal made up and 5 1/3 cups 2 tsp of Powder; ' +
        'it was made with 2 fills, 86 gal made up and 5 1/3 cups 2 tsp of Powder. Say below which one you fed by.',
    });
    expect(labelled(blocks)).toMatchObject({ 'You fed by': 'now', Fills: '3', 'Made up': '100' });
    const made = blocksOf('log', {}, { card: followed, typed: { 'log.fedBy': 'made' } });
    expect(labelled(made)).toMatchObject({ 'You fed by': 'made', Fills: '2', 'Made up': '86' });
  });

  test('the way to the round where there is no card', () => {
    for (const cardWaits of [false, true]) {
      expect(actionsOf(blocksOf('log', {}, { cardWaits }))).toContainEqual({
        id: 'go.round',
        label: 'Go to Round',
        primary: true,
      });
    }
  });
});

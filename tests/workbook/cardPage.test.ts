import { expect, test } from 'vitest';

import { cardLayout, type CardRequest } from '../../addin/workbook/card/cardLayout';
import { cardPage } from '../../addin/workbook/card/cardPage';

const beds = (count: number): string[] => Array.from({ length: count }, (_, index) => `Bed ${index + 1}`);
const round = (stations: number, bedsEach: number, products: number): CardRequest => ({
  sheet: 'Round card',
  date: 46_147,
  start: 0.3,
  style: 'full',
  unnamed: 'Bloom feed',
  stations: Array.from({ length: stations }, (_, index) => ({
    name: `Place ${index + 1}`,
    beds: beds(bedsEach),
    fills: 1,
  })),
  sizeClasses: ['Large bush', 'Bush', 'Small bush', 'Miniature', 'Potted miniature', 'Climber'],
  products: Array.from({ length: products }, (_, index) => ({
    name: `Product ${index + 1}`,
    unit: 'tsp',
    form: index === 0 ? 'powder' : 'liquid',
    rate: { value: 1, unit: 'tbsp/gal' },
    labelKnown: true,
    measured: 100,
  })),
  hotWaterUnit: 'qt',
  weightUnit: 'lb',
  cautions: [],
  overLabel: [],
  overLabelReason: '',
  leaveOutUnread: false,
  plantsMarks: [],
  walkMarks: [],
  headMarks: [],
  made: {
    date: 46_147,
    start: 0.3,
    mix: 'Bloom feed',
    fills: 1,
    plants: 1,
    madeUp: 1,
    need: 1,
    finish: 0.5,
    unit: 'gal',
  },
});
const page = (request: CardRequest) => {
  const layout = cardLayout(request);
  const rows = layout.cautions + 13;
  return cardPage({ sheet: 'Round card', row: 0, column: 0, rows, columns: 12 }, request, layout);
};

test('a home garden’s card is one upright page', () => {
  expect(page(round(3, 5, 2))).toMatchObject({ landscape: false, pagesHigh: 1 });
});

test('a card that would be too small to read on one page takes more, under its title and counts', () => {
  const long = page(round(6, 12, 2));
  expect(long).toMatchObject({ landscape: false, repeatRows: 5 });
  expect(long).not.toHaveProperty('pagesHigh');
});

test('a card of many products lies', () => {
  expect(page(round(1, 2, 6))).toMatchObject({ landscape: true });
});

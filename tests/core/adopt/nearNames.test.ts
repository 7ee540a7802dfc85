import { expect, test } from 'vitest';

import { nearPairs } from '../../../addin/core/adopt/nearNames';
import { adopt, sentences } from './adopted';

test.each([
  ['Eest bed', 'East bed'],
  ['Garden walks', 'Garden walk'],
  ['Kitchne bed', 'Kitchen bed'],
  ['Drivway border', 'Driveway border'],
])('“%s” may be “%s” mistyped', (rarer, name) => {
  const names = [
    { name, rows: 9 },
    { name: rarer, rows: 1 },
  ];
  expect(nearPairs(names)).toEqual([[rarer, name]]);
});

test.each([
  ['West bed', 'East bed'],
  ['Bed A', 'Bed B'],
  ['Row 12', 'Row 13'],
  ['Plot2020', 'Plot2021'],
  ['North fence', 'South fence'],
  ['Long border', 'Rose border'],
  ['Long border', 'Long border left'],
])('“%s” is not “%s”', (one, other) => {
  const names = [one, other].map((name) => ({ name, rows: 1 }));
  expect(nearPairs(names)).toEqual([]);
});

test('beds that may be one are kept apart and told', () => {
  const { inventory } = adopt([
    ['Rose', 'Bed', 'Class', 'How many'],
    ['Amber Kettle', 'East bed', 'HT', 3],
    ['Brass Lantern', 'East bed', 'HT', 2],
    ['Tin Whistle', 'Eest bed', 'HT', 1],
    ['Copper Gate', 'West bed', 'HT', 1],
  ]);
  expect(inventory.beds.map(({ bed }) => bed)).toEqual(['East bed', 'Eest bed', 'West bed']);
  expect(sentences(inventory)).toEqual([
    'The beds “Eest bed” and “East bed” are kept apart; if they are one, write it one way in your list.',
  ]);
});

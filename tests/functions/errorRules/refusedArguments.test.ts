import { describe, expect, test } from 'vitest';
import { outcome, refused, table } from './calls';

describe('an argument of the wrong kind or out of its range is #VALUE!, in a sentence', () => {
  test.each(
    table<[string]>([
      [['DILUTE', -1, 'tbsp/gal', 60, 'gal', 'cup'], 'rate: -1 was given; use 0 or more.'],
      [
        ['DILUTE', 'one', 'tbsp/gal', 60, 'gal', 'cup'],
        'rate: the text "one" was given; use a number, 0 or more.',
      ],
      [
        ['DILUTE', '1', 'tbsp/gal', 60, 'gal', 'cup'],
        'rate: the text "1" was given; use a number, 0 or more.',
      ],
      [
        ['DILUTE', 1, 'tbsp/gal', ' ', 'gal', 'cup'],
        'volume: the text " " was given; use a number, 0 or more.',
      ],
      [['DILUTE', 1, 'tbsp/gal', NaN, 'gal', 'cup'], 'volume: no number was given; use 0 or more.'],
      [['DILUTE', 1, 'tbsp/gal', Infinity, 'gal', 'cup'], 'volume: Infinity was given; use 0 or more.'],
      [['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup', -0.5], 'density: -0.5 was given; use more than 0.'],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup', 'x'],
        'density: the text "x" was given; use a number, more than 0.',
      ],
      [['DILUTE', 1, 7, 60, 'gal', 'cup'], 'rate_unit: 7 was given; use a rate'],
      [['DILUTE', 1, true, 60, 'gal', 'cup'], 'rate_unit: TRUE was given; use a rate'],
      [['STRENGTH', 1, 'cup', 0, 'gal', 'tbsp/gal'], 'volume: 0 was given; use more than 0.'],
      [['STOCK', 0.99, 60, 'gal'], 'parts: 0.99 was given; use 1 or more.'],
      [['STOCK', 100, 60, 'gal', 'of'], 'convention: "of" was given; use "in" or "plus".'],
      [['STOCK', 100, 60, 'gal', 2], 'convention: 2 was given; use "in" or "plus".'],
      [['MEASURE', 0, 'cup'], 'amount: 0 was given; use more than 0.'],
      [
        ['MEASURE', 0.1, 'tsp'],
        'amount: 0.1 tsp was given; use 0.125 tsp or more, half of the finest measure.',
      ],
      [['MEASURE', 2, 'mL', 5], 'amount: 2 mL was given; use 2.5 mL or more, half of the finest measure.'],
      [['MEASURE', 1, 'gal', -1], 'finest: -1 was given; use more than 0.'],
      [['MEASURE', 1, 'gal', 1e-12], 'finest: 1e-12 tsp was given; use 7.68e-7 tsp or more.'],
      [['MEASURE', 1e30, 'gal'], 'amount: 1e+30 gal was given; use 250000000 tsp at most.'],
      [['HOWMUCH', 0, 'tsp'], 'amount: 0 was given; use more than 0.'],
      [['HOWMUCH', 1, 'tsp', -1], 'most: -1 was given; use more than 0.'],
      [['HOWMUCH', 1e30, 'gal'], 'amount: 1e+30 gal was given; use 325521 gal at most.'],
      [['MEASURED', -1, 'tsp'], 'amount: -1 was given; use 0 or more.'],
      [['MEASURED', 1e10, 'g'], 'amount: 10000000000 g was given; use 1000000000 g at most.'],
      [['LABELSHARE', -1, 'mL/L', 1, 'mL/L'], 'rate: -1 was given; use 0 or more.'],
      [['LABELSHARE', 1, 'mL/L', 0, 'mL/L'], 'greatest: 0 was given; use more than 0.'],
      [['MEASURABLE', 1e9, 'gal'], 'amount: 1000000000 gal was given; use 325521 gal at most.'],
      [
        ['MEASURABLE', 0.1, 'tsp', 0.25],
        'amount: 0.1 tsp was given; use 0.125 tsp or more, half of the finest measure.',
      ],
      [
        ['MEASURABLE', 1, 'tsp', 0.2],
        'most: 0.2 tsp was given, less than the finest measure; use 0.25 tsp or more.',
      ],
      [['MEASURABLE', -1, 'tsp'], 'amount: -1 was given; use 0 or more.'],
      [['FORPPM', 200, 0, 100, 'gal', 'oz'], 'percent: 0 was given; use more than 0, at most 100.'],
      [['FORPPM', 200, 101, 100, 'gal', 'oz'], 'percent: 101 was given; use more than 0, at most 100.'],
      [['PPM', 1, 'oz', 101, 100, 'gal'], 'percent: 101 was given; use 0 to 100.'],
      [['PPM', 1, 'oz', 20, 0, 'gal'], 'volume: 0 was given; use more than 0.'],
      [['ELEMENT', -1, 'P2O5', 'P'], 'percent: -1 was given; use 0 to 100.'],
      [['PREMIX', 1, 'kg', 0, 'L'], 'solubility: 0 was given; use more than 0.'],
      [['PREMIX', 1, 'kg', 200, 'L', 1.01], 'margin: 1.01 was given; use more than 0, at most 1.'],
      [['BARREL', -1, 22, 'in', 'gal'], 'depth: -1 was given; use 0 or more.'],
      [['BARREL', 30, 0, 'in', 'gal'], 'width: 0 was given; use more than 0.'],
      [['BARREL', 30, 22, 'in', 'gal', -2], 'surface_width: -2 was given; use more than 0.'],
      [['WEIGHT', 60, 'gal', 'lb', -5], 'empty_weight: -5 was given; use 0 or more.'],
      [['FILLS', 200, 0, 'gal'], 'barrel: 0 was given; use more than 0.'],
      [
        ['FILLS', 200, 60, 'gal', 60],
        'heel: 60 gal was given; use less than barrel × fill_line, which is 60 gal.',
      ],
      [
        ['FILLS', 200, 60, 'gal', 54, 0.9],
        'heel: 54 gal was given; use less than barrel × fill_line, which is 54 gal.',
      ],
      [['FILLS', 200, 60, 'gal', 5, 1.1], 'fill_line: 1.1 was given; use more than 0, at most 1.'],
      [['FILLPLAN', 0, 60, 'gal'], 'need: 0 was given; use more than 0.'],
      [
        ['FILLPLAN', 501, 1, 'L'],
        'need: 501 L was given, which takes more than 500 fills; use a smaller need',
      ],
      [
        ['FILLPLAN', 200, 60, 'gal', 60],
        'heel: 60 gal was given; use less than barrel × fill_line, which is 60 gal.',
      ],
      [['FILLPLAN', 60, 20, 'L', 0, 1, 'half'], 'style: "half" was given; use "full" or "equal".'],
      [['FILLTIME', 60, 'gal', 0, 'gal/min'], 'flow: 0 was given; use more than 0.'],
      [['FLOW', 0, 'gal', 20, 'gal/min'], 'volume: 0 was given; use more than 0.'],
      [
        ['FLOW', 2, 'gal', [[20], [-1]], 'gal/min'],
        'seconds (row 2, column 1): -1 was given; use 0 or more.',
      ],
      [
        ['FLOW', 2, 'gal', [[20, '21']], 'gal/min'],
        'seconds (row 1, column 2): the text "21" was given; use a number',
      ],
      [['FLOWSPREAD', 'fast'], 'seconds: the text "fast" was given; use a number, 0 or more.'],
      [['REPEATS', [[24], [25]], 0], 'percent: 0 was given; use more than 0.'],
      [['SECONDS', 0, 'gal', 2.6, 'gal/min'], 'dose: 0 was given; use more than 0.'],
      [['SECONDS', 1, 'gal', 0, 'gal/min'], 'flow: 0 was given; use more than 0.'],
      [['SECONDS', 1, 'gal', 2.6, 'gal/min', -1], 'step: -1 was given; use more than 0.'],
      [['DOSE', -1, 2.6, 'gal/min', 'gal'], 'seconds: -1 was given; use 0 or more.'],
      [
        ['NEED', [[1], [-3]], [[1], [1]], 'gal', 'gal'],
        'plants (row 2, column 1): -3 was given; use 0 or more.',
      ],
      [['NEED', -3, 1, 'gal', 'gal'], 'plants: -3 was given; use 0 or more.'],
      [['NEED', [[1], [2]], [[1], ['1']], 'gal', 'gal'], 'dose (row 2, column 1): the text "1" was given'],
      [
        ['NEED', [[1], [2]], [[1, 2]], 'gal', 'gal'],
        'dose: a range of 1 × 2 cells was given and plants is a range of 2 × 1',
      ],
      [
        ['NEED', [[1, 2]], [[1]], 'gal', 'gal'],
        'dose: a range of 1 × 1 cells was given and plants is a range of 1 × 2 cells',
      ],
      [['NEED', [[1], [2]], 1, 'gal', 'gal'], 'use two ranges of one shape'],
      [['SERVES', 60, 'gal', 0, 'gal'], 'dose: 0 was given; use more than 0.'],
      [['ROWOF', 'a', [['A', 'b', ' a ']]], 'name: "a" was given, which stands in cells 1 and 3; use a name'],
      [['ROWOF', '', [['a', '']]], 'name: nothing was given; use a text or a number.'],
      [['PERPLANT', -1, 1, 'gal'], 'ppm: -1 was given; use 0 or more.'],
      [['UNITCOST', 48, 0, 'lb', 'oz'], 'pack: 0 was given; use more than 0.'],
      [['COST', 1, 'oz', -1, 25, 'lb'], 'price: -1 was given; use 0 or more.'],
      [['INUNITS', -1, 'gal', 'L'], 'value: -1 was given; use 0 or more.'],
      [['INUNITS', -460, 'F', 'C'], 'value: -460 was given; use a temperature of -459.67 F or more.'],
    ]),
  )('%s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });
});

test('a name that is not in the list is #N/A, in a sentence', () => {
  expect(outcome(['ROWOF', 'b', [['a', 'c']]])).toEqual(
    refused('#N/A', 'name: "b" is not in the list; use a name that is.'),
  );
});

import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { call, catalogue, findFunction } from '../../functions';
import names from '../../functions/names.json';

const grid = createRequire(import.meta.url)('@univerjs/engine-formula') as Record<string, unknown>;

/** What the grid of the workbench and the suites it follows call their own functions. */
const builtIn = new Set(
  Object.entries(grid)
    .filter(([key]) => key.startsWith('FUNCTION_NAMES_'))
    .flatMap(([, family]) => Object.values(family as Record<string, string>)),
);

/** A1 to XFD1048576, and R1C1 with any part left out. */
const LIKE_A_CELL = /^([A-Z]{1,3}\d+|R\d*C?\d*|C\d*)$/;

test('names are for ever: the committed list holds every function, and none is gone', () => {
  expect(catalogue.map(({ name }) => name).sort()).toEqual(names);
});

describe('a name', () => {
  test('has the built-in functions to be compared with', () => {
    expect(builtIn.has('SUMPRODUCT')).toBe(true);
    expect(builtIn.size).toBeGreaterThan(450);
  });

  test.each(names)('%s has three letters or more, is no cell and no built-in function', (name) => {
    expect(name).toMatch(/^[A-Z]{3,}$/);
    expect(name).not.toMatch(LIKE_A_CELL);
    expect(builtIn.has(name)).toBe(false);
  });

  test.each(['dilute', 'FEED.DILUTE', 'feed.Dilute', ' Feed.Dilute '])('may be written %j', (name) => {
    expect(findFunction(name)?.name).toBe('DILUTE');
    expect(call(name, [1, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual({ value: 3.75 });
  });

  test.each(['', 'SUM', 'DILUT', 'FEED.', 'FEED.FEED.DILUTE', 'constructor', '__proto__'])(
    '%j is not known: #NAME? with a sentence',
    (name) => {
      expect(call(name, [])).toEqual({ error: '#NAME?', sentence: expect.stringContaining('DILUTE') });
    },
  );
});

test('the names of arguments are as the contract writes them', () => {
  const signatures = catalogue.map(
    ({ name, parameters }) =>
      `${name}(${parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(', ')})`,
  );
  expect(signatures).toEqual([
    'INUNITS(value, from_unit, to_unit, [density])',
    'DILUTE(rate, rate_unit, volume, volume_unit, amount_unit, [density])',
    'STRENGTH(amount, amount_unit, volume, volume_unit, rate_unit, [density])',
    'STOCK(parts, volume, volume_unit, [convention])',
    'MEASURE(amount, unit, [finest])',
    'MEASURABLE(amount, unit, [most])',
    'HOWMUCH(amount, unit, [most])',
    'MEASURED(amount, unit, [most])',
    'LABELSHARE(rate, rate_unit, greatest, greatest_unit, [density])',
    'FORPPM(ppm, percent, volume, volume_unit, amount_unit, [density])',
    'PPM(amount, amount_unit, percent, volume, volume_unit, [density])',
    'ELEMENT(percent, from, to)',
    'PREMIX(amount, amount_unit, solubility, volume_unit, [margin], [density])',
    'BARREL(depth, width, length_unit, volume_unit, [surface_width])',
    'WEIGHT(volume, volume_unit, weight_unit, [empty_weight])',
    'FILLS(need, barrel, unit, [heel], [fill_line])',
    'FILLPLAN(need, barrel, unit, [heel], [fill_line], [style])',
    'FILLTIME(volume, volume_unit, flow, flow_unit)',
    'FLOW(volume, volume_unit, seconds, flow_unit)',
    'FLOWSPREAD(seconds)',
    'REPEATS(seconds, percent)',
    'SECONDS(dose, dose_unit, flow, flow_unit, [step])',
    'DOSE(seconds, flow, flow_unit, dose_unit)',
    'NEED(plants, dose, dose_unit, volume_unit)',
    'SERVES(volume, volume_unit, dose, dose_unit)',
    'PERPLANT(ppm, dose, dose_unit)',
    'UNITCOST(price, pack, pack_unit, per_unit, [density])',
    'COST(amount, amount_unit, price, pack, pack_unit, [density])',
    'HOWLONG(minutes, [step])',
    'ROWOF(name, names)',
    'FINGERPRINT(cells)',
  ]);
});

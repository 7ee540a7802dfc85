import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Unit } from '../../addin/core';
import {
  amountIn,
  concentrate,
  convert,
  convertShare,
  density,
  findRateUnit,
  findUnit,
  fromCanonical,
  fromRate,
  knownUnits,
  litres,
  massForPpm,
  measure,
  milligramsPerLitre,
  perPlant,
  ppmOf,
  productFor,
  scaleAmount,
  strength,
  toAmount,
  toCanonical,
  toRate,
} from '../../addin/core';

const FAMILIES = ['volume', 'mass', 'flow', 'length', 'temperature'] as const;
const unitOf = (...families: (typeof FAMILIES)[number][]) =>
  fc.constantFrom(...families.flatMap((family) => knownUnits(family).map((token) => findUnit(token)!)));
const positive = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const aDensity = fc.double({ min: 0.1, max: 3, noNaN: true }).map(density);
const rateUnit = fc
  .record({
    amount: unitOf('volume', 'mass'),
    per: fc.constantFrom(1, 100, 1000, 2.5),
    volume: unitOf('volume'),
  })
  .map(({ amount, per, volume }) => findRateUnit(`${amount.token}/${per} ${volume.token}`)!);

const close = (actual: number | undefined, wanted: number, share = 1e-12) => {
  expect(Math.abs(actual! - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share);
};

describe('conversions invert', () => {
  test('from any unit to the canonical one and back', () => {
    fc.assert(
      fc.property(positive, unitOf('volume', 'mass', 'flow', 'length'), (value, unit) => {
        close(fromCanonical(toCanonical(value, unit), unit), value);
      }),
    );
  });

  test('between any two units of a family', () => {
    const pair = fc.constantFrom(...FAMILIES).chain((family) => fc.tuple(unitOf(family), unitOf(family)));
    fc.assert(
      fc.property(positive, pair, (value, [from, to]) => {
        const back = convert(convert(value, from, to), to, from);
        // °F near its zero loses digits to the 32 that is taken off and put back.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(value, from.offset, to.offset));
      }),
    );
  });

  test('mass to volume and back by a density', () => {
    fc.assert(
      fc.property(positive, unitOf('mass'), unitOf('volume'), aDensity, (value, mass, volume, dense) => {
        const measured = amountIn(toAmount(value, mass), volume, dense)!;
        close(amountIn(toAmount(measured, volume), mass, dense), value);
      }),
    );
  });

  test('rates', () => {
    fc.assert(
      fc.property(positive, rateUnit, (value, unit) => {
        close(fromRate(toRate(value, unit), unit), value);
      }),
    );
  });

  test('a rate unit is found again by its own token', () => {
    fc.assert(
      fc.property(rateUnit, (unit) => {
        expect(findRateUnit(unit.token)).toEqual(unit);
      }),
    );
  });

  test('ppm and the mass for it', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(positive, share, positive, (ppm, nutrient, volume) => {
        const mass = massForPpm(milligramsPerLitre(ppm), nutrient, litres(volume));
        close(ppmOf(mass, nutrient, litres(volume)), ppm);
      }),
    );
  });

  test('oxides and elements', () => {
    const pair = fc.constantFrom(['P2O5', 'P'], ['K2O', 'K'], ['CaO', 'Ca'], ['MgO', 'Mg']);
    fc.assert(
      fc.property(positive, pair, (value, [oxide, element]) => {
        const part = convertShare(value, oxide!, element!)!;
        expect(part).toBeLessThan(value);
        close(convertShare(part, element!, oxide!), value);
      }),
    );
  });
});

describe('mixing', () => {
  test('doubling the water doubles the product', () => {
    fc.assert(
      fc.property(positive, rateUnit, positive, (value, unit, volume) => {
        const rate = toRate(value, unit);
        const once = productFor(rate, litres(volume));
        expect(productFor(rate, litres(2 * volume))).toEqual(scaleAmount(once, 2));
      }),
    );
  });

  test('the strength of what was measured is the rate', () => {
    fc.assert(
      fc.property(positive, rateUnit, positive, (value, unit, volume) => {
        const mixed = strength(productFor(toRate(value, unit), litres(volume)), litres(volume));
        close(fromRate(mixed, unit), value);
      }),
    );
  });

  test('twice the dose gives a plant twice the nutrient, whatever the barrel', () => {
    fc.assert(
      fc.property(positive, positive, (ppm, dose) => {
        const once = perPlant(milligramsPerLitre(ppm), litres(dose));
        expect(perPlant(milligramsPerLitre(ppm), litres(2 * dose))).toBe(2 * once);
      }),
    );
  });

  test('"plus" at one part fewer is "in"', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 1000, noNaN: true }), positive, (parts, finished) => {
        const plus = concentrate(parts - 1, litres(finished), 'plus');
        close(concentrate(parts, litres(finished), 'in'), plus);
        expect(plus).toBeLessThan(finished);
      }),
    );
  });
});

/** How many of the smallest measure the words come to, read back. */
const readBack = (words: string, smallest: Unit): number => {
  const measures = words.matchAll(/([\d./ ]+) (imp fl oz|imp pt|[a-zA-Z]+)/g);
  return [...measures].reduce((total, [, number, name]) => {
    const value = number!
      .trim()
      .split(' ')
      .map((part) => part.split('/').map(Number))
      .reduce((sum, [above, below]) => sum + above! / (below ?? 1), 0);
    return total + convert(value, findUnit(name === 'cups' ? 'cup' : name!)!, smallest);
  }, 0);
};

describe('kitchen measures', () => {
  const SMALLEST = { US: 'tsp', imperial: 'imp fl oz', metric: 'mL' } as const;
  const smallestOf = (unit: Unit) =>
    findUnit(unit.family === 'volume' ? SMALLEST[unit.system] : unit.system === 'metric' ? 'g' : 'oz')!;
  const DEFAULT: Readonly<Record<string, number>> = { tsp: 0.25, 'imp fl oz': 0.25, mL: 1, oz: 0.25, g: 1 };

  const anAmount = fc.record({
    unit: unitOf('volume', 'mass'),
    // In the smallest measure, so that small and large amounts are tried alike.
    size: fc.oneof(
      fc.double({ min: 1e-3, max: 10, noNaN: true }),
      fc.double({ min: 10, max: 1e5, noNaN: true }),
    ),
    finest: fc.option(
      fc.oneof(
        fc.constantFrom(0.1, 0.125, 1 / 3, 0.5, 1, 3, 12, 48),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
      ),
      { nil: undefined },
    ),
  });

  test('the error is at most half the finest measure, and the words come to the measured amount', () => {
    fc.assert(
      fc.property(anAmount, ({ unit, size, finest }) => {
        const smallest = smallestOf(unit);
        const step = finest ?? DEFAULT[smallest.token]!;
        const amount = convert(size, smallest, unit);
        const told = measure(amount, unit, finest);
        if (told === undefined) {
          expect(size).toBeLessThan(step / 2);
          return;
        }
        const measured = convert(told.measured, unit, smallest);
        expect(Math.abs(measured - size)).toBeLessThanOrEqual((step / 2) * (1 + 1e-6) + 1e-12 * size);
        close(measured / step, Math.round(measured / step), 1e-9);
        close(1 + told.error, measured / size);
        close(readBack(told.words, smallest), measured, 1e-11);
      }),
      { numRuns: 2000 },
    );
  });

  test('rounded down it is never above the amount, nor a whole finest measure below', () => {
    fc.assert(
      fc.property(anAmount, ({ unit, size, finest }) => {
        const smallest = smallestOf(unit);
        const step = finest ?? DEFAULT[smallest.token]!;
        const amount = convert(size, smallest, unit);
        const told = measure(amount, unit, finest, 'down');
        if (told === undefined) {
          expect(size).toBeLessThan(step);
          return;
        }
        expect(told.measured).toBeLessThanOrEqual(amount);
        expect(told.error).toBeLessThanOrEqual(0);
        expect(size - convert(told.measured, unit, smallest)).toBeLessThan(step * (1 + 1e-6));
        close(readBack(told.words, smallest), convert(told.measured, unit, smallest), 1e-11);
      }),
      { numRuns: 2000 },
    );
  });

  test('each measure is told once, the largest first, and none could be swapped for a larger', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (quarters) => {
        const { words } = measure(quarters / 4, findUnit('tsp')!)!;
        const names = [...words.matchAll(/cups?|tbsp|tsp/g)].map(([name]) => name.replace('cups', 'cup'));
        expect(names).toEqual(['cup', 'tbsp', 'tsp'].filter((name) => names.includes(name)));
        const teaspoons = readBack(/[\d /]+ tsp/.exec(words)?.[0] ?? '', findUnit('tsp')!);
        const spoons = readBack(/[\d /]+ tbsp/.exec(words)?.[0] ?? '', findUnit('tsp')!);
        expect(teaspoons).toBeLessThan(3);
        expect(teaspoons + spoons).toBeLessThan(12);
      }),
      { numRuns: 1000 },
    );
  });
});

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { call } from '../../functions';
import { printedMeasure } from '../properties/liveCard/printedMeasure';
import { referenceConvert } from '../oracles/referenceUnits';

const SMALLEST = { tsp: 'mL', 'imp fl oz': 'mL', mL: 'mL', cup: 'mL', oz: 'g', g: 'g', lb: 'g' } as const;

const valueOf = (name: string, ...args: (string | number)[]): unknown => {
  const outcome = call(name, args);
  return 'value' in outcome ? outcome.value : outcome;
};

test('what HOWMUCH says is what MEASURED counts, never above the most', () => {
  let [stocks, least] = [0, 0];
  fc.assert(
    fc.property(
      fc.constantFrom(...(Object.keys(SMALLEST) as (keyof typeof SMALLEST)[])),
      fc.integer({ min: 0, max: 1000 }).map((share) => 1e-5 * 1e9 ** (share / 1000)),
      fc.option(fc.integer({ min: 0, max: 100 })),
      (unit, amount, over) => {
        const most = over === null ? 0 : amount * (1 + over / 1000);
        const words = String(valueOf('HOWMUCH', amount, unit, most));
        const kind = SMALLEST[unit] === 'g' ? 'mass' : 'volume';
        const told = printedMeasure(words, kind);
        expect(told, words).toBeDefined();
        const counted = valueOf('MEASURED', amount, unit, most) as number;
        expect(told!.amount.kind).toBe(kind);
        const reference = referenceConvert(counted, unit, SMALLEST[unit]);
        expect(Math.abs(told!.amount.amount - reference)).toBeLessThanOrEqual(1e-9 * reference);
        if (most > 0) expect(counted).toBeLessThanOrEqual(most * (1 + 1e-8));
        if (words === 'too little to measure') least += 1;
        else if (words.startsWith('too little')) stocks += 1;
      },
    ),
    { numRuns: 2000 },
  );
  expect(stocks).toBeGreaterThan(100);
  expect(least).toBeGreaterThan(50);
});

test('a share of the label within a billionth of it is the label', () => {
  // A gallon is 256 tbsp of 14.78676478125 mL (NIST Handbook 44, Appendix C), so that 1 tbsp/gal is 1000/256 mL/L.
  expect(valueOf('LABELSHARE', 1, 'tbsp/gal', 1000 / 256, 'mL/L')).toBe(1);
  expect(valueOf('LABELSHARE', 1 + 9e-10, 'mL/L', 1, 'mL/L')).toBe(1);
  expect(valueOf('LABELSHARE', 1 - 9e-10, 'mL/L', 1, 'mL/L')).toBe(1);
  expect(valueOf('LABELSHARE', 1 + 2e-9, 'mL/L', 1, 'mL/L')).toBeGreaterThan(1);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MixProduct, PlantGroup, RoundInput } from '../../addin/core';
import {
  amountIn,
  cardMeasure,
  compareTanks,
  density,
  findUnit,
  grams,
  litres,
  litresPerMinute,
  ofMass,
  ofVolume,
  planRound,
  productFor,
  scaleAmount,
  seconds,
} from '../../addin/core';
import { expectSame, fillsOf, planned, sum } from '../core/round/garden';

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const name = fc.constantFrom('Tap', 'Shed', 'Gate', 'Arch');
const size = fc.constantFrom('large', 'medium', 'miniature');

const groups = fc
  .array(fc.record({ bed: name, station: name, sizeClass: size, plants: fc.integer({ min: 0, max: 20 }) }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((beds): PlantGroup[] => [...beds, { bed: 'Last', station: 'Tap', sizeClass: 'large', plants: 1 }]);

const rig = fc.record({
  barrel: from(40, 400).map(litres),
  fillLine: from(0.5, 1),
  heel: from(0, 10).map(litres),
  flow: from(2, 20).map(litresPerMinute),
  tapFlow: from(5, 60).map(litresPerMinute),
  hoseContent: from(0, 5).map(litres),
  betweenPlants: from(0, 20).map(seconds),
  wandStaysOpen: fc.boolean(),
  countStep: fc.constantFrom(0.5, 1, 5).map(seconds),
  emptyWeight: from(0, 20_000).map(grams),
  premixTime: from(0, 900).map(seconds),
  moveTime: from(0, 900).map(seconds),
});

const someRate = fc.oneof(
  from(1e-4, 0.05).map((n) => ofVolume(litres(n))),
  from(0.01, 5).map((n) => ofMass(grams(n))),
);

const product = fc.record(
  {
    form: fc.constantFrom('powder' as const, 'liquid' as const),
    rate: someRate,
    density: from(0.5, 1.5).map(density),
    analysis: fc.record({ N: from(0, 0.3), K2O: from(0, 0.3) }, { requiredKeys: [] }),
    solubility: from(50, 800),
    unitPrice: fc.record({ per: fc.constantFrom('gram' as const, 'litre' as const), price: from(0, 50) }),
  },
  { requiredKeys: ['form', 'rate', 'analysis'] },
);

const input: fc.Arbitrary<RoundInput> = fc.record({
  groups,
  doses: fc.tuple(from(0.2, 8), from(0.2, 8), from(0.2, 8)).map((doses) =>
    ['large', 'medium', 'miniature'].map((sizeClass, place) => ({
      sizeClass,
      dose: litres(doses[place]!),
    })),
  ),
  rig,
  mix: fc
    .array(product, { maxLength: 4 })
    .map((mix) => mix.map((one, place): MixProduct => ({ ...one, name: `Product ${place}` }))),
  style: fc.constantFrom('full' as const, 'equal' as const),
  start: fc.integer({ min: 0, max: 86_399 }).map(seconds),
});

/** An error may be below 0: it is told as the share that is measured. */
const everyNumber = (value: unknown, key = ''): number[] => {
  if (typeof value === 'number') return [key === 'error' ? value + 1 : value];
  return typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([name, inside]) => everyNumber(inside, name))
    : [];
};

describe('fills of a round', () => {
  test('at each station what is pumped out sums to the need, what is made up to need and heel', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const plan = planned(asked);
        for (const { need, fills, leftOver } of plan.stations) {
          expectSame(sum(fills.map(({ pumpedOut }) => pumpedOut)), need);
          expectSame(sum(fills.map(({ makeUp }) => makeUp)), need + leftOver);
          expect(leftOver).toBe(asked.rig.heel);
        }
        expectSame(plan.totals.madeUp, plan.totals.need + plan.stations.length * asked.rig.heel);
        expect(fillsOf(plan).map(({ number }) => number)).toEqual(fillsOf(plan).map((_, place) => place + 1));
      }),
    );
  });

  test('each product adds up to its rate × what is made up, fill by fill and in all', () => {
    const number = (amount: MixProduct['rate']) => (amount.kind === 'volume' ? amount.volume : amount.mass);
    fc.assert(
      fc.property(input, (asked) => {
        const plan = planned(asked);
        asked.mix.forEach(({ rate }, place) => {
          expectSame(number(plan.totals.products[place]!.amount), number(rate) * plan.totals.madeUp);
          for (const { makeUp, products } of fillsOf(plan)) {
            expect(products[place]!.amount.kind).toBe(rate.kind);
            expectSame(number(products[place]!.amount), number(rate) * makeUp);
          }
        });
      }),
    );
  });

  test('no fill passes the barrel’s fill line, and none weighs more than the full barrel', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const { barrel, fillLine, heel, emptyWeight } = asked.rig;
        const line = barrel * fillLine * (1 + 1e-8);
        for (const { fills } of planned(asked).stations) {
          fills.forEach(({ makeUp, weight }, place) => {
            expect(makeUp).toBeGreaterThan(0);
            expect(makeUp + (place === 0 ? 0 : heel)).toBeLessThanOrEqual(line);
            expect(weight).toBeLessThanOrEqual(line * 998.2 + emptyWeight);
          });
        }
      }),
    );
  });

  test('equal barrels are as many as full ones, for the same need', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const [full, equal] = (['full', 'equal'] as const).map(
          (style) => planned({ ...asked, style }).totals,
        );
        expect(equal!.fills).toBe(full!.fills);
        expect(equal!.need).toBe(full!.need);
        expectSame(equal!.madeUp, full!.madeUp);
      }),
    );
  });
});

describe('need and counts', () => {
  test('the counts deliver the doses within half a step at each plant, or one whole step where less is no count', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const { counts, totals } = planned(asked);
        const { flow, countStep } = asked.rig;
        const half = (flow / 60) * (countStep / 2) * (1 + 1e-6);
        for (const { count, dose, given, error } of counts) {
          expectSame(count / countStep, Math.round(count / countStep));
          if (Math.abs(given - dose) > half) expect(count).toBe(countStep);
          expectSame(dose * (1 + error), given);
        }
        expectSame(totals.given, sum(counts.map(({ plants, given }) => plants * given)));
        expect(sum(counts.map(({ plants }) => plants))).toBe(totals.plants);
      }),
    );
  });

  test('twice the plants need twice as much but for the hoses', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const twice = asked.groups.map((one) => ({ ...one, plants: 2 * one.plants }));
        const [once, double] = [asked.groups, twice].map((beds) => planned({ ...asked, groups: beds }));
        const hoses = once!.stations.length * asked.rig.hoseContent;
        expect(double!.totals.plants).toBe(2 * once!.totals.plants);
        expectSame(double!.totals.need - hoses, 2 * (once!.totals.need - hoses));
      }),
    );
  });

  test('a bed told in two rows is fed as one, and rows without plants change nothing', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const split = asked.groups.flatMap((one) => {
          const some = Math.floor(one.plants / 2);
          return [
            { ...one, plants: some },
            { ...one, plants: 0, station: 'Nowhere' },
            { ...one, plants: one.plants - some },
          ];
        });
        const [whole, told] = [asked.groups, split].map((beds) => planned({ ...asked, groups: beds }));
        expect(told!.stations.map(({ station, beds, plants }) => ({ station, beds, plants }))).toEqual(
          whole!.stations.map(({ station, beds, plants }) => ({ station, beds, plants })),
        );
        expectSame(told!.totals.need, whole!.totals.need);
      }),
    );
  });
});

describe('the clock', () => {
  test('nothing overlaps, nothing runs back, and the parts add up to the round', () => {
    fc.assert(
      fc.property(input, (asked) => {
        const plan = planned(asked);
        const { rig: with_, start, mix } = asked;
        let now: number = start;
        plan.stations.forEach(({ fills }, place) => {
          if (place > 0) now += with_.moveTime;
          for (const fill of fills) {
            expectSame(fill.premixStart, now);
            expect(fill.fillStart).toBeGreaterThanOrEqual(fill.premixStart);
            expect(fill.pumpStart).toBeGreaterThan(fill.fillStart);
            expect(fill.finish).toBeGreaterThan(fill.pumpStart);
            now = fill.finish;
          }
        });
        expectSame(plan.totals.finish, now);
        const { fills, madeUp, pumping, walking, duration } = plan.totals;
        const mixing = mix.length === 0 ? 0 : fills * with_.premixTime;
        const moving = (plan.stations.length - 1) * with_.moveTime;
        const onFoot = with_.wandStaysOpen ? 0 : walking;
        expectSame(duration, mixing + (madeUp / with_.tapFlow) * 60 + pumping + onFoot + moving);
        expectSame(walking, plan.totals.plants * with_.betweenPlants);
      }),
    );
  });
});

describe('whatever is given', () => {
  const odd = fc.oneof(
    fc.constantFrom(
      NaN,
      Infinity,
      -Infinity,
      0,
      -0,
      -1,
      1e308,
      -1e308,
      5e-324,
      1e-300,
      0.1,
      1,
      600,
      1e5,
      1e6,
    ),
    fc.double(),
  );

  test('the answer is a plan of ordinary numbers or a sentence', () => {
    let plans = 0;
    const places = fc.constantFrom(
      'barrel',
      'fillLine',
      'heel',
      'flow',
      'tapFlow',
      'hoseContent',
      'betweenPlants',
      'countStep',
      'emptyWeight',
      'premixTime',
      'moveTime',
      'start',
      'plants',
      'dose',
      'rate',
      'greatestRate',
      'density',
      'solubility',
      'price',
      'N',
    );
    fc.assert(
      fc.property(
        input,
        fc.array(fc.tuple(places, odd), { minLength: 1, maxLength: 3 }),
        (asked, oddities) => {
          const changed = oddities.reduce((round, [place, value]): RoundInput => {
            const [first, ...others] = round.mix;
            const mixed = (change: object): RoundInput => ({
              ...round,
              mix: first === undefined ? [] : [{ ...first, ...change }, ...others],
            });
            const kind = first?.rate.kind === 'volume' ? ofVolume(litres(value)) : ofMass(grams(value));
            if (place in round.rig) return { ...round, rig: { ...round.rig, [place]: value } };
            if (place === 'start') return { ...round, start: seconds(value) };
            if (place === 'plants')
              return { ...round, groups: [...round.groups, { ...round.groups[0]!, plants: value }] };
            if (place === 'dose')
              return { ...round, doses: round.doses.map((one) => ({ ...one, dose: litres(value) })) };
            if (place === 'rate' || place === 'greatestRate') return mixed({ [place]: kind });
            if (place === 'price') return mixed({ unitPrice: { per: 'gram', price: value } });
            if (place === 'N') return mixed({ analysis: { N: value } });
            return mixed({ [place]: value });
          }, asked);
          const answer = planRound(changed);
          if ('refused' in answer) {
            expect(answer.refused).toMatch(/(was|were|takes) .*; use .*\.$|; use .*\. To plan above a label/);
            expect(answer.refused).not.toMatch(/NaN|Infinity|undefined/);
            return;
          }
          plans++;
          for (const n of everyNumber(answer)) {
            expect(Number.isFinite(n) && n >= 0).toBe(true);
          }
        },
      ),
      { numRuns: 3000 },
    );
    expect(plans).toBeGreaterThan(100);
  });
});

describe('measures on the card', () => {
  test('what is measured never passes the label’s greatest rate, nor a rate planned above it', () => {
    let measures = 0;
    const units = fc
      .constantFrom('tsp', 'tbsp', 'cup', 'mL', 'L', 'g', 'oz', 'lb', 'imp fl oz')
      .map((token) => findUnit(token)!);
    fc.assert(
      fc.property(
        someRate,
        from(0.5, 1.2),
        from(5, 400),
        units,
        from(0.5, 1.5),
        (rate, share, volume, unit, dense) => {
          const amount = productFor(rate, litres(volume));
          const greatest = scaleAmount(rate, share);
          const measure = cardMeasure(amount, unit, greatest, litres(volume), density(dense))!;
          measures += measure.measured > 0 ? 1 : 0;
          const most = amountIn(
            productFor(share < 1 ? rate : greatest, litres(volume)),
            unit,
            density(dense),
          )!;
          expect(measure.measured).toBeLessThanOrEqual(most * (1 + 1e-8));
          if (measure.rounding === 'down')
            expect(measure.measured).toBeLessThanOrEqual(amountIn(amount, unit, density(dense))!);
        },
      ),
      { numRuns: 2000 },
    );
    expect(measures).toBeGreaterThan(1900);
  });
});

describe('barrels side by side', () => {
  test('the smallest that meets the limits meets them, and no smaller one does', () => {
    const sizes = fc.array(from(5, 500), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(
        input,
        sizes,
        fc.integer({ min: 1, max: 30 }),
        from(3e4, 4e5),
        (asked, barrels, mostFills, weight) => {
          const limits = { mostFills, mostWeight: grams(weight) };
          const { rows, smallest } = compareTanks(
            asked,
            barrels.map((n) => ({ barrel: litres(n) })),
            limits,
          );
          const fits = rows.filter(
            (row) => !('refused' in row) && row.fills <= mostFills && row.weightFull <= weight,
          );
          if (smallest === undefined) expect(fits).toEqual([]);
          else expect(rows[smallest]!.barrel).toBe(Math.min(...fits.map(({ barrel }) => barrel)));
        },
      ),
    );
  });
});

import { describe, expect, test } from 'vitest';
import type { MixProduct, Rig, RoundInput } from '../../../addin/core';
import { density, grams, litres, litresPerMinute, ofMass, planRound, seconds } from '../../../addin/core';
import { group, liquid, planned, powder, rate, refusedBy, round } from './garden';

const withRig = (rigChanges: Partial<Rig>) => round({ rigChanges });
const withMix = (changes: Partial<MixProduct>) => round({ mix: [{ ...powder, ...changes }] });

describe('a round that cannot be planned is refused in a sentence that names what was given and what is allowed', () => {
  const cases: readonly [string, RoundInput, string, string][] = [
    [
      'no groups',
      round({ groups: [] }),
      'garden',
      'No plants to feed: 0 were given; use a garden with at least 1.',
    ],
    [
      'groups of no plants',
      round({ groups: [group('Gate', 'Tap', 'large', 0)] }),
      'garden',
      'No plants to feed: 0 were given; use a garden with at least 1.',
    ],
    [
      'half a plant',
      round({ groups: [group('Gate', 'Tap', 'large', 2.5)] }),
      'garden',
      'Plants in bed “Gate”: 2.5 was given; use a whole number from 0 to 1,000,000.',
    ],
    [
      'fewer plants than none',
      round({ groups: [group('Gate', 'Tap', 'large', -1)] }),
      'garden',
      'Plants in bed “Gate”: -1 was given; use a whole number from 0 to 1,000,000.',
    ],
    [
      'a size without a dose',
      round({ groups: [group('Gate', 'Tap', 'climber', 3)] }),
      'doses',
      'Doses: none was given for size “climber”; use one for each size that has plants.',
    ],
    [
      'two doses for one size',
      round({ doses: [1, 2].map((n) => ({ sizeClass: 'large', dose: litres(n) })) }),
      'doses',
      'Doses: size “large” was given twice; use one dose a size.',
    ],
    [
      'a dose of nothing',
      round({ doses: [{ sizeClass: 'large', dose: litres(0) }] }),
      'doses',
      'Dose of size “large”: 0 L was given; use 0.001 L to 100 L, what one fill of the barrel delivers.',
    ],
    [
      'a dose that nobody can see',
      round({ doses: [{ sizeClass: 'large', dose: litres(5e-324) }] }),
      'doses',
      'Dose of size “large”: 4.94e-324 L was given; use 0.001 L to 100 L, what one fill of the barrel delivers.',
    ],
    [
      'a dose above what a fill delivers',
      round({ doses: [{ sizeClass: 'large', dose: litres(101) }] }),
      'doses',
      'Dose of size “large”: 101 L was given; use 0.001 L to 100 L, what one fill of the barrel delivers.',
    ],
    [
      'a flow of zero',
      withRig({ flow: litresPerMinute(0) }),
      'rig',
      'Flow at the wand: 0 L/min was given; use 0.01 L/min to 10,000 L/min.',
    ],
    [
      'a flow that is no number',
      withRig({ flow: litresPerMinute(NaN) }),
      'rig',
      'Flow at the wand: no number was given; use 0.01 L/min to 10,000 L/min.',
    ],
    [
      'a tap without water',
      withRig({ tapFlow: litresPerMinute(0) }),
      'rig',
      'Flow of the tap: 0 L/min was given; use 0.01 L/min to 10,000 L/min.',
    ],
    [
      'a barrel smaller than its heel',
      withRig({ barrel: litres(10), heel: litres(12) }),
      'rig',
      'Heel: 12 L was given; use less than the 10 L that the barrel holds at its fill line.',
    ],
    [
      'a heel up to the fill line',
      withRig({ fillLine: 0.5, heel: litres(51) }),
      'rig',
      'Heel: 51 L was given; use less than the 51 L that the barrel holds at its fill line.',
    ],
    [
      'a fill line above the rim',
      withRig({ fillLine: 1.2 }),
      'rig',
      'Fill line, as a share of the barrel: 1.2 was given; use 0.01 to 1.',
    ],
    [
      'a fill line of zero',
      withRig({ fillLine: 0 }),
      'rig',
      'Fill line, as a share of the barrel: 0 was given; use 0.01 to 1.',
    ],
    [
      'a step of zero',
      withRig({ countStep: seconds(0) }),
      'rig',
      'Step of the counts: 0 s was given; use 0.1 s to 600 s.',
    ],
    [
      'a barrel without end',
      withRig({ barrel: litres(Infinity) }),
      'rig',
      'Barrel: a number without end was given; use 0.1 L to 100,000 L.',
    ],
    [
      'more than 500 fills',
      round({ groups: [group('Gate', 'Tap', 'large', 12_501)] }),
      'rig',
      'Fills: this round takes 501 with a barrel that delivers 100 L a fill; use a barrel that needs 500 or fewer.',
    ],
    [
      'a rate above the label',
      withMix({ rate: rate(2, 'g/L') }),
      'mix',
      "Rate of “Soluble powder 20-20-20”: 2 g/L was given; use up to the label's greatest rate, 1.5 g/L. " +
        'To plan above a label, write the reason: it goes on the card.',
    ],
    [
      'a rate of zero',
      withMix({ rate: rate(0, 'g/L') }),
      'mix',
      'Rate of “Soluble powder 20-20-20”: 0 g/L was given; use 0.000001 g/L to 2,000 g/L.',
    ],
    [
      'a label’s rate that is no number',
      withMix({ greatestRate: rate(NaN, 'g/L') }),
      'mix',
      "Label's greatest rate of “Soluble powder 20-20-20”: no number was given; use 0.000001 g/L to 2,000 g/L.",
    ],
    [
      'a rate and a label’s rate of two kinds without a density',
      withMix({ rate: rate(1, 'mL/L') }),
      'mix',
      "Density of “Soluble powder 20-20-20”: nothing was given, and one of its rate and its label's greatest rate is by " +
        'volume, the other by mass; use the grams that one millilitre weighs, or two rates of one kind.',
    ],
    [
      'per cent where a share belongs',
      withMix({ analysis: { N: 20 } }),
      'mix',
      'N of “Soluble powder 20-20-20”: 2,000 % was given; use 0 to 100 %.',
    ],
    [
      'a solubility of zero',
      withMix({ solubility: 0 }),
      'mix',
      'Solubility of “Soluble powder 20-20-20”: 0 g/L was given; use 0.001 to 100,000 g/L.',
    ],
    [
      'a density of zero',
      withMix({ density: density(0) }),
      'mix',
      'Density of “Soluble powder 20-20-20”: 0 g/mL was given; use 0.01 to 30 g/mL.',
    ],
    [
      'a price below nothing',
      withMix({ unitPrice: { per: 'gram', price: -1 } }),
      'mix',
      'Price of “Soluble powder 20-20-20”: -1 was given; use 0 to 1,000,000,000.',
    ],
    [
      'a product twice',
      round({ mix: [powder, { ...powder, name: ' soluble POWDER 20-20-20' }] }),
      'mix',
      'Mix: “ soluble POWDER 20-20-20” was given twice; use one rate a product.',
    ],
    [
      'more liquid than solution',
      round({
        mix: ['a', 'b'].map((name) => ({
          ...liquid,
          name,
          rate: rate(600, 'mL/L'),
          greatestRate: undefined,
        })),
      }),
      'mix',
      'Mix: liquids of 120 % of the finished solution were given; use 100 % or less in all.',
    ],
    [
      'a start after the day',
      round({ start: seconds(86_400) }),
      'round',
      'Start on the clock: 86,400 s after midnight was given; use 0 to 86,399.',
    ],
  ];

  test.each(cases)('%s', (_, input, place, refused) => {
    expect(refusedBy(input)).toEqual({ refused, place });
  });
});

test('no value of the rig that is no number, endless or negative is planned with', () => {
  const keys = Object.keys(round().rig).filter((key) => key !== 'wandStaysOpen');
  expect(keys.length).toBe(11);
  for (const key of keys) {
    for (const odd of [NaN, Infinity, -Infinity, -1]) {
      expect(refusedBy(withRig({ [key]: odd })).place, `${key} ${odd}`).toBe('rig');
    }
  }
});

test('every size that lacks a dose is named, the many counted', () => {
  const groups = ['a', 'b', 'c', 'd', 'e'].map((sizeClass) => group('Gate', 'Tap', sizeClass, 1));
  expect(refusedBy(round({ groups })).refused).toContain('“a”, “b”, “c” and 2 more;');
});

test('a size whose plants are all gone needs no dose', () => {
  const groups = [group('Gate', 'Tap', 'large', 1), group('Gate', 'Tap', 'climber', 0)];
  expect(planned(round({ groups })).totals.plants).toBe(1);
});

test('a dose of a size without plants may be blank, odd or doubled', () => {
  const doses = [4, 0, 1].map((dose, place) => ({
    sizeClass: place === 0 ? 'large' : 'climber',
    dose: litres(dose),
  }));
  expect(planned(round({ doses })).totals.need).toBe(200);
});

test('sentences speak in the measures of the user', () => {
  const dose = litres(450);
  const refusal = refusedBy({ ...round({ doses: [{ sizeClass: 'large', dose }] }), measures: 'US' });
  expect(refusal.refused).toContain('118.9 gal was given; use 0.0002642 gal to 26.42 gal');
  const imperial = refusedBy({ ...withRig({ flow: litresPerMinute(0) }), measures: 'imperial' });
  expect(imperial.refused).toContain('0 imp gal/min was given');
});

test('exactly 500 fills, a dose of exactly one fill, and the label’s own rate are planned', () => {
  const groups = [group('Gate', 'Tap', 'large', 12_500)];
  expect(planned(round({ groups })).totals.fills).toBe(500);
  expect(planned(round({ doses: [{ sizeClass: 'large', dose: litres(100) }] })).totals.fills).toBe(50);
  expect(planned(withMix({ rate: rate(1.5, 'g/L') })).cautions.map(({ id }) => id)).not.toContain(
    'over-label',
  );
});

describe('above the label', () => {
  const over = { ...powder, rate: rate(2, 'g/L') };

  test('a reason is taken and stands first among the cautions, with rate and label', () => {
    const plan = planned(round({ mix: [over], overLabelReason: ' adviser’s soil test ' }));
    expect(plan.cautions[0]).toEqual({
      id: 'over-label',
      text:
        "Above the label: “Soluble powder 20-20-20” at 2 g/L, label's greatest rate 1.5 g/L. " +
        'Reason given: “adviser’s soil test”. The label may be binding where you live: read it and your local rules first.',
    });
  });

  test('a blank reason is none', () => {
    expect(planRound(round({ mix: [over], overLabelReason: '  ' }))).toHaveProperty('refused');
  });

  test('a reason where no rate is above its label warns of nothing', () => {
    expect(planned(round({ overLabelReason: 'any' })).cautions.map(({ id }) => id)).not.toContain(
      'over-label',
    );
  });

  test('rates by volume and by mass are compared through the density', () => {
    const scooped = { ...powder, rate: rate(2, 'mL/L'), density: density(0.7) };
    expect(planRound(round({ mix: [scooped] }))).not.toHaveProperty('refused');
    expect(refusedBy(round({ mix: [{ ...scooped, density: density(0.8) }] })).place).toBe('mix');
  });

  test('one label among several is enough to refuse', () => {
    const refusal = refusedBy(round({ mix: [liquid, over] }));
    expect(refusal.refused).toContain(over.name);
    expect(over.greatestRate).toEqual(ofMass(grams(1.5)));
  });
});

import { describe, expect, test } from 'vitest';
import type { MixProduct } from '../../addin/core';
import {
  amountIn,
  cardMeasure,
  findUnit,
  fromCanonical,
  litres,
  massForPpm,
  milligramsPerLitre,
  ofMass,
  seconds,
} from '../../addin/core';
import {
  fillsOf,
  gallons,
  gallonsPerMinute,
  group,
  planned,
  rate,
  rig,
  round,
  sum,
} from '../core/round/garden';
import { asPrinted, expectWithin } from './within';

const inGallons = (volume: number) => fromCanonical(litres(volume), findUnit('gal', 'volume')!);
const inMinutes = (time: number) => time / 60;
const barrelOf = (gal: number) => ({
  ...rig,
  barrel: gallons(gal),
  heel: litres(0),
  flow: gallonsPerMinute(2.6),
});

const feedOf200ppm = (share: number): MixProduct => ({
  name: 'Soluble powder',
  form: 'powder',
  rate: ofMass(massForPpm(milligramsPerLitre(200), share, litres(1))),
  analysis: { N: share },
});

describe('published', () => {
  // UMass Extension, "Fertilizer Calculations for Greenhouse Crops": ounces per 100 gal for 200 ppm N.
  test.each([
    [0.2, 13.5],
    [0.15, 18],
  ])('a full barrel of 100 gal at 200 ppm N from a share of %d takes %d oz', (share, ounces) => {
    const groups = [group('Gate', 'Tap', 'large', 50)];
    const doses = [{ sizeClass: 'large', dose: gallons(2) }];
    const plan = planned(round({ groups, doses, rig: barrelOf(100), mix: [feedOf200ppm(share)] }));
    expect(plan.totals.fills).toBe(1);
    // Extension tables are built on 74.07 mg/L for an oz in 100 gal, 1.1 % from the definition.
    expectWithin(amountIn(fillsOf(plan)[0]!.products[0]!.amount, findUnit('oz')!), ounces, 0.015);
  });

  // Doses: J. Speas, Winston-Salem Rose Society (1999), liquid fertilizer page of the Carolina District: a miniature
  // 1/2 gal, a hybrid tea, floribunda or old garden rose 1 gal, from a 32 gal can and 55 gal barrels. Fills computed.
  test.each([
    [55, 40, 30, 1, 55],
    [55, 100, 21, 3, 0.5],
    [32, 25, 14, 1, 32],
    [32, 60, 20, 3, 6],
  ])(
    'a %d gal barrel, %d bushes of 1 gal and %d miniatures of 1/2 gal',
    (barrel, bushes, miniatures, fills, last) => {
      const groups = [
        group('Long bed', 'Tap', 'bush', bushes),
        group('Pots', 'Tap', 'miniature', miniatures),
      ];
      const doses = [
        { sizeClass: 'bush', dose: gallons(1) },
        { sizeClass: 'miniature', dose: gallons(0.5) },
      ];
      const plan = planned(round({ groups, doses, rig: barrelOf(barrel) }));
      expectWithin(inGallons(plan.totals.need), bushes + miniatures / 2, 1e-12);
      expect(plan.totals.fills).toBe(fills);
      expectWithin(inGallons(fillsOf(plan).at(-1)!.pumpedOut), last, 1e-12);
    },
  );

  // Dose and rate of an exhibitor: Roses for Dummies, 2nd ed. (as quoted on a blog): 1 tbsp/gal, 2 gal a bush. The
  // bushes that a barrel feeds are computed.
  test('at 1 tbsp/gal and 2 gal a bush, 60 gal feed 30 bushes with 3 3/4 cups', () => {
    const asked = rate(1, 'tbsp/gal');
    const mix: MixProduct[] = [
      { name: 'Soluble powder', form: 'powder', rate: asked, greatestRate: asked, analysis: {} },
    ];
    const doses = [{ sizeClass: 'large', dose: gallons(2) }];
    const bushes = (plants: number) =>
      planned(round({ groups: [group('Show bed', 'Tap', 'large', plants)], doses, rig: barrelOf(60), mix }));
    expect(bushes(31).totals.fills).toBe(2);
    const [fill, ...others] = fillsOf(bushes(30));
    expect(others).toEqual([]);
    const { amount } = fill!.products[0]!;
    // Growers speak of 4 cups; the label's greatest rate is never passed.
    expect(cardMeasure(amount, findUnit('cup')!, asked, fill!.makeUp)).toMatchObject({
      words: '3 3/4 cups',
    });
  });
});

// Common practice among growers, no published source.
describe('common practice', () => {
  test('350 roses, mostly large, are four fills of 60 gal and some 90 minutes of pumping at 2.6 gal/min', () => {
    // 15 s to 20 s on large bushes, 5 s to 8 s on potted miniatures, told as doses at that flow.
    const atFlow = (count: number) => gallons((2.6 / 60) * count);
    const doses = [
      { sizeClass: 'large', dose: atFlow(18) },
      { sizeClass: 'medium', dose: atFlow(15) },
      { sizeClass: 'miniature', dose: atFlow(6) },
    ];
    const groups = [
      group('Long bed', 'Tap', 'large', 200),
      group('Walk', 'Tap', 'medium', 90),
      group('Pots', 'Tap', 'miniature', 60),
    ];
    const asked = rate(1, 'tbsp/gal');
    const mix: MixProduct[] = [
      { name: 'Soluble powder', form: 'powder', rate: asked, greatestRate: asked, analysis: {} },
    ];
    const plan = planned(round({ groups, doses, rig: { ...barrelOf(60), heel: gallons(1) }, mix }));
    expect(plan.counts.map(({ count }) => count)).toEqual([18, 15, 6]);
    expect(plan.totals.plants).toBe(350);
    expect(plan.totals.fills).toBe(4);
    expectWithin(inMinutes(plan.totals.pumping), 90, 0.1);
    const first = fillsOf(plan)[0]!;
    const cups = cardMeasure(first.products[0]!.amount, findUnit('cup')!, asked, first.makeUp);
    expect(cups).toMatchObject({ words: '3 3/4 cups' });
  });
});

// Computed, regression anchors.
describe('computed', () => {
  test.each([
    [1, 757],
    [2, 1514],
  ])('%d gal of feed at 200 ppm N give a plant %d mg', (dose, milligrams) => {
    const doses = [{ sizeClass: 'large', dose: gallons(dose) }];
    // A flow at which the doses take whole seconds, so that what is given is the dose.
    const flow = gallonsPerMinute(3);
    const plan = planned(round({ doses, rig: { ...barrelOf(60), flow }, mix: [feedOf200ppm(0.2)] }));
    expectWithin(plan.food[0]!.N, milligrams, asPrinted(String(milligrams)));
  });

  test('5 lb of potassium nitrate take 2.35 gal of water at 20 °C, 1.880 gal ÷ 0.8', () => {
    // CRC Handbook, 98th ed. (2017): 24.2 % of the saturated solution by mass, 31.93 g in 100 g of water.
    const solubility = 319.3 * 0.9982;
    const mix: MixProduct[] = [
      { name: 'Potassium nitrate', form: 'powder', rate: rate(5, 'lb/100 gal'), solubility, analysis: {} },
    ];
    const doses = [{ sizeClass: 'large', dose: gallons(2) }];
    const plan = planned(round({ doses, rig: barrelOf(100), mix }));
    expectWithin(inGallons(fillsOf(plan)[0]!.premixWater!), 1.88 / 0.8, asPrinted('1.880'));
  });

  test('moving once between two taps costs one move and a second heel and hose', () => {
    const groups = (stations: readonly string[]) =>
      stations.map((station) => group(station, station, 'large', 25));
    const rigChanges = {
      hoseContent: gallons(0.8),
      heel: gallons(1),
      barrel: gallons(60),
      moveTime: seconds(900),
    };
    const one = planned(round({ groups: groups(['Tap', 'Tap']), rigChanges }));
    const two = planned(round({ groups: groups(['Tap', 'Shed']), rigChanges }));
    expectWithin(inGallons(two.totals.madeUp) - inGallons(one.totals.madeUp), 1.8, 1e-9);
    expect(sum(two.stations.map(({ leftOver }) => inGallons(leftOver)))).toBeCloseTo(2, 9);
    const [before, after] = two.stations.flatMap(({ fills }) => fills);
    expectWithin(after!.premixStart - before!.finish, 900, 1e-9);
  });
});

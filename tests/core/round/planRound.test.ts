import { describe, expect, test } from 'vitest';
import { findUnit, grams, litres, litresPerMinute, ofMass, ofVolume, seconds } from '../../../addin/core';
import { expectSame, fillsOf, group, liquid, planned, powder, rate, round, sum } from './garden';

describe('counts', () => {
  test('a count is dose ÷ flow in whole steps, with what it really gives', () => {
    const doses = [{ sizeClass: 'large', dose: litres(2.6) }];
    const [count] = planned(round({ doses })).counts;
    expect(count).toMatchObject({ sizeClass: 'large', plants: 50, dose: 2.6, count: 16 });
    expectSame(count!.given, 16 / 6);
    expectSame(count!.error, 16 / 6 / 2.6 - 1);
  });

  test('sizes stand in the order of the doses, those without plants are left out', () => {
    const groups = [
      group('Pots', 'Tap', 'miniature', 3),
      group('Gate', 'Tap', 'large', 2),
      group('Arch', 'Tap', 'large', 1),
    ];
    const doses = ['climber', 'large', 'miniature'].map((sizeClass) => ({ sizeClass, dose: litres(2) }));
    const { counts } = planned(round({ groups, doses }));
    expect(counts.map(({ sizeClass, plants }) => [sizeClass, plants])).toEqual([
      ['large', 3],
      ['miniature', 3],
    ]);
  });

  test('a dose of less than half a step still gets one step', () => {
    const doses = [{ sizeClass: 'large', dose: litres(0.2) }];
    const [count] = planned(round({ doses, rigChanges: { countStep: seconds(5) } })).counts;
    expect(count!.count).toBe(5);
    expectSame(count!.given, 5 / 6);
  });

  test('the need is what the doses ask, whatever the counts are rounded to', () => {
    const doses = [{ sizeClass: 'large', dose: litres(2.6) }];
    const { totals, cautions } = planned(round({ doses, rigChanges: { countStep: seconds(5) } }));
    expectSame(totals.need, 130);
    expectSame(totals.given, 125);
    expect(cautions.find(({ id }) => id === 'count-rounding')?.text).toMatch(/3\.8 % less .* left over/);
  });
});

describe('fills', () => {
  test('full barrels and a short last one; the first makes up the heel', () => {
    const { stations, totals } = planned(round({ groups: [group('Gate', 'Tap', 'large', 60)] }));
    expect(stations[0]!.fills.map(({ number, makeUp, pumpedOut }) => [number, makeUp, pumpedOut])).toEqual([
      [1, 102, 100],
      [2, 100, 100],
      [3, 40, 40],
    ]);
    expect(stations[0]!.leftOver).toBe(2);
    expect(totals).toMatchObject({ plants: 60, fills: 3, need: 240, madeUp: 242 });
  });

  test('equal barrels deliver the same each', () => {
    const { stations } = planned(round({ groups: [group('Gate', 'Tap', 'large', 60)], style: 'equal' }));
    expect(stations[0]!.fills.map(({ makeUp, pumpedOut }) => [makeUp, pumpedOut])).toEqual([
      [82, 80],
      [80, 80],
      [80, 80],
    ]);
  });

  test('the last fill is not over-dosed: its product is for what is made up in it', () => {
    const fills = fillsOf(planned(round({ groups: [group('Gate', 'Tap', 'large', 60)] })));
    expect(fills.map(({ products }) => products[0]!.amount)).toEqual(
      [102, 100, 40].map((g) => ofMass(grams(g))),
    );
  });

  test('products of the round add up to rate × what is made up', () => {
    const { totals } = planned(round({ mix: [powder, liquid] }));
    expect(totals.madeUp).toBe(202);
    expect(totals.products.map(({ name }) => name)).toEqual([powder.name, liquid.name]);
    expect(totals.products[0]!.amount).toEqual(ofMass(grams(202)));
    const fish = totals.products[1]!.amount;
    expectSame(fish.kind === 'volume' ? fish.volume : undefined, 0.808);
  });

  test('a barrel weighs its liquid with the heel as water at 20 °C, and itself', () => {
    const fills = fillsOf(planned(round({ groups: [group('Gate', 'Tap', 'large', 60)] })));
    // 998.2 g/L: MWH, Water Treatment, 3rd ed. (2012), Appendix C.
    [102, 102, 42].forEach((inBarrel, place) => expectSame(fills[place]!.weight, inBarrel * 998.2 + 9000));
  });
});

describe('stations', () => {
  const groups = [
    group('Gate', 'Tap', 'large', 10),
    group('Arch', 'Shed', 'large', 5),
    group('Pots', 'Tap', 'miniature', 8),
    group('Gate', 'Tap', 'miniature', 2),
    group('Bare', 'Far', 'large', 0),
  ];

  test('they are visited in the order they first appear, each once, those without plants never', () => {
    const { stations } = planned(round({ groups }));
    expect(stations.map(({ station, beds, plants, need }) => ({ station, beds, plants, need }))).toEqual([
      { station: 'Tap', beds: ['Gate', 'Pots'], plants: 20, need: 50 },
      { station: 'Shed', beds: ['Arch'], plants: 5, need: 20 },
    ]);
  });

  test('two spellings of one station are one, named as it is spelt first', () => {
    const spelt = [group('Gate', 'Tap', 'large', 10), group('Arch', ' TAP', 'large', 5)];
    const { stations } = planned(round({ groups: spelt }));
    expect(stations.map(({ station, plants }) => [station, plants])).toEqual([['Tap', 15]]);
  });

  test('the heel and the hose are made up at each, as barrel and hose are moved empty', () => {
    const plan = planned(round({ groups, rigChanges: { hoseContent: litres(1.5) } }));
    expect(plan.stations.map(({ need }) => need)).toEqual([51.5, 21.5]);
    expect(plan.totals.need).toBe(73);
    expect(plan.totals.madeUp).toBe(77);
    expect(fillsOf(plan).map(({ number, makeUp }) => [number, makeUp])).toEqual([
      [1, 53.5],
      [2, 23.5],
    ]);
  });

  test('a wand left open between plants costs solution, a closed one does not', () => {
    const walking = { betweenPlants: seconds(6) };
    expect(planned(round({ rigChanges: walking })).totals.need).toBe(200);
    expect(planned(round({ rigChanges: { ...walking, wandStaysOpen: true } })).totals.need).toBe(250);
  });
});

describe('the clock', () => {
  test('premix, then the tap, then the pump; a move between stations', () => {
    const groups = [group('Gate', 'Tap', 'large', 30), group('Arch', 'Shed', 'large', 5)];
    const plan = planned(round({ groups }));
    const eight = 8 * 3600;
    const clock = fillsOf(plan).map(({ premixStart, fillStart, pumpStart, finish }) =>
      [premixStart, fillStart, pumpStart, finish].map((time) => time - eight),
    );
    // 102 L, 20 L, 22 L made up at 20 L/min; 100 L, 20 L, 20 L pumped at 10 L/min; 600 s for the move.
    [
      [0, 300, 606, 1206],
      [1206, 1506, 1566, 1686],
      [2286, 2586, 2652, 2772],
    ].forEach((times, place) => times.forEach((time, part) => expectSame(clock[place]![part], time)));
    expectSame(plan.totals.duration, 2772);
    expectSame(plan.totals.finish, eight + 2772);
    expectSame(plan.totals.pumping, 140 * 6);
  });

  test('walking is spread over the fills by what they deliver', () => {
    const rigChanges = { betweenPlants: seconds(4) };
    const groups = [group('Gate', 'Tap', 'large', 60)];
    const plan = planned(round({ groups, rigChanges }));
    expect(plan.totals.walking).toBe(240);
    const pumping = fillsOf(plan).map(({ pumpStart, finish }) => finish - pumpStart);
    [700, 700, 280].forEach((time, place) => expectSame(pumping[place], time));
  });

  test('with the wand left open the walk is within the pumping', () => {
    const rigChanges = { betweenPlants: seconds(6), wandStaysOpen: true };
    const plan = planned(round({ rigChanges }));
    expect(plan.totals.walking).toBe(300);
    expectSame(plan.totals.pumping, 1500);
    expectSame(sum(fillsOf(plan).map(({ pumpStart, finish }) => finish - pumpStart)), 1500);
  });

  test('a round may end after midnight', () => {
    const plan = planned(round({ start: seconds(86_000) }));
    expect(plan.totals.finish).toBeGreaterThan(86_400);
    expectSame(plan.totals.finish - plan.totals.duration, 86_000);
  });
});

describe('premix', () => {
  test('hot water is each powder’s own at 0.8 of saturation, added up', () => {
    const second = { ...powder, name: 'Iron chelate', rate: rate(0.1, 'g/L'), solubility: 50 };
    const [first, last] = fillsOf(planned(round({ mix: [powder, second, liquid] })));
    // 102 g ÷ (250 × 0.8) + 10.2 g ÷ (50 × 0.8); then 100 L made up.
    expectSame(first!.premixWater, 0.51 + 0.255);
    expectSame(last!.premixWater, 0.5 + 0.25);
  });

  test('a powder measured by volume needs its density', () => {
    const scooped = { ...powder, rate: rate(1, 'mL/L'), greatestRate: undefined };
    expect(fillsOf(planned(round({ mix: [scooped] })))[0]).not.toHaveProperty('premixWater');
    const weighed = { ...scooped, density: 0.9 as typeof powder.density };
    expectSame(fillsOf(planned(round({ mix: [weighed] })))[0]!.premixWater, (102 * 0.9) / 200);
  });

  test('it is left out where a powder’s solubility is not known, and 0 where there is no powder', () => {
    const unknown = { ...powder, solubility: undefined };
    expect(fillsOf(planned(round({ mix: [unknown, { ...powder, name: 'Other' }] })))[0]).not.toHaveProperty(
      'premixWater',
    );
    expect(fillsOf(planned(round({ mix: [liquid] })))[0]!.premixWater).toBe(0);
  });
});

describe('plain water', () => {
  test('a mix without products plans a round, without premix time, and says so', () => {
    const plan = planned(round({ mix: [] }));
    const [fill] = fillsOf(plan);
    expect(fill!.products).toEqual([]);
    expect(fill!.fillStart).toBe(fill!.premixStart);
    expect(plan.totals.products).toEqual([]);
    expect(plan.totals).not.toHaveProperty('cost');
    expect(plan.food).toEqual([{ sizeClass: 'large' }]);
    expect(plan.cautions[0]!.id).toBe('plain-water');
  });
});

describe('cost', () => {
  const priced = { ...powder, unitPrice: { per: 'gram' as const, price: 0.02 } };

  test('it is price × what is measured, where every price is known', () => {
    const fish = { ...liquid, unitPrice: { per: 'litre' as const, price: 10 } };
    // Fills of 102 and 100 L take 102 and 100 g, and 408 and 400 mL, measured in steps of 5 mL as 410 and 400.
    const { totals } = planned(round({ mix: [priced, fish] }));
    const [grams, millilitres] = totals.products.map(({ measured }) =>
      measured.kind === 'mass' ? measured.mass : measured.volume * 1000,
    );
    expectSame(totals.cost, grams! * 0.02 + (millilitres! / 1000) * 10);
    expect([grams, millilitres]).toEqual([202, 810]);
  });

  test('it is left out where one price is not known', () => {
    expect(planned(round({ mix: [priced, liquid] })).totals).not.toHaveProperty('cost');
  });

  test('a price by mass of a product measured by volume takes its density', () => {
    const byMass = { ...liquid, unitPrice: { per: 'gram' as const, price: 0.01 } };
    expect(planned(round({ mix: [byMass] })).totals).not.toHaveProperty('cost');
    const dense = { ...byMass, density: 1.2 as typeof liquid.density };
    expectSame(planned(round({ mix: [dense] })).totals.cost, 810 * 1.2 * 0.01);
  });

  test('a product got for nothing costs nothing', () => {
    const free = { ...powder, unitPrice: { per: 'gram' as const, price: 0 } };
    expect(planned(round({ mix: [free] })).totals.cost).toBe(0);
  });
});

describe('food', () => {
  test('it is for the count really kept, oxides and elements', () => {
    const doses = [{ sizeClass: 'large', dose: litres(2.6) }];
    const [food] = planned(round({ doses })).food;
    const given = 16 / 6;
    expectSame(food!.N, 200 * given);
    expectSame(food!.P2O5, 200 * given);
    // Shares computed from atomic weights: domain of `ELEMENT_SHARE`, 0.436427 and 0.830151.
    expect(food!.P! / (200 * given)).toBeCloseTo(0.436427, 6);
    expect(food!.K! / (200 * given)).toBeCloseTo(0.830151, 6);
    expect(food).not.toHaveProperty('Fe');
  });

  test('a nutrient of a product by volume without density is left out, the others stay', () => {
    const [food] = planned(round({ mix: [powder, liquid] })).food;
    expect(Object.keys(food!).sort()).toEqual(['P', 'P2O5', 'sizeClass']);
    const dense = { ...liquid, density: 1.2 as typeof liquid.density };
    // 1 g/L × 20 % + 4 mL/L × 1.2 g/mL × 2 %, 4 L given.
    expectSame(planned(round({ mix: [powder, dense] })).food[0]!.N, (200 + 96) * 4);
  });
});

test('amounts keep the kind of their rate', () => {
  const [fill] = fillsOf(planned(round({ mix: [liquid], rigChanges: { flow: litresPerMinute(12) } })));
  expect(fill!.products[0]!.amount).toEqual(ofVolume(litres(0.004 * 102)));
});

test('a product is measured in the unit that it says, of the kind of its rate', () => {
  const wordsIn = (token: string) =>
    fillsOf(planned(round({ mix: [{ ...liquid, measuredIn: findUnit(token)! }] })))[0]!.products[0]!.measure
      .words;
  // 4 mL/L in 102 L: 408 mL, which are 82.8 tsp; a cup has 48.
  expect(wordsIn('mL')).toBe('410 mL');
  expect(wordsIn('cup')).toBe('1 3/4 cups');
  expect(wordsIn('oz')).toBe('410 mL');
});

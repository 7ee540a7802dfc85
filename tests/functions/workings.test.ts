import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convertShare } from '../../addin/core';
import { studentT } from '../../addin/core/flow/studentT';
import type { RawArgument, Working } from '../../functions';
import { catalogue, explain } from '../../functions';

import type { Amount, Figure, Side } from './figures';
import { agree, agreeInNumber, amountOf, figuresOf, partsOf, sideOf, whoseMeasure } from './figures';
import { callsOf, fitting } from './randomCalls';

/*
 * Follows a working as a reader does: every figure is an argument, a result of figures before it, or one of the few
 * that ALSO lists for its function. A function whose working tells something else fails here until it is listed.
 */

type Given = Readonly<Record<string, RawArgument>>;

/** Arguments that have a unit of their own, whatever units are given. */
const OWN_UNITS: Readonly<Record<string, readonly string[]>> = {
  percent: ['%'],
  // Readings are added up without their unit.
  seconds: ['s', ''],
  minutes: ['min'],
  step: ['s', 'min'],
  density: ['g/mL'],
  solubility: ['g/L'],
  ppm: ['mg/L'],
};

const numbersIn = (raw: RawArgument): number[] =>
  (Array.isArray(raw) ? raw.flat() : [raw]).filter((cell): cell is number => typeof cell === 'number');
const cellsIn = (raw: RawArgument): number[] =>
  (Array.isArray(raw) ? raw.flat() : [raw]).map((cell) => (typeof cell === 'number' ? cell : 0));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const text = (raw: RawArgument): string => String(raw).trim();

const inUnit =
  (unit: string) =>
  (value: number): Amount =>
    amountOf(value, unit);
const bare = inUnit('');

const readingsOf = ({ seconds }: Given): Amount[] => {
  const readings = numbersIn(seconds!).filter((reading) => reading > 0);
  const mean = sum(readings) / readings.length;
  const squares = sum(readings.map((reading) => (reading - mean) ** 2));
  const deviation = Math.sqrt(squares / (readings.length - 1));
  return [
    bare(readings.length),
    ...[mean, sum(readings)].map(inUnit('s')),
    // Readings that differ by their last binary digit alone leave noise.
    amountOf(deviation, 's', 5e-6 * deviation + 1e-11 * mean),
    inUnit('%')(100),
    // "95 % confidence" is 97.5 % on one side.
    bare(0.975),
  ];
};

/** The measure in which `finest` counts, and its least step. */
const finestOf = (unit: string): [string, number] => {
  const { powers } = amountOf(1, unit);
  if (powers.g) return whoseMeasure(unit) === 'metric' ? ['g', 1] : ['oz', 0.25];
  const whose = whoseMeasure(unit);
  return whose === 'metric' ? ['mL', 1] : [whose === 'imperial' ? 'imp fl oz' : 'tsp', 0.25];
};

const nearestStep = ({ amount, unit, finest }: Given): Amount[] => {
  const given = amountOf(amount as number, text(unit!));
  const [smallest, least] = finestOf(text(unit!));
  const step = amountOf((finest as number | null) || least, smallest);
  const value = Math.floor(given.value / step.value + 0.5 + 1e-12) * step.value;
  const error = Math.abs(value / given.value - 1) * 100;
  return [step, { ...given, value, off: 1e-6 * value }, inUnit('%')(error)];
};

// Where the two are one, arithmetic leaves noise.
const offBy = (amount: number, value: number): Amount => {
  const off = (value / amount - 1) * 100 || 0;
  return amountOf(off, '%', 1e-5 * Math.abs(off) + 1e-9);
};

/** The product of a stock, then its waters: a choice of ours, by the measure in which the product counts. */
const stockOf = (unit: RawArgument): Amount[] => {
  const [smallest] = finestOf(text(unit));
  if (['mL', 'g'].includes(smallest)) return [amountOf(5, smallest), ...[1, 10].map(inUnit('L'))];
  const waters = smallest === 'imp fl oz' ? [1, 5].map(inUnit('imp gal')) : [1, 4, 20].map(inUnit('qt'));
  return [amountOf(1, smallest), ...waters];
};

/** Figures that are no argument and that nothing before them comes to, by function. */
const ALSO: Readonly<Record<string, (given: Given, value: Working['value']) => readonly Amount[]>> = {
  BARREL: () => [4, 12].map(bare),
  // MWH, Water Treatment, 3rd ed. (2012), Appendix C: water at 20 °C.
  WEIGHT: () => [amountOf(998.2, 'g/L')],
  STOCK: ({ parts }) => [1, (parts as number) + 1].map(bare),
  FORPPM: () => [amountOf(1000, 'mg/g')],
  PPM: () => [amountOf(1000, 'mg/g')],
  FLOW: (given) => [amountOf(60, 's/min'), ...readingsOf(given)],
  FLOWSPREAD: readingsOf,
  REPEATS: (given, value) => [
    ...readingsOf(given),
    bare((value as number) - 1),
    bare(studentT(0.95, (value as number) - 1)),
    bare(3),
  ],
  SECONDS: () => [amountOf(60, 's/min'), bare(0)],
  DOSE: () => [amountOf(60, 's/min')],
  NEED: ({ plants, dose, dose_unit }) => {
    const doses = cellsIn(dose!);
    const total = sum(cellsIn(plants!).map((count, index) => count * doses[index]!));
    return [bare(doses.length), amountOf(total, text(dose_unit!))];
  },
  ELEMENT: ({ from, to }) => [1, convertShare(1, text(from!), text(to!))!].map(inUnit('%')),
  MEASURE: nearestStep,
  MEASURABLE: ({ amount, unit }, value) => [
    amountOf(value as number, text(unit!)),
    offBy(amount as number, value as number),
  ],
  HOWMUCH: ({ unit }, value) => {
    // The answer is told once more, measure by measure and as a whole.
    const told = figuresOf(String(value)).map(({ amount }) => amount);
    const last = String(value).split(/[,:] /).at(-1)!.replace(' of that', '');
    return [...told, ...(told.length > 0 ? [sideOf(last).comesTo!] : []), ...stockOf(unit!)];
  },
  MEASURED: ({ amount, unit }, value) => {
    const found = amountOf(value as number, text(unit!), 1e-6 * (value as number));
    const stock = stockOf(unit!);
    const [product, ...waters] = stock;
    // The part in which so much product is: the answer × water ÷ product.
    const parts = waters.map(({ value: water, powers, off }) => {
      const part = (found.value * water) / product!.value;
      return { value: part, off: 1e-6 * part + off, powers };
    });
    return [found, offBy(amount as number, value as number), ...stock, ...parts];
  },
  HOWLONG: ({ minutes, step }) => {
    const by = (step as number | null) || 5;
    const steps = Math.round((minutes as number) / by);
    // Words are of whole minutes.
    return [amountOf(minutes === 0 ? 0 : Math.max(1, steps) * by, 'min', 0.5001)];
  },
  ROWOF: ({ names }) => [bare((Array.isArray(names) ? names : [[names]]).flat().length)],
  FINGERPRINT: ({ cells }) => {
    const all = (Array.isArray(cells) ? cells : [[cells]]).flat();
    return [bare(all.filter((cell) => cell !== '' && cell !== 0).length)];
  },
};

/** What is known before the first step: may a figure be this? */
type Known = (figure: Figure) => boolean;

const knownFrom = (working: Working, given: Given): Known[] => {
  const units = Object.values(given).filter((raw): raw is string => typeof raw === 'string');
  const named = units.flatMap((unit) => [unit.trim(), ...unit.trim().split(/\/(?:[\d.]+ )?/)]);
  const tokens = [...named, ...(named.includes('cup') ? ['cups'] : []), ''];
  const number =
    (value: number, allowed: readonly string[]): Known =>
    (figure) =>
      allowed.includes(figure.unit) && agreeInNumber(amountOf(value), amountOf(figure.number));
  const answer = Array.isArray(working.value) ? working.value.flat() : [working.value];
  const left = working.arguments
    .filter(({ given: said }) => said.startsWith('left out'))
    .flatMap(({ given: said }) => figuresOf(said));
  return [
    ...Object.entries(given).flatMap(([name, raw]) => {
      const allowed = OWN_UNITS[name] ?? tokens;
      return numbersIn(raw).map((value) => number(value, allowed));
    }),
    // "oz/100 gal" is for each 100 gal, "mL/L" for each 1 L.
    ...units.flatMap((unit) => {
      const per = /\/([\d.]*)/.exec(unit)?.[1];
      return per === undefined ? [] : [number(per === '' ? 1 : Number(per), tokens)];
    }),
    ...left.map(({ number: value, unit }) => number(value, [unit, ...tokens, 'min'])),
    ...answer
      .filter((cell): cell is number => typeof cell === 'number')
      .map((value) => number(value, [...tokens, '%', 's', 'min', 'mg', 'mg/L'])),
    ...(ALSO[working.name]?.(given, working.value) ?? []).map(
      (amount): Known =>
        (figure) =>
          agree(figure.amount, amount),
    ),
  ];
};

const SOURCES = {
  metric: undefined,
  none: undefined,
  US: 'NIST Handbook 44, Appendix C',
  imperial: 'UK Units of Measurement Regulations',
};

/** Where a change of unit says that its measures come from: metric ones need no source. */
const sourceFor = (sides: readonly Side[]): string | undefined => {
  const [from, to] = sides.map(({ figures }) => figures[0]!.unit);
  if (
    sides.length !== 2 ||
    !sides.every(({ single, worded }) => single && !worded) ||
    from === '' ||
    from === to
  )
    return undefined;
  const whose = [whoseMeasure(from!), whoseMeasure(to!)];
  return SOURCES[whose.includes('imperial') ? 'imperial' : whose.includes('US') ? 'US' : 'metric'];
};

/** A rate for each 100 gal is told as so much in 1 gal, times 100; a price by the measure, in words. */
const asEquation = (step: string): string =>
  step
    .replace(/ × ([\d.]+)(?= = \S+ [^/=]+\/\1 )/, '')
    .replace(/^(.+); for each (.+): (.+)$/, '$1 = $3 ÷ 1 $2');

const sidesAgree = (a: Side, b: Side): boolean => {
  if (a.comesTo === undefined || b.comesTo === undefined) return true;
  if (a.bare === b.bare || agree(a.comesTo, b.comesTo)) return agree(a.comesTo, b.comesTo);
  const [plain, other] = a.bare ? [a, b] : [b, a];
  return other!.single && agreeInNumber(plain!.comesTo!, amountOf(other!.figures[0]!.number));
};

const follow = (working: Working, args: readonly RawArgument[]): void => {
  const given = Object.fromEntries(working.arguments.map(({ name }, index) => [name, args[index] ?? null]));
  const known = knownFrom(working, given);
  const expectKnown = (figures: readonly Figure[], said: string): void => {
    for (const figure of figures) {
      const found = known.some((is) => is(figure));
      expect(found, `${figure.text} comes from nowhere in: ${said}`).toBe(true);
    }
  };
  const learn = (figures: readonly Figure[]): void => {
    known.push(
      ...figures.map(
        ({ amount }): Known =>
          (figure) =>
            agree(figure.amount, amount),
      ),
    );
    known.push(
      ...figures.map(
        ({ number }): Known =>
          (figure) =>
            figure.unit === '' && agreeInNumber(amountOf(number), figure.amount),
      ),
    );
  };
  expect(working.steps.length).toBeGreaterThan(0);
  for (const [index, { text: said, source }] of working.steps.entries()) {
    const [, exact, way, whole] = /([\d.e+-]+), rounded (up|down): ([\d.e+-]+)$/.exec(said) ?? [];
    if (whole !== undefined) {
      const by = (Number(whole) - Number(exact)) * (way === 'up' ? 1 : -1);
      // From 100,000 on the exact figure is told whole, and one that arithmetic leaves beside a whole counts as it.
      const least = Number(exact) < 1e5 ? 0 : -1 - 1e-8 * Number(exact);
      const fits = by >= least && by <= 1 + 1e-8 * Number(exact);
      expect(fits && whole !== exact, said).toBe(true);
    }
    let expected: string | undefined;
    for (const part of partsOf(asEquation(said))) {
      const sides = part.map(sideOf);
      const last = sides.at(-1)!;
      const stated = sides.length === 1 || (sides.length === 2 && sides.every(({ worded }) => worded));
      if (stated) {
        const figures = sides.flatMap((side) => [...side.figures, ...side.inWords]);
        // "3 1/2 cups 3 tbsp" is one amount.
        const whole = sides.length === 1 && figures.length > 1 && !last.worded ? last.comesTo : undefined;
        expectKnown(whole ? [{ text: part[0]!, number: NaN, unit: '', amount: whole }] : figures, said);
        learn(figures);
        continue;
      }
      for (const side of sides.slice(0, -1)) expectKnown([...side.figures, ...side.inWords], said);
      expectKnown(last.inWords, said);
      if (sides.every((side) => side === last || side.comesTo === undefined)) expectKnown(last.figures, said);
      for (const side of sides.slice(0, -1)) {
        expect(sidesAgree(side, last), `${side.text} is not ${last.text} in: ${said}`).toBe(true);
      }
      const isMeasure = working.name === 'MEASURE';
      const plainly = sides.every(({ single }) => single) && !isMeasure;
      if (plainly) expect(sides[0]!.text, 'a step that says nothing').not.toBe(last.text);
      expected ??= sourceFor(sides);
      learn(sides.flatMap(({ figures }) => figures));
    }
    const words = working.name === 'MEASURE' && index === working.steps.length - 1;
    expect(source, said).toBe(words ? undefined : expected);
  }
};

const told = (name: string, args: readonly RawArgument[]): Working | undefined => {
  const working = explain(name, args);
  return 'steps' in working ? working : undefined;
};

describe.each(catalogue.map((entry) => [entry.name, entry] as const))('the working of %s', (name, entry) => {
  test.each(entry.examples.map(({ args }) => [args] as const))('can be followed for %j', (args) => {
    follow(told(name, args)!, args);
  });

  test('can be followed figure by figure, with its units and sources, in random calls', () => {
    let answered = 0;
    fc.assert(
      fc.property(callsOf(entry, fitting), (args) => {
        const working = told(name, args);
        if (working === undefined) return;
        answered += 1;
        expect(working.source).toBe(entry.source);
        follow(working, args);
      }),
      { numRuns: 400 },
    );
    expect(answered).toBeGreaterThan(3);
  });
});

import fc from 'fast-check';

import type { System } from '../../../addin/core';
import { type SheetWishes } from '../../../addin/workbook/tables/layOut';
import { amountOf, rateInLitre } from './printedMeasure';

/** A garden to make a card of, and what the user says of the round. */
export interface MadeGarden {
  readonly wishes: SheetWishes;
  readonly round: { readonly start: number; readonly style: 'full' | 'equal'; readonly reason: string };
}

const MEASURES = ['US', 'metric', 'imperial'] as const;
const VOLUME: Readonly<Record<System, string>> = { US: 'gal', metric: 'L', imperial: 'imp gal' };
const LITRES: Readonly<Record<System, number>> = { US: 3.785411784, metric: 1, imperial: 4.54609 };
const WEIGHT: Readonly<Record<System, string>> = { US: 'lb', metric: 'kg', imperial: 'lb' };
export const RATE_UNITS: Readonly<Record<System, readonly string[]>> = {
  US: ['tbsp/gal', 'tsp/gal', 'fl oz/gal', 'cup/100 gal', 'oz/gal', 'oz/100 gal', 'lb/100 gal'],
  metric: ['mL/L', 'mL/10 L', 'L/1000 L', 'g/L', 'g/10 L', 'g/100 L', 'kg/1000 L'],
  imperial: [
    'imp fl oz/imp gal',
    'mL/imp gal',
    'imp pt/100 imp gal',
    'oz/imp gal',
    'g/imp gal',
    'oz/100 imp gal',
  ],
};

const NAMES = [
  'Bloom powder',
  'Fish & kelp',
  'Iron "chelate"',
  'Tonic, mild',
  'Nº 5 <strong>',
  'Feed *',
  'Salts ~ fine?',
  '=Sum of all',
  'Él abono',
];
const BEDS = ['Drive', 'Terrace', 'North fence', '7', 'Gate "A"', 'Pots & tubs', 'Pergola'];
const ODD_BEDS = ['Bed *', 'Bed ?', '<5', ' Arch '];
const SIZES = ['Large bush', 'Bush', 'Potted miniature', 'Climber'];

/** To four figures, as people write. */
const plainly = (value: number): number => Number(value.toPrecision(4));
/** Evenly between two numbers; a wish for a number next to 0 is no garden's. */
const from = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1000 }).map((share) => plainly(least + ((most - least) * share) / 1000));
/** As often small as large. */
const magnitude = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1000 }).map((share) => plainly(least * (most / least) ** (share / 1000)));
const maybe = <T>(arbitrary: fc.Arbitrary<T>, often = 2) =>
  fc.option(arbitrary, { nil: undefined, freq: often });
const some = fc.constantFrom;

const kindOf = (unit: string) => rateInLitre(1, unit)!.kind;
/** So many g or mL in a litre, in a unit of rate. */
const inUnit = (perLitre: number, unit: string) => plainly(perLitre / rateInLitre(1, unit)!.amount);

const product = (measures: System, name: string) =>
  fc
    .record({
      form: some('powder' as const, 'liquid' as const),
      unit: some(...RATE_UNITS[measures]),
      strength: fc.oneof(
        { weight: 6, arbitrary: magnitude(0.3, 12) },
        { weight: 1, arbitrary: magnitude(1e-4, 0.01) },
      ),
      label: fc.oneof(
        { weight: 1, arbitrary: fc.constant(undefined) },
        {
          weight: 5,
          arbitrary: fc.record({
            unit: some(...RATE_UNITS[measures]),
            times: fc.oneof(
              { weight: 4, arbitrary: from(1, 4) },
              { weight: 2, arbitrary: fc.constant(1) },
              { weight: 1, arbitrary: from(0.4, 0.95) },
            ),
          }),
        },
      ),
      density: maybe(from(0.4, 1.6), 4),
      solubility: maybe(magnitude(20, 900), 3),
      N: maybe(from(0, 30)),
      Fe: maybe(from(0, 12)),
      pack: maybe(fc.record({ price: from(0, 90), size: from(0.5, 25), mass: fc.boolean() }), 3),
    })
    .map(({ form, unit, strength, label, density, solubility, pack, N, Fe }) => {
      const across = label !== undefined && kindOf(label.unit) !== kindOf(unit);
      const dense = density ?? (across ? 0.9 : undefined);
      const told = across ? (kindOf(unit) === 'mass' ? strength / dense! : strength * dense!) : strength;
      const rate = inUnit(strength, unit);
      // Equal rates are typed alike.
      const same = label?.times === 1 && label.unit === unit;
      return {
        mix: { product: name, rate, rateUnit: unit },
        product: {
          name,
          form,
          ...(dense === undefined ? {} : { density: dense }),
          ...(N === undefined ? {} : { N }),
          ...(Fe === undefined ? {} : { Fe }),
          ...(label === undefined
            ? {}
            : {
                greatestRate: same ? rate : inUnit(told * label.times, label.unit),
                greatestRateUnit: label.unit,
              }),
          ...(solubility === undefined || form === 'liquid' ? {} : { solubility }),
          ...(pack === undefined
            ? {}
            : {
                price: pack.price,
                pack: pack.size,
                packUnit: pack.mass ? WEIGHT[measures] : VOLUME[measures],
              }),
        },
      };
    });

const mixOf = (measures: System) =>
  fc
    .record({
      many: fc.oneof(
        { weight: 1, arbitrary: fc.constant(0) },
        { weight: 8, arbitrary: some(1, 1, 2, 2, 3, 5) },
      ),
      names: fc.shuffledSubarray(NAMES, { minLength: 6 }),
    })
    .chain(({ many, names }) =>
      fc.record({
        used: fc.tuple(...names.slice(0, many).map((name) => product(measures, name))),
        spare: product(measures, names[many]!),
        mixName: some('', 'Bloom feed', '=strange'),
      }),
    );

const rigOf = (measures: System) =>
  fc
    .record({
      barrel: from(60, 420),
      heel: maybe(from(0, 6)),
      fillLine: maybe(from(0.8, 1)),
      flow: from(5, 20),
      timed: fc.boolean(),
      tapFlow: from(8, 40),
      hose: fc.oneof(fc.constant(undefined), from(0, 8)),
      between: maybe(from(0, 12)),
      open: some(true, false, undefined),
      countStep: maybe(some(1, 1, 2, 5, 0.5)),
      weight: maybe(from(4, 30)),
      premix: maybe(from(0, 20)),
      move: maybe(from(0, 15)),
    })
    .map((rig) => {
      const volume = (litres: number | undefined) => ({
        value: litres === undefined ? undefined : plainly(litres / LITRES[measures]),
        unit: VOLUME[measures],
      });
      const flow = (litres: number) => ({
        value: plainly(litres / LITRES[measures]),
        unit: `${VOLUME[measures]}/min`,
      });
      return {
        timed: rig.timed ? [58, 61, 60].map((one) => plainly((one * 10) / rig.flow)) : [],
        form: {
          barrel: volume(rig.barrel),
          heel: volume(rig.heel),
          fillLine: { value: rig.fillLine },
          ...(rig.timed ? {} : { flow: flow(rig.flow) }),
          bucket: volume(10),
          tapFlow: flow(rig.tapFlow),
          ...(rig.hose === undefined ? {} : { hoseHolds: volume(rig.hose) }),
          betweenPlants: { value: rig.between },
          wandStaysOpen: { value: rig.open },
          countStep: { value: rig.countStep },
          emptyWeight: { value: rig.weight, unit: WEIGHT[measures] },
          premixTime: { value: rig.premix },
          moveTime: { value: rig.move },
        },
      };
    });

const plantsOf = fc
  .record({
    odd: fc.oneof(
      { weight: 6, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.subarray(ODD_BEDS, { minLength: 1 }) },
    ),
    plain: fc.shuffledSubarray(BEDS, { minLength: 1, maxLength: 5 }),
    sizes: fc.shuffledSubarray(SIZES, { minLength: 1 }),
    stations: fc.shuffledSubarray(['Front', 'Back', 'Side door', '2'], { minLength: 1 }),
  })
  .chain(({ odd, plain, sizes, stations }) => {
    const beds = [...plain, ...odd];
    const row = fc.record({
      plant: some('Ember Lantern', 'Paper Moth', 'Tall Story', ''),
      bed: some(...beds),
      sizeClass: some(...sizes),
      howMany: fc.oneof(
        { weight: 9, arbitrary: fc.integer({ min: 1, max: 40 }) },
        { weight: 1, arbitrary: fc.constant(0) },
      ),
    });
    return fc.record({
      plants: fc.array(row, { minLength: 2, maxLength: 9 }),
      beds: fc.tuple(
        ...beds.map((bed, index) =>
          fc.record({
            walk: fc.oneof(
              { weight: 4, arbitrary: fc.constant(index + 1) },
              { weight: 1, arbitrary: fc.constant(undefined) },
            ),
            bed: fc.constant(bed),
            station: fc.oneof(
              { weight: 4, arbitrary: some(...stations) },
              { weight: 1, arbitrary: fc.constant('') },
            ),
          }),
        ),
      ),
      known: fc.boolean(),
      doses: fc.tuple(
        ...SIZES.map((sizeClass) => fc.record({ sizeClass: fc.constant(sizeClass), litres: from(0.9, 4) })),
      ),
    });
  });

const WHY = 'The adviser said so';

/** A garden of one system of measures, its mix and rig, and a round. Most can be planned. */
export const gardens: fc.Arbitrary<MadeGarden> = some(...MEASURES).chain((measures) =>
  fc
    .record({
      plants: plantsOf,
      mix: mixOf(measures),
      rig: rigOf(measures),
      start: fc.oneof(fc.integer({ min: 0, max: 287 }), fc.constant(286)).map((five) => five * 300),
      style: some('full' as const, 'equal' as const),
      unit: some('own', 'own', 'small'),
    })
    .map(({ plants, mix, rig, start, style, unit }): MadeGarden => {
      const small = measures === 'US' ? 'qt' : measures === 'metric' ? 'mL' : 'imp pt';
      const dosed = unit === 'own' ? VOLUME[measures] : small;
      const litres = amountOf(`1 ${dosed}`)!.amount / 1000;
      return {
        round: { start, style, reason: WHY },
        wishes: {
          measures,
          tables: {
            plants: { add: plants.plants },
            beds: plants.known ? { add: plants.beds } : {},
            doses: {
              heads: { unit: dosed },
              set: plants.doses.map(({ sizeClass, litres: dose }) => ({
                sizeClass,
                dose: plainly(dose / litres),
              })),
            },
            timedBuckets: { add: rig.timed.map((seconds) => ({ seconds })) },
            products: { add: [...mix.used, mix.spare].map((one) => one.product) },
            mix: { heads: { name: mix.mixName }, add: mix.used.map((one) => one.mix) },
          },
          forms: { rig: rig.form },
        },
      };
    }),
);

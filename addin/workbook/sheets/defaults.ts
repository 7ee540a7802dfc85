import type { SizeClass, System } from '../../core';

import type { Measured } from '../garden';

/**
 * What a new garden starts with, all of it shown on the sheets and the user's to change. Nothing here is published:
 * it is common practice among growers who feed roses from a barrel.
 */

type BySystem<T> = Readonly<Record<System, T>>;

export const DOSE_UNIT: BySystem<string> = { US: 'gal', metric: 'L', imperial: 'imp gal' };

/**
 * Finished solution for one plant. Common practice; published hobby figures run from 1/2 gal for a miniature and
 * 1 gal for a hybrid tea (Winston-Salem Rose Society, 1999) to about 2 gal.
 */
export const DOSES: BySystem<Readonly<Record<SizeClass, number>>> = {
  US: {
    'Large bush': 0.75,
    Bush: 0.6,
    'Small bush': 0.4,
    Miniature: 0.3,
    'Potted bush': 0.5,
    'Potted miniature': 0.25,
    Climber: 1,
    'Tree rose': 0.75,
  },
  metric: {
    'Large bush': 3,
    Bush: 2.25,
    'Small bush': 1.5,
    Miniature: 1.25,
    'Potted bush': 2,
    'Potted miniature': 1,
    Climber: 4,
    'Tree rose': 3,
  },
  imperial: {
    'Large bush': 0.65,
    Bush: 0.5,
    'Small bush': 0.35,
    Miniature: 0.25,
    'Potted bush': 0.4,
    'Potted miniature': 0.2,
    Climber: 0.9,
    'Tree rose': 0.65,
  },
};

const measured = (value: number, unit: string): Measured => ({ value, unit });

/** Lines of the rig that people can be given a start for; the barrel and the flow are always asked. */
export const RIG: BySystem<
  Readonly<Record<'heel' | 'hoseLength' | 'hoseBore' | 'tapFlow' | 'emptyWeight' | 'bucket', Measured>>
> = {
  US: {
    heel: measured(1, 'gal'),
    hoseLength: measured(50, 'ft'),
    hoseBore: measured(0.625, 'in'),
    tapFlow: measured(5, 'gal/min'),
    emptyWeight: measured(25, 'lb'),
    bucket: measured(2, 'gal'),
  },
  metric: {
    heel: measured(4, 'L'),
    hoseLength: measured(15, 'm'),
    hoseBore: measured(16, 'mm'),
    tapFlow: measured(18, 'L/min'),
    emptyWeight: measured(11, 'kg'),
    bucket: measured(10, 'L'),
  },
  imperial: {
    heel: measured(1, 'imp gal'),
    hoseLength: measured(50, 'ft'),
    hoseBore: measured(0.625, 'in'),
    tapFlow: measured(4, 'imp gal/min'),
    emptyWeight: measured(25, 'lb'),
    bucket: measured(2, 'imp gal'),
  },
};

export const BARREL_UNIT = DOSE_UNIT;
export const FLOW_UNIT: BySystem<string> = { US: 'gal/min', metric: 'L/min', imperial: 'imp gal/min' };

/** The same in every system of measures. */
export const PACE = {
  fillLine: 1,
  betweenPlants: 4,
  countStep: 1,
  premixMinutes: 10,
  moveMinutes: 5,
} as const;

export const CURRENCY: BySystem<string> = { US: '$', metric: '€', imperial: '£' };

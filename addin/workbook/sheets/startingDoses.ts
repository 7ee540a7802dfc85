import type { SizeClass, System } from '../../core';

/**
 * Finished solution for one plant in a new garden, in the usual unit of doses; the user's to change. Common practice;
 * published hobby figures run from 1/2 gal for a miniature and 1 gal for a hybrid tea (Winston-Salem Rose Society,
 * 1999) to about 2 gal.
 */
export const DOSES: Readonly<Record<System, Readonly<Record<SizeClass, number>>>> = {
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

import type { Density } from '../../addin/core';
import type { Parameter } from '../parameters';
import { number, optional } from '../parameters';

/** The density of a product as it is measured; asked for, never guessed. */
export const density = optional(
  number('Grams that one millilitre of the product weighs, as measured; needed between volume and mass', {
    above: 0,
  }) as Parameter<Density>,
  'not known',
  undefined,
);

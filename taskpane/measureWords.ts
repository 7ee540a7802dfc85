import type { CardMeasure } from '../addin/core';

import { percentWords } from './quantityWords';

/** An error of half a per cent or less is nothing that a kitchen measure can tell. */
const TELLING = 0.005;

/**
 * A measure in words with what is worth knowing of it.
 *
 * @example '1 cup 2 tbsp, 0.8 % over', '100 mL, rounded down for the label'
 */
export const measureInWords = ({ words, error, rounding, tooLittle }: CardMeasure): string =>
  [
    words,
    tooLittle || Math.abs(error) < TELLING
      ? ''
      : `${percentWords(Math.abs(error))} ${error > 0 ? 'over' : 'under'}`,
    rounding === 'down' ? 'rounded down for the label' : '',
  ]
    .filter((part) => part !== '')
    .join(', ');

import type { Grams, Litres, LitresPerMinute, Metres, Unit } from '../addin/core';
import { grams, litres, litresPerMinute, metres, toCanonical } from '../addin/core';

// A value and its unit as the core's quantity. The unit's family is what the parameter declares.

export const inLitres = (value: number, unit: Unit): Litres => litres(toCanonical(value, unit));
export const inGrams = (value: number, unit: Unit): Grams => grams(toCanonical(value, unit));
export const inMetres = (value: number, unit: Unit): Metres => metres(toCanonical(value, unit));
export const inLitresPerMinute = (value: number, unit: Unit): LitresPerMinute =>
  litresPerMinute(toCanonical(value, unit));

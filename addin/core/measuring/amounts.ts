import type { Amount, Density, Grams, Litres } from './quantity';
import { grams, litres, ofMass, ofVolume } from './quantity';
import type { Unit } from './units';
import { fromCanonical, toCanonical } from './units';

const ML_PER_L = 1000;

/**
 * An amount of product in any measure of volume or mass.
 *
 * Source: as `toCanonical`.
 *
 * @param value ≥ 0
 * @throws RangeError for a unit of another family
 * @example toAmount(2, findUnit('kg')!) // 2000 g
 */
export const toAmount = (value: number, unit: Unit): Amount => {
  if (unit.family === 'volume') return ofVolume(litres(toCanonical(value, unit)));
  if (unit.family === 'mass') return ofMass(grams(toCanonical(value, unit)));
  throw new RangeError(`${unit.token} measures neither volume nor mass.`);
};

/**
 * Mass of an amount.
 *
 * Definition: volume × density.
 *
 * @param density of the product as measured, g/mL, > 0; needed for a volume, never guessed
 * @returns undefined where the density is needed and missing
 * @example massOf(ofVolume(litres(0.5)), density(1.2)) // 600 g
 */
export const massOf = (amount: Amount, density?: Density): Grams | undefined => {
  if (amount.kind === 'mass') return amount.mass;
  return density === undefined ? undefined : grams(amount.volume * ML_PER_L * density);
};

/**
 * Volume of an amount.
 *
 * Definition: mass ÷ density.
 *
 * @param density of the product as measured, g/mL, > 0; needed for a mass, never guessed
 * @returns undefined where the density is needed and missing
 * @example volumeOf(ofMass(grams(600)), density(1.2)) // 0.5 L
 */
export const volumeOf = (amount: Amount, density?: Density): Litres | undefined => {
  if (amount.kind === 'volume') return amount.volume;
  return density === undefined ? undefined : litres(amount.mass / (ML_PER_L * density));
};

/**
 * An amount in a measure of volume or mass.
 *
 * Source: as `toCanonical`; mass = volume × density by definition.
 *
 * @param density of the product as measured, g/mL, > 0; needed from volume to mass or back
 * @returns undefined where the density is needed and missing
 * @throws RangeError for a unit of another family
 * @example amountIn(ofMass(grams(2000)), findUnit('kg')!) // 2
 */
export const amountIn = (amount: Amount, unit: Unit, density?: Density): number | undefined => {
  if (unit.family !== 'volume' && unit.family !== 'mass') {
    throw new RangeError(`${unit.token} measures neither volume nor mass.`);
  }
  const canonical = unit.family === 'volume' ? volumeOf(amount, density) : massOf(amount, density);
  return canonical === undefined ? undefined : fromCanonical(canonical, unit);
};

/**
 * An amount so many times over.
 *
 * Definition: amount × times.
 *
 * @param times ≥ 0
 * @example scaleAmount(ofMass(grams(5)), 3) // 15 g
 */
export const scaleAmount = (amount: Amount, times: number): Amount =>
  amount.kind === 'volume' ? ofVolume(litres(amount.volume * times)) : ofMass(grams(amount.mass * times));

/**
 * Two amounts of one product together.
 *
 * Definition: their sum, L or g.
 *
 * @throws RangeError where one is a volume and the other a mass: bring them to one kind by the density first
 * @example addAmounts(ofMass(grams(5)), ofMass(grams(7))) // 12 g
 */
export const addAmounts = (a: Amount, b: Amount): Amount => {
  if (a.kind === 'volume' && b.kind === 'volume') return ofVolume(litres(a.volume + b.volume));
  if (a.kind === 'mass' && b.kind === 'mass') return ofMass(grams(a.mass + b.mass));
  throw new RangeError('A volume and a mass cannot be added.');
};

/**
 * How many times `whole` goes into `amount`.
 *
 * Definition: amount ÷ whole.
 *
 * @param whole > 0
 * @param density of the product as measured, g/mL, > 0; needed where one is a volume and the other a mass
 * @returns undefined where the density is needed and missing
 * @example shareOf(ofMass(grams(50)), ofMass(grams(200))) // 0.25
 */
export const shareOf = (amount: Amount, whole: Amount, density?: Density): number | undefined => {
  if (whole.kind === 'volume') {
    const volume = volumeOf(amount, density);
    return volume === undefined ? undefined : volume / whole.volume;
  }
  const mass = massOf(amount, density);
  return mass === undefined ? undefined : mass / whole.mass;
};

declare const dimension: unique symbol;

/**
 * A number that remembers what it measures, so that litres cannot be passed where grams belong. What is measured in
 * units of a family has the family's name, and stands in its canonical unit.
 */
export type Quantity<Dimension extends string> = number & { readonly [dimension]: Dimension };

export type Litres = Quantity<'volume'>;
export type Grams = Quantity<'mass'>;
export type Seconds = Quantity<'second'>;
export type LitresPerMinute = Quantity<'flow'>;
export type Metres = Quantity<'length'>;
/** Mass of a nutrient or product in a litre of finished solution; 1 mg/L of a dilute feed is 1 ppm. */
export type MilligramsPerLitre = Quantity<'milligram per litre'>;
/** Grams per millilitre of a product as it is measured; the same number as kilograms per litre. */
export type Density = Quantity<'gram per millilitre'>;

// Each gives a number its unit; a caller has checked the number.

/** Litres; any number. */
export const litres = (n: number): Litres => n as Litres;
/** Grams; any number. */
export const grams = (n: number): Grams => n as Grams;
/** Seconds; any number. */
export const seconds = (n: number): Seconds => n as Seconds;
/** Litres per minute; any number. */
export const litresPerMinute = (n: number): LitresPerMinute => n as LitresPerMinute;
/** Metres; any number. */
export const metres = (n: number): Metres => n as Metres;
/** Milligrams per litre; any number. */
export const milligramsPerLitre = (n: number): MilligramsPerLitre => n as MilligramsPerLitre;
/** Grams per millilitre; any number. */
export const density = (gramsPerMillilitre: number): Density => gramsPerMillilitre as Density;

/** What is measured into a barrel: by volume or by mass. */
export type Amount =
  { readonly kind: 'volume'; readonly volume: Litres } | { readonly kind: 'mass'; readonly mass: Grams };

/** An amount measured by volume, L. */
export const ofVolume = (volume: Litres): Amount => ({ kind: 'volume', volume });
/** An amount measured by mass, g. */
export const ofMass = (mass: Grams): Amount => ({ kind: 'mass', mass });

/** Product for each litre of finished solution. */
export type Rate = Amount;

import { phrases } from './phrases';

/** Growers' words for a plant in a pot, as `wordsOf` leaves them. */
export const POT_WORDS: readonly string[] = phrases(`
    pot, pots, potted, in pot, in pots, in a pot, container, containers, containerised,
    containerized, cont, planter, planters, tub, tubs, barrel, half barrel, whiskey barrel, bucket,
    basket, hanging basket, urn, trough, window box, nursery pot, topf, topfe, im topf, kubel, im
    kubel, blumentopf, en pot, en pots, bac, bacs, en bac, jardiniere, maceta, macetas, en maceta,
    tiesto, tiestos, jardinera, kuip, kuipen, bak, bakken, bloempot, vaso, vasi, in vaso, fioriera,
    getopft
  `);

/** Growers' words for a plant in the ground. */
export const GROUND_WORDS: readonly string[] = phrases(`
    ground, in ground, in the ground, inground, bed, beds, border, garden, garden bed, soil,
    planted, planted out, open ground, raised bed, boden, erde, im boden, freiland, im freiland,
    beet, im beet, ausgepflanzt, terre, pleine terre, en terre, en pleine terre, sol, massif, suelo,
    tierra, en tierra, en suelo, grond, volle grond, in de grond, terra, piena terra, in terra, in
    piena terra, aiuola
  `);

/** Single letters, in a pot column only. */
export const POT_LETTERS: Readonly<Record<string, boolean>> = {
  p: true,
  c: true,
  t: true,
  g: false,
  b: false,
};

export const YES_WORDS: readonly string[] = [
  'yes',
  'y',
  'x',
  'true',
  'ja',
  'j',
  'oui',
  'o',
  'si',
  's',
  '✓',
  '✔',
  '√',
];
export const NO_WORDS: readonly string[] = ['no', 'n', 'none', 'false', 'nein', 'non', 'nee', '-', '–', '—'];

/** Words of measure beside a pot: '5 gal', '30 cm'. */
export const POT_MEASURES: readonly string[] = phrases(`
    gal, gals, gallon, gallons, g, l, lt, ltr, liter, liters, litre, litres, qt, qts, quart, quarts,
    in, inch, inches, cm
  `);

import { phrases } from './phrases';

const NUMBERS: readonly (readonly [number, string])[] = [
  [1, 'a, one, single, eins, ein, eine, un, une, uno, una, een'],
  [2, 'two, pair, couple, zwei, deux, dos, twee, due'],
  [3, 'three, drei, trois, tres, drie, tre'],
  [4, 'four, vier, quatre, cuatro, quattro'],
  [5, 'five, funf, cinq, cinco, vijf, cinque'],
  [6, 'six, sechs, seis, zes, sei'],
  [7, 'seven, sieben, sept, siete, zeven, sette'],
  [8, 'eight, acht, huit, ocho, otto'],
  [9, 'nine, neun, neuf, nueve, negen, nove'],
  [10, 'ten, zehn, dix, diez, tien, dieci'],
  [11, 'eleven, elf, onze, once, undici'],
  [12, 'twelve, dozen, zwolf, douze, douzaine, doce, docena, twaalf, dozijn, dodici, dozzina'],
];
/** Numbers in words, as `wordsOf` leaves them. */
export const NUMBER_WORDS: ReadonlyMap<string, number> = new Map(
  NUMBERS.flatMap(([number, words]) => phrases(words).map((word) => [word, number] as const)),
);

/** Words beside a number of plants that say nothing more. */
export const PIECE_WORDS: readonly string[] = phrases(`
    plant, plants, rose, roses, bush, bushes, pc, pcs, piece, pieces, ea, each, no, nos, of, off,
    total, stk, st, stuck, pflanze, pflanzen, rosen, plante, plantes, pied, pieds, rosier, rosiers,
    planta, plantas, rosal, rosales, ud, uds, stuks, stuk, planten, rozen, pianta, piante, pezzi, pz
  `);

/** Words before a number that is not certain. */
export const ABOUT_WORDS: readonly string[] = phrases(`
    about, approx, approximately, around, roughly, ca, circa, c, etwa, ungefahr, environ, env,
    aprox, unos, ongeveer, maybe
  `);

/** Words that begin or end a row of totals. */
export const TOTAL_WORDS: readonly string[] = phrases(`
    total, totals, subtotal, subtotals, sum, summe, gesamt, insgesamt, zwischensumme, gesamtsumme,
    somme, totaal, subtotaal, totale, subtotale, totali, suma, totaux
  `);
/** Words beside them: 'Grand total of roses'. */
export const TOTAL_COMPANIONS: readonly string[] = phrases(`
    grand, sub, of, all, in, the, for, number, general, generale, overall, so, far, anzahl, de, der,
    des, van, di, garden, count, qty
  `);

/** Marks that mean 'as above'. */
export const DITTO_WORDS: readonly string[] = [
  '"',
  "''",
  '〃',
  '″',
  '”',
  '“',
  'ditto',
  'do',
  'do.',
  'idem',
  'id.',
  'dito',
  'dto',
  'dto.',
  'same',
  'same as above',
  '^',
  '↑',
];

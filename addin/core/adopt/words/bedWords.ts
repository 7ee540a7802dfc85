import { phrases } from './phrases';

/**
 * Words that end or begin the name of a bed ('Front bed', 'Row 3'), as `wordsOf` leaves them. A line of its own
 * that holds one of them names the bed for the rows under it.
 */
export const BED_WORDS: readonly string[] = phrases(`
    bed, beds, border, borders, row, island, fence, patio, wall, terrace, driveway, drive, path,
    walk, walkway, yard, frontyard, backyard, deck, hedge, circle, strip, arch, pergola, trellis,
    greenhouse, bench, porch, plot, section, area, zone, pots, containers, side, corner, steps,
    gate, lawn, orchard, nursery, beet, beete, rabatte, reihe, terrasse, zaun, vorgarten, hochbeet,
    rosenbeet, massif, plate, bande, parterre, bordure, rang, allee, arriate, cantero, bancal,
    terraza, hilera, perk, vak, terras, rij, achtertuin, voortuin, aiuola, bordura, terrazza, fila
  `);

import { phrases } from './phrases';

/** Meanings that a heading can point to; 'other' is kept as a note under its heading, 'line' numbers the lines. */
export type HeadingMeaning =
  'plant' | 'bed' | 'class' | 'size' | 'pot' | 'count' | 'notes' | 'other' | 'line';

export interface HeadingWords {
  /** How strongly the words point to each meaning, 0 to 1; the column's content decides between several. */
  readonly means: Readonly<Partial<Record<HeadingMeaning, number>>>;
  readonly words: readonly string[];
}

/** Headings that growers write, as `wordsOf` leaves them: English, German, French, Spanish, Dutch, Italian. */
export const HEADING_WORDS: readonly HeadingWords[] = [
  {
    means: { plant: 1 },
    words: phrases(`
    variety, varieties, cultivar, rose name, name of rose, rose variety, variety name, plant name,
    cultivar name, variety cultivar, sorte, rosensorte, sortenname, variete, nom de la rose, nom de
    la variete, variedad, nombre de la rosa, variedades, ras, rosenras, rozenras, varieteit,
    cultivarnaam, varieta, nome della rosa, varietas
  `),
  },
  {
    means: { plant: 0.85 },
    words: phrases(`
    name, plant, rose, item, naam, nom, nombre, nome, pflanze, plante, planta, pianta, rosier,
    rosal, rosa, roos, bezeichnung, soort, exhibition name, registered name
  `),
  },
  {
    means: { plant: 0.7, count: 0.6 },
    words: phrases(`
    plants, roses, bushes, pflanzen, rosen, plantes, rosiers, plantas, rosas, rosales, planten,
    rozen, piante, rosai
  `),
  },
  {
    means: { bed: 1 },
    words: phrases(`
    bed, beds, bed name, name of bed, rose bed, garden bed, bed no, bed number, bed location,
    border, flower bed, flowerbed, beet, beete, rosenbeet, beetname, beet nr, rabatte, massif, plate
    bande, parterre, arriate, cantero, bancal, macizo, perk, rozenperk, vak, aiuola, bordura
  `),
  },
  {
    means: { bed: 0.9, pot: 0.3 },
    words: phrases(`
    location, loc, place, where, where planted, planted in, position, location in garden, garden
    location, standort, ort, platz, lage, wo, emplacement, lieu, endroit, ou, ubicacion, lugar,
    sitio, posicion, plaats, locatie, standplaats, plek, waar, posizione, luogo, dove
  `),
  },
  {
    means: { bed: 0.7 },
    words: phrases(`
    area, zone, section, garden, plot, row, site, spot, bereich, reihe, garten, jardin, rang, zona,
    tuin, rij, giardino, fila, settore
  `),
  },
  {
    means: { class: 1 },
    words: phrases(`
    class, rose class, classification, rose type, type of rose, class of rose, ars class,
    rosenklasse, klasse, rosengruppe, classe, classe de rosier, type de rosier, clase, clase de
    rosa, tipo de rosa, rozenklasse, classe di rosa, tipo di rosa
  `),
  },
  {
    means: { class: 0.75, pot: 0.35, size: 0.35 },
    words: phrases(`
    type, kind, typ, art, tipo, group, category, gruppe, kategorie, groupe, categorie, grupo,
    categoria, groep, gruppo, cl, habit, growth, wuchs
  `),
  },
  {
    means: { size: 1, pot: 0.3 },
    words: phrases(`
    size, plant size, bush size, size class, size of plant, size of bush, grosse, pflanzengrosse,
    taille, tamano, grootte, maat, formaat, dimensione, dimensioni, taglia, grandezza, how big,
    dimension
  `),
  },
  {
    means: { pot: 1 },
    words: phrases(`
    pot, potted, in pot, pot or ground, ground or pot, pot ground, ground pot, pot in ground, potted
    or ground, pot bed, pot or bed, container, in container, in a pot, pot size, container size, in
    ground, ground, planted in pot, pots, pot gal, container or ground, pot or in ground, topf, im
    topf, topf oder beet, topf beet, topf boden, topf oder boden, kubel, en pot, pot ou terre, pot
    terre, pot ou pleine terre, pot pleine terre, contenant, bac, maceta, en maceta, maceta o suelo,
    maceta suelo, maceta o tierra, pot of grond, pot grond, in vaso, vaso, vaso o terra, vaso terra
  `),
  },
  {
    means: { count: 1 },
    words: phrases(`
    how many, qty, qnty, quantity, quant, count, number of plants, no of plants, number of roses, no
    of roses, number of bushes, no of bushes, plant count, how many plants, how many roses, pcs,
    amount, total plants, anzahl, stuck, stk, stuckzahl, menge, wieviele, wie viele, wieviel, anz,
    nombre de rosiers, nombre de plants, nombre de pieds, nb, nbre, quantite, qte, combien,
    cantidad, cant, cuantos, cuantas, numero de plantas, unidades, aantal, stuks, hoeveel,
    hoeveelheid, quantita, qta, quanti, quante, numero di piante, pezzi
  `),
  },
  {
    means: { count: 0.6, line: 0.5 },
    words: phrases('number, no, nos, num, nr, n, numero, num plants, zahl, total, nummer'),
  },
  {
    means: { line: 1 },
    words: phrases(`
    line, line no, item no, id, index, lfd nr, pos, ref, seq, tag, tag no, label no, plant no, plant
    id, rose no
  `),
  },
  {
    means: { notes: 1 },
    words: phrases(`
    notes, note, remarks, remark, comments, comment, memo, observations, notizen, notiz, bemerkung,
    bemerkungen, anmerkung, anmerkungen, kommentar, remarque, remarques, commentaire, commentaires,
    notas, nota, observaciones, comentarios, opmerking, opmerkingen, notities, osservazioni,
    commenti
  `),
  },
  {
    means: { other: 1 },
    words: phrases(`
    year, yr, year planted, planted, date, date planted, planting date, plant date, bought, date
    bought, purchased, source, supplier, from, nursery, vendor, breeder, hybridizer, hybridiser,
    raiser, introduced, color, colour, price, cost, paid, rootstock, root, root stock, grade, own
    root, fragrance, scent, height, width, health, condition, rating, status, bloom, blooms, petals,
    awards, row no, age, sun, spray, last fed, fed, pruned, jahr, pflanzjahr, gepflanzt, datum,
    farbe, duft, hohe, zuchter, quelle, bezugsquelle, preis, unterlage, annee, annee de plantation,
    couleur, parfum, hauteur, obtenteur, prix, ano, fecha, color de flor, perfume, altura, obtentor,
    precio, jaar, plantjaar, kleur, geur, hoogte, kweker, prijs, herkomst, anno, colore, profumo,
    altezza, ibridatore, prezzo, provenienza
  `),
  },
];

/** Headings over days: numbers under them are the spreadsheet's days. */
export const DAY_WORDS: readonly string[] = phrases(`
    planted, date, date planted, planting date, plant date, bought, date bought, purchased, last
    fed, fed, pruned, gepflanzt, datum, fecha, data
  `);

import { NO_BED, NOT_KNOWN, ONE_BED, type AdoptedPlant, type AskedSize, type Inventory } from './adoption';
import { bedKey, nameKey, quoted, wordsOf } from './cellText';
import { inventoryRemarks, outcomeOf, type BedRows } from './inventoryRemarks';
import type { ListRows } from './listRows';
import type { PlantRow } from './plantRow';
import type { PlantWords } from './plantWords';
import { sameNames, severalSpellings, type SameNames } from './sameNames';
import { SIZE_CLASSES, sizeClassFor, type RoseClass, type SizeClass } from './sizeClass';

/** Characters of the notes of one plant that are kept. */
export const LONGEST_NOTES = 1000;

type SizeOrNot = SizeClass | typeof NOT_KNOWN;

/** A blank class is filled in from the other rows of the same rose, where all of them agree. */
const withClasses = (rows: readonly PlantRow[], { numbers }: SameNames): readonly PlantRow[] => {
  const classes = new Map<number, RoseClass | null>();
  rows.forEach(({ words: { rose } }, i) => {
    const before = classes.get(numbers[i]!);
    if (rose.roseClass && before !== rose.roseClass)
      classes.set(numbers[i]!, before === undefined ? rose.roseClass : null);
  });
  return rows.map((row, i) => {
    const { rose, texts } = row.words;
    const roseClass = rose.roseClass || texts.class !== '' ? undefined : classes.get(numbers[i]!);
    return roseClass
      ? { ...row, words: { ...row.words, rose: { ...rose, roseClass } }, classFromOthers: true }
      : row;
  });
};

/** What the list says about a plant whose size class it does not tell: one question for all alike. */
const question = ({ rose, texts, unknown }: PlantWords): { readonly key: string; readonly given: string } => {
  const potUnknown = unknown.includes('pot');
  const key = [texts.class, texts.size, potUnknown ? texts.pot : rose.pot ? 'pot' : '']
    .map(wordsOf)
    .join('|');
  const parts = [
    texts.class === '' ? '' : `class ${quoted(texts.class)}`,
    texts.size === '' ? '' : `size ${quoted(texts.size)}`,
    potUnknown ? `pot or ground ${quoted(texts.pot)}` : '',
  ].filter((part) => part !== '');
  const said = parts.join(', ') || 'neither class nor size';
  return { key, given: !potUnknown && rose.pot ? `${said}, in a pot` : said };
};

/** The size class of each row; what the list does not tell is asked, unless it is answered already. */
const sizesOf = (rows: readonly PlantRow[], answers: Readonly<Record<string, SizeClass>>) => {
  const asked = new Map<string, { given: string; plants: number; sourceRows: number[] }>();
  const sizes = rows.map(({ row, words, count }): SizeOrNot => {
    const told = words.unknown.includes('pot') ? undefined : sizeClassFor(words.rose);
    if (told) return told;
    const { key, given } = question(words);
    if (Object.hasOwn(answers, key)) return answers[key]!;
    const entry = asked.get(key) ?? { given, plants: 0, sourceRows: [] };
    entry.plants += count;
    entry.sourceRows.push(row);
    asked.set(key, entry);
    return NOT_KNOWN;
  });
  return { sizes, asked: [...asked].map(([key, entry]): AskedSize => ({ key, ...entry })) };
};

interface Gathered {
  readonly row: PlantRow;
  readonly plant: string;
  readonly bed: string;
  readonly sizeClass: SizeOrNot;
  count: number;
  readonly notes: string[];
  noteLength: number;
  readonly sourceRows: number[];
}

/** Keeps a note once; stops when the notes are longer than what is kept of them. */
const addNote = (plant: Gathered, note: string): void => {
  if (plant.noteLength > LONGEST_NOTES || plant.notes.includes(note)) return;
  plant.notes.push(note);
  plant.noteLength += note.length + 2;
};

const classIn = ({ words }: PlantRow): string => words.rose.roseClass ?? words.texts.class;

/** Adds up rows about the same plant; names keep the spelling that is used most. */
const gather = (
  rows: readonly PlantRow[],
  plants: SameNames,
  beds: SameNames,
  sizes: readonly SizeOrNot[],
) => {
  const kinds = sameNames(
    rows.map((row, i) => `${classIn(row)}|${sizes[i]}|${row.words.rose.pot === true}`),
    nameKey,
  );
  const places = sameNumbers(plants.numbers, beds.numbers);
  const gathered: Gathered[] = [];
  sameNumbers(places, kinds.numbers).forEach((number, i) => {
    const row = rows[i]!;
    const plant = (gathered[number] ??= {
      row,
      plant: plants.kept[plants.numbers[i]!]!,
      bed: beds.kept[beds.numbers[i]!]!,
      sizeClass: sizes[i]!,
      count: 0,
      notes: [],
      noteLength: 0,
      sourceRows: [],
    });
    plant.count += row.count;
    plant.sourceRows.push(row.row);
    if (row.words.unknown.includes('size')) addNote(plant, `Size: ${row.words.texts.size}`);
    for (const note of row.notes) addNote(plant, note);
  });
  return gathered;
};

/** Numbers pairs of numbers in the order in which they first appear. */
const sameNumbers = (a: readonly number[], b: readonly number[]): readonly number[] => {
  const known = new Map<number, number>();
  // More rows than a sheet can have, so that no two pairs meet.
  const apart = 2 ** 21;
  return a.map((number, i) => {
    const pair = number * apart + b[i]!;
    const before = known.get(pair);
    if (before !== undefined) return before;
    known.set(pair, known.size);
    return known.size - 1;
  });
};

const plantsBy = <Kind extends string>(
  plants: readonly AdoptedPlant[],
  kindOf: (plant: AdoptedPlant) => Kind,
) => {
  const sums = new Map<Kind, number>();
  for (const plant of plants) sums.set(kindOf(plant), (sums.get(kindOf(plant)) ?? 0) + plant.count);
  return sums;
};

const bedRows = ({ numbers, kept }: SameNames): BedRows[] => {
  const rows = kept.map((bed) => ({ bed, rows: 0 }));
  for (const number of numbers) rows[number]!.rows++;
  return rows;
};

/**
 * Turns rows that were read into an inventory: classes filled in from other rows of the same rose, size classes
 * told or asked, equal rows added up. It pauses between these.
 *
 * @param answers size classes by the key of what was asked
 */
export const takeInventory = function* (
  list: ListRows,
  answers: Readonly<Record<string, SizeClass>>,
  told: Pick<Inventory, 'unread' | 'sections' | 'tally'>,
): Generator<undefined, Inventory> {
  const standIn = list.plantRows.every((row) => row.bed === '') ? ONE_BED : NO_BED;
  const plantNames = list.plantRows.map((row) => row.plant);
  const bedNames = list.plantRows.map((row) => row.bed || standIn);
  const samePlants = sameNames(plantNames, nameKey);
  yield;
  const sameBeds = sameNames(bedNames, bedKey);
  yield;
  const rows = withClasses(list.plantRows, samePlants);
  const { sizes, asked } = sizesOf(rows, answers);
  yield;
  const cut: number[] = [];
  const gatheredRows = gather(rows, samePlants, sameBeds, sizes);
  yield;
  const plants = gatheredRows.map((gathered): AdoptedPlant => {
    const { row, plant, bed, sizeClass, count, sourceRows } = gathered;
    const notes = gathered.notes.join('; ');
    const tooLong = notes.length > LONGEST_NOTES;
    if (tooLong) cut.push(row.row);
    return {
      plant,
      bed,
      roseClass: classIn(row),
      sizeClass,
      pot: row.words.rose.pot === true,
      count,
      notes: tooLong ? `${notes.slice(0, LONGEST_NOTES - 1)}…` : notes,
      sourceRows,
    };
  });
  yield;
  const bySize = plantsBy(plants, (plant) => plant.sizeClass);
  return {
    ...told,
    plants,
    beds: [...plantsBy(plants, (plant) => plant.bed)].map(([bed, count]) => ({ bed, plants: count })),
    sizeClasses: ([...SIZE_CLASSES, NOT_KNOWN] as const)
      .filter((sizeClass) => bySize.has(sizeClass))
      .map((sizeClass) => ({ sizeClass, plants: bySize.get(sizeClass)! })),
    asked,
    readings: [
      ...list.readings,
      ...severalSpellings('bed', bedNames, sameBeds),
      ...severalSpellings('plant', plantNames, samePlants),
    ],
    outcome: outcomeOf(plants, told),
    problems: inventoryRemarks(rows, asked, standIn, cut, list.totals, bedRows(sameBeds)),
  };
};

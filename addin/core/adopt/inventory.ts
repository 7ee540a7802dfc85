import {
  NO_BED,
  NOT_KNOWN,
  ONE_BED,
  type AdoptedPlant,
  type AskedSize,
  type Inventory,
  type WordReading,
} from './adoption';
import { bedKey, nameKey, quoted, remembered, wordsOf } from './cellText';
import { inventoryRemarks, outcomeOf } from './inventoryRemarks';
import type { ListRows, WordSeen } from './listRows';
import type { PlantRow } from './plantRow';
import { SIZE_CLASSES, sizeClassFor, type RoseClass, type RoseReading, type SizeClass } from './sizeClass';

/** Characters of the notes of one plant that are kept. */
export const LONGEST_NOTES = 1000;

/** The class of a rose by the other rows about it, where all of them agree. */
const knownClasses = (
  rows: readonly PlantRow[],
  key: (text: string) => string,
): ReadonlyMap<string, RoseClass | null> => {
  const classes = new Map<string, RoseClass | null>();
  for (const { plant, rose } of rows) {
    if (!rose.roseClass) continue;
    const before = classes.get(key(plant));
    classes.set(key(plant), before === undefined || before === rose.roseClass ? rose.roseClass : null);
  }
  return classes;
};

const withClasses = (rows: readonly PlantRow[], key: (text: string) => string): readonly PlantRow[] => {
  const classes = knownClasses(rows, key);
  return rows.map((row) => {
    if (row.rose.roseClass || row.texts.class !== '') return row;
    const roseClass = classes.get(key(row.plant));
    return roseClass ? { ...row, rose: { ...row.rose, roseClass }, classFromOthers: true } : row;
  });
};

/** What the list says about a plant whose size class it does not tell: one question for all alike. */
const question = ({ rose, texts, unknown }: PlantRow): { readonly key: string; readonly given: string } => {
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

const spelledOut = (reading: RoseReading): string =>
  [
    reading.roseClass,
    reading.size,
    reading.pot === undefined ? undefined : reading.pot ? 'in a pot' : 'in the ground',
  ]
    .filter((word) => word !== undefined)
    .join(', ');

const wordReadings = (words: readonly WordSeen[]): readonly WordReading[] => {
  const readings = new Map<
    string,
    { meaning: WordSeen['column']; reading: string; texts: string[]; rows: number }
  >();
  for (const { column, text, reading, rows } of words) {
    if (!reading) continue;
    const told = spelledOut(reading);
    const entry = readings.get(`${column}|${told}`) ?? { meaning: column, reading: told, texts: [], rows: 0 };
    entry.texts.push(text);
    entry.rows += rows;
    readings.set(`${column}|${told}`, entry);
  }
  return [...readings.values()];
};

/** Names that stand in several spellings; the first one is kept. */
const spellings = (
  meaning: 'plant' | 'bed',
  rows: readonly PlantRow[],
  key: (text: string) => string,
): readonly WordReading[] => {
  const first = new Map<string, string>();
  const several = new Map<string, Set<string>>();
  for (const row of rows) {
    const text = row[meaning];
    const before = first.get(key(text));
    if (before === undefined) first.set(key(text), text);
    else if (before !== text) several.set(key(text), (several.get(key(text)) ?? new Set([before])).add(text));
  }
  const rowsOf = new Map<string, number>();
  for (const row of rows)
    if (several.has(key(row[meaning])))
      rowsOf.set(key(row[meaning]), (rowsOf.get(key(row[meaning])) ?? 0) + 1);
  return [...several].map(([name, texts]) => ({
    meaning,
    reading: first.get(name)!,
    texts: [...texts],
    rows: rowsOf.get(name)!,
  }));
};

interface Sized {
  readonly row: PlantRow;
  readonly sizeClass: SizeClass | typeof NOT_KNOWN;
}

const withSizes = (rows: readonly PlantRow[], answers: Readonly<Record<string, SizeClass>>) => {
  const asked = new Map<string, { given: string; plants: number; sourceRows: number[] }>();
  const sized = rows.map((row): Sized => {
    const told = row.unknown.includes('pot') ? undefined : sizeClassFor(row.rose);
    if (told) return { row, sizeClass: told };
    const { key, given } = question(row);
    if (Object.hasOwn(answers, key)) return { row, sizeClass: answers[key]! };
    const entry = asked.get(key) ?? { given, plants: 0, sourceRows: [] };
    entry.plants += row.count;
    entry.sourceRows.push(row.row);
    asked.set(key, entry);
    return { row, sizeClass: NOT_KNOWN };
  });
  return { sized, asked: [...asked].map(([key, entry]): AskedSize => ({ key, ...entry })) };
};

interface Keys {
  readonly name: (text: string) => string;
  readonly bed: (text: string) => string;
}

interface Gathered {
  readonly plant: string;
  readonly bed: string;
  readonly roseClass: string;
  readonly sizeClass: SizeClass | typeof NOT_KNOWN;
  readonly pot: boolean;
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

/** Adds up rows about the same plant; names keep the spelling that stands first. */
const gather = (sized: readonly Sized[], standIn: string, keys: Keys): readonly Gathered[] => {
  const gathered = new Map<string, Gathered>();
  const beds = new Map<string, string>();
  for (const { row, sizeClass } of sized) {
    const named = row.bed || standIn;
    const bed = beds.get(keys.bed(named)) ?? named;
    beds.set(keys.bed(named), bed);
    const roseClass = row.rose.roseClass ?? row.texts.class;
    const pot = row.rose.pot === true;
    const id = `${keys.name(row.plant)}|${keys.bed(bed)}|${keys.name(roseClass)}|${sizeClass}|${pot}`;
    let plant = gathered.get(id);
    if (!plant) {
      plant = {
        plant: row.plant,
        bed,
        roseClass,
        sizeClass,
        pot,
        count: 0,
        notes: [],
        noteLength: 0,
        sourceRows: [],
      };
      gathered.set(id, plant);
    }
    plant.count += row.count;
    plant.sourceRows.push(row.row);
    if (row.unknown.includes('size')) addNote(plant, `Size: ${row.texts.size}`);
    for (const note of row.notes) addNote(plant, note);
  }
  return [...gathered.values()];
};

const plantsBy = <Kind extends string>(
  plants: readonly AdoptedPlant[],
  kindOf: (plant: AdoptedPlant) => Kind,
) => {
  const sums = new Map<Kind, number>();
  for (const plant of plants) sums.set(kindOf(plant), (sums.get(kindOf(plant)) ?? 0) + plant.count);
  return sums;
};

/**
 * Turns rows that were read into an inventory: classes filled in from other rows of the same rose, size classes
 * told or asked, equal rows added up.
 *
 * @param answers size classes by the key of what was asked
 */
export const takeInventory = (
  list: ListRows,
  answers: Readonly<Record<string, SizeClass>>,
  told: Pick<Inventory, 'unread' | 'sections' | 'tally'>,
): Inventory => {
  const keys: Keys = { name: remembered(nameKey), bed: remembered(bedKey) };
  const rows = withClasses(list.plantRows, keys.name);
  const { sized, asked } = withSizes(rows, answers);
  const standIn = rows.every((row) => row.bed === '') ? ONE_BED : NO_BED;
  const cut: number[] = [];
  const plants = gather(sized, standIn, keys).map(
    ({ plant, bed, roseClass, sizeClass, pot, count, notes, sourceRows }): AdoptedPlant => {
      const joined = notes.join('; ');
      const tooLong = joined.length > LONGEST_NOTES;
      if (tooLong) cut.push(sourceRows[0]!);
      const kept = tooLong ? `${joined.slice(0, LONGEST_NOTES - 1)}…` : joined;
      return { plant, bed, roseClass, sizeClass, pot, count, notes: kept, sourceRows };
    },
  );
  const sizes = plantsBy(plants, (plant) => plant.sizeClass);
  return {
    ...told,
    plants,
    beds: [...plantsBy(plants, (plant) => plant.bed)].map(([bed, count]) => ({ bed, plants: count })),
    sizeClasses: ([...SIZE_CLASSES, NOT_KNOWN] as const)
      .filter((sizeClass) => sizes.has(sizeClass))
      .map((sizeClass) => ({ sizeClass, plants: sizes.get(sizeClass)! })),
    asked,
    readings: [
      ...wordReadings(list.words),
      ...spellings('bed', rows, keys.bed),
      ...spellings('plant', rows, keys.name),
    ],
    outcome: outcomeOf(plants, told),
    problems: inventoryRemarks(rows, asked, standIn, cut, list.totals),
  };
};

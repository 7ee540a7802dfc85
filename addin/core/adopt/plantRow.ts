import type { ListCell } from './adoption';
import { quoted, wordsOf } from './cellText';
import type { ListColumns } from './listColumns';
import { readCount } from './plantCount';
import type { RoseColumn } from './roseWords';
import type { RoseReading } from './sizeClass';

const ROSE_COLUMNS = ['class', 'size', 'pot'] as const;
const NONE: readonly RoseColumn[] = [];
const LONGEST_NAME = 100;
const ERROR_CELL = /^#(REF|N\/A|VALUE|NAME|DIV\/0|NUM|NULL|SPILL|CALC)/i;
const POTTED_BED = /\b(pots?|potted|containers?|planters|tubs|topfe|macetas|potten|vasi)\b/;

/** A row about plants, before the same ones are added up. */
export interface PlantRow {
  readonly row: number;
  readonly plant: string;
  /** '' where none is named. */
  readonly bed: string;
  readonly rose: RoseReading;
  /** True where the class comes from other rows about the same rose. */
  readonly classFromOthers?: boolean;
  /** The grower's own words. */
  readonly texts: Readonly<Record<RoseColumn, string>>;
  /** Columns whose words are not known. */
  readonly unknown: readonly RoseColumn[];
  readonly count: number;
  readonly approximate: boolean;
  readonly notes: readonly string[];
}

export interface RowTexts {
  /** Texts by column, merges spread and ditto marks resolved. */
  readonly texts: readonly string[];
  readonly count: ListCell;
  readonly bed: string;
}

/** How cells of the class, size and pot columns are read; the caller remembers readings. */
export type RoseReader = (text: string, column: RoseColumn) => RoseReading | undefined;

const nameProblem = (name: string): string | undefined => {
  if (name === '') return 'it names no plant';
  if (ERROR_CELL.test(name)) return `its name is the error ${name.slice(0, 20)}`;
  if (!/[\p{L}\p{N}]/u.test(name)) return `${quoted(name)} is no name of a plant`;
  if (name.length > LONGEST_NAME)
    return `its name is ${name.length.toLocaleString('en-US')} characters long; at most ${LONGEST_NAME} are read`;
  return undefined;
};

/** '3 x Amber Kettle' and 'Amber Kettle x3' say how many beside the name; '(3)' does where no column says it. */
const splitCount = (name: string, loose: boolean): readonly [string, string] => {
  const before = /^(\d{1,4})\s*[x×]\s+(.+)$/iu.exec(name);
  if (before) return [before[2]!, before[1]!];
  const after =
    /^(.+?)\s+[x×]\s*(\d{1,4})$/iu.exec(name) ?? (loose ? /^(.+?)\s*\((\d{1,4})\)$/u.exec(name) : null);
  return after ? [after[1]!, after[2]!] : [name, ''];
};

/** 'Amber Kettle (HT)': a class in brackets after the name. */
const splitClass = (name: string, read: RoseReader): readonly [string, RoseReading | undefined, string] => {
  const match = /^(.*\S)\s*[([]([^()[\]]{1,40})[)\]]$/u.exec(name);
  const reading = match ? read(match[2]!, 'class') : undefined;
  return reading ? [match![1]!, reading, match![2]!] : [name, undefined, ''];
};

const day = (serial: string): string => {
  const days = Number(serial);
  return Number.isInteger(days) ? new Date(Date.UTC(1899, 11, 30 + days)).toISOString().slice(0, 10) : serial;
};

const notesOf = (texts: readonly string[], columns: ListColumns): string[] =>
  columns.notes.flatMap(({ column, label }) => {
    const text = texts[column.index] ?? '';
    return text === '' ? [] : [label + (column.days ? day(text) : text)];
  });

/**
 * Reads one row about plants.
 *
 * @returns the row, or why it cannot be read, as the end of a sentence
 */
export const readPlantRow = (
  row: number,
  { texts, count, bed }: RowTexts,
  columns: ListColumns,
  read: RoseReader,
): PlantRow | { readonly unread: string } => {
  const textOf = (column: RoseColumn | 'plant') => texts[columns[column]?.index ?? -1] ?? '';
  const words = { class: textOf('class'), size: textOf('size'), pot: textOf('pot') };
  const written = columns.plant
    ? textOf('plant')
    : read(words.class, 'class')?.roseClass || words.class || 'Rose';
  const problem = nameProblem(written);
  if (problem) return { unread: problem };

  const counted = columns.count ? texts[columns.count.index] !== '' : false;
  const [named, beside] = counted || !columns.plant ? [written, ''] : splitCount(written, !columns.count);
  const reading = readCount(beside === '' ? count : beside);
  if ('unread' in reading) return reading;
  const [plant, inBrackets, bracketWords] =
    words.class === '' && columns.plant ? splitClass(named, read) : [named, undefined, ''];

  const said = {
    class: words.class === '' ? inBrackets : read(words.class, 'class'),
    size: words.size === '' ? undefined : read(words.size, 'size'),
    pot: words.pot === '' ? undefined : read(words.pot, 'pot'),
  };
  const unknown = ROSE_COLUMNS.filter((column) => words[column] !== '' && !said[column]);
  const pottedBed = !columns.pot && POTTED_BED.test(wordsOf(bed));
  const roseClass = said.class?.roseClass ?? said.size?.roseClass ?? said.pot?.roseClass;
  const size = said.size?.size ?? said.class?.size ?? said.pot?.size;
  const pot = said.pot?.pot ?? said.size?.pot ?? said.class?.pot ?? (pottedBed ? true : undefined);
  return {
    row,
    plant,
    bed,
    rose: { ...(roseClass && { roseClass }), ...(size && { size }), ...(pot !== undefined && { pot }) },
    texts: { ...words, class: words.class || bracketWords },
    unknown: unknown.length === 0 ? NONE : unknown,
    count: reading.count,
    approximate: reading.approximate,
    notes: notesOf(texts, columns),
  };
};

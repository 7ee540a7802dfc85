import type { ListCell } from './adoption';
import { quoted, wordsOf } from './cellText';
import type { ListColumns } from './listColumns';
import { readCount } from './plantCount';
import type { PlantWords, WordReader } from './plantWords';

const LONGEST_NAME = 100;
const ERROR_CELL = /^#(REF|N\/A|VALUE|NAME|DIV\/0|NUM|NULL|SPILL|CALC)/i;
const POTTED_BED = /\b(pots?|potted|containers?|planters|tubs|topfe|macetas|potten|vasi)\b/;

/** A row about plants, before the same ones are added up. */
export interface PlantRow {
  readonly row: number;
  readonly plant: string;
  /** '' where none is named. */
  readonly bed: string;
  readonly words: PlantWords;
  /** True where the class comes from other rows about the same rose. */
  readonly classFromOthers?: boolean;
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
const splitClass = (name: string, reader: WordReader): readonly [string, string] => {
  const match = /^(.*\S)\s*[([]([^()[\]]{1,40})[)\]]$/u.exec(name);
  return match && reader.classWord(match[2]!) ? [match[1]!, match[2]!] : [name, ''];
};

const day = (serial: string): string => {
  const days = Number(serial);
  return Number.isInteger(days) ? new Date(Date.UTC(1899, 11, 30 + days)).toISOString().slice(0, 10) : serial;
};

const notesOf = (texts: readonly string[], columns: ListColumns): readonly string[] => {
  const notes: string[] = [];
  for (const { column, label } of columns.notes) {
    const text = texts[column.index] ?? '';
    if (text !== '') notes.push(label + (column.days ? day(text) : text));
  }
  return notes;
};

/**
 * Reads one row about plants.
 *
 * @returns the row, or why it cannot be read, as the end of a sentence
 */
export const readPlantRow = (
  row: number,
  { texts, count, bed }: RowTexts,
  columns: ListColumns,
  reader: WordReader,
): PlantRow | { readonly unread: string } => {
  const textOf = (column: 'plant' | 'class' | 'size' | 'pot') => texts[columns[column]?.index ?? -1] ?? '';
  const classText = textOf('class');
  const written = columns.plant
    ? textOf('plant')
    : reader.classWord(classText)?.roseClass || classText || 'Rose';
  const problem = nameProblem(written);
  if (problem) return { unread: problem };

  const counted = columns.count ? texts[columns.count.index] !== '' : false;
  const [named, beside] = counted || !columns.plant ? [written, ''] : splitCount(written, !columns.count);
  const reading = readCount(beside === '' ? count : beside);
  if ('unread' in reading) return reading;
  const [plant, inBrackets] = classText === '' && columns.plant ? splitClass(named, reader) : [named, ''];
  const inPot = !columns.pot && POTTED_BED.test(wordsOf(bed));
  return {
    row,
    plant,
    bed,
    words: reader.plantWords(classText || inBrackets, textOf('size'), textOf('pot'), inPot),
    count: reading.count,
    approximate: reading.approximate,
    notes: notesOf(texts, columns),
  };
};

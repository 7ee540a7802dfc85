import type { ListSheet, Proposal, UnreadRow, WordReading } from './adoption';
import { bedNameFrom } from './bedNames';
import { cellText, columnLetters, remembered } from './cellText';
import { readHeading } from './headings';
import { byMeaning, type ListColumns } from './listColumns';
import { mergedCells, type MergedCells } from './mergedCells';
import { readPlantRow, type PlantRow } from './plantRow';
import { wordReader } from './plantWords';
import { rowKind, type ListHabits, type RowInSight } from './rowKind';
import { DITTO_WORDS } from './words/countWords';

/** A row of totals: what it says, and what the rows above it come to, all of them and those since the last pause. */
export interface TotalRow {
  readonly row: number;
  readonly said: number | undefined;
  readonly counted: readonly [number, number];
}

/** A row that names the bed for the rows under it. */
export interface SectionRow {
  readonly row: number;
  readonly bed: string;
  followed: boolean;
}

export interface ListRows {
  readonly plantRows: readonly PlantRow[];
  readonly unread: readonly UnreadRow[];
  readonly sections: readonly SectionRow[];
  readonly totals: readonly TotalRow[];
  /** How the words of the class, size and pot columns were understood. */
  readonly readings: readonly WordReading[];
  readonly headers: number;
  readonly blank: number;
}

const DITTO: ReadonlySet<string> = new Set(DITTO_WORDS);
const LONGEST_DITTO = Math.max(...DITTO_WORDS.map((word) => word.length));
const SHOWN = 160;
const ROWS_AT_ONCE = 4_000;
/** A cell that shows an error: '#DIV/0!' holds no number. */
const ERROR = /^#[A-Z]/;

/** A row's own cells: what a merge covers is blank here. */
export const ownTexts = (
  sheet: ListSheet,
  merged: MergedCells,
  row: number,
): { texts: string[]; filled: number[] } => {
  const cells = sheet.cells[row] ?? [];
  const texts: string[] = [];
  const filled: number[] = [];
  for (let column = 0; column < cells.length; column++) {
    const text = merged.coveredFromAbove(row, column) ? '' : cellText(cells[column]);
    texts.push(text);
    if (text !== '') filled.push(column);
  }
  return { texts, filled };
};

/** A row in one line for a message, cells parted by ' | '. */
export const shownRow = (texts: readonly string[]): string => {
  const line = texts.filter((text) => text !== '').join(' | ');
  return line.length > SHOWN ? `${line.slice(0, SHOWN - 1)}…` : line;
};

const habitsOf = (
  sheet: ListSheet,
  merged: MergedCells,
  proposal: Proposal,
  columns: ListColumns,
): ListHabits => {
  const { first, last } = proposal.dataRows!;
  let hasBlankLines = false;
  for (let row = first; row <= last && !hasBlankLines; row++)
    hasBlankLines = ownTexts(sheet, merged, row).filled.length === 0;
  const headings = new Map<number, string>();
  const lowest = sheet.cells[proposal.headerRow ?? -1] ?? [];
  lowest.forEach((cell, column) => headings.set(column, cellText(cell)));
  return {
    columns,
    headings,
    heading: remembered(readHeading),
    usualCells: proposal.usualCells,
    opensWithSection: ownTexts(sheet, merged, first).filled.length === 1,
    hasBlankLines,
  };
};

/**
 * One pass down the list under its headings, with a pause after every few thousand rows; what a row means depends on
 * the rows above it.
 *
 * @param proposal one with data rows
 */
export const readRows = function* (sheet: ListSheet, proposal: Proposal): Generator<undefined, ListRows> {
  const merged = mergedCells(sheet);
  const columns = byMeaning(proposal.columns);
  const habits = habitsOf(sheet, merged, proposal, columns);
  const reader = wordReader(columns);
  const spread = [columns.plant, columns.bed, columns.class, columns.size, columns.pot].flatMap((column) =>
    column ? [column.index] : [],
  );
  const plantRows: PlantRow[] = [];
  const unread: UnreadRow[] = [];
  const sections: SectionRow[] = [];
  const totals: TotalRow[] = [];
  const tally = { headers: 0, blank: 0 };
  let above: readonly string[] = [];
  let bedAbove = '';
  let sum = 0;
  let sumHere = 0;
  let otherList = -1;
  let paused = true;

  const addTotal = (row: number, said: number | undefined) => {
    totals.push({ row, said, counted: [sum, sumHere] });
    sumHere = 0;
  };

  /** Merges spread down and ditto marks filled in; the column of a mark that repeats nothing otherwise. */
  const fullTexts = (row: number, own: string[]): string[] | { dangling: number } => {
    let texts: string[] = own;
    const fill = (column: number, text: string) => {
      if (texts === own) texts = [...own];
      texts[column] = text;
    };
    for (const column of spread) {
      const text = own[column] ?? '';
      if (merged.coveredFromAbove(row, column)) {
        const [top, left] = merged.cornerOf(row, column);
        fill(column, cellText(sheet.cells[top]?.[left]));
      } else if (text !== '' && text.length <= LONGEST_DITTO && DITTO.has(text.toLowerCase())) {
        if (!above[column]) return { dangling: column };
        fill(column, above[column]);
      }
    }
    return texts;
  };

  const countIsShared = (row: number, nextIsFilled: boolean): boolean => {
    const column = columns.count?.index;
    if (column === undefined) return false;
    return merged.coveredFromAbove(row, column) || (nextIsFilled && merged.topOfSeveralRows(row, column));
  };

  const plants = (row: number, own: string[], next: boolean) => {
    const refuse = (reason: string) => unread.push({ row, reason, text: shownRow(own) });
    const section = sections.at(-1);
    if (section) section.followed = true;
    if (otherList >= 0)
      return refuse(
        `it belongs to another list, whose headings stand in row ${otherList + 1}; adopt that one by its own headings`,
      );
    if (countIsShared(row, next)) return refuse('its number of plants is one cell merged over several rows');
    const texts = fullTexts(row, own);
    if ('dangling' in texts)
      return refuse(
        `the mark in column ${columnLetters(texts.dangling)} repeats the row above, which has nothing there`,
      );
    const written = columns.bed ? (texts[columns.bed.index] ?? '') : '';
    const bed = written || (proposal.bedFromAbove ? bedAbove : '') || section?.bed || '';
    const count = columns.count ? (sheet.cells[row]?.[columns.count.index] ?? null) : null;
    const bare = own.every((text, column) => text === '' || column === columns.count?.index);
    const number = Number(cellText(count) || NaN);
    if (bare && (number === sum || number === sumHere)) return addTotal(row, number);
    if (bed.length > 100)
      return refuse(`its bed is ${bed.length.toLocaleString('en-US')} characters long; at most 100 are read`);
    const reading = readPlantRow(row, { texts, count, bed }, columns, reader);
    above = texts;
    if (written) bedAbove = written;
    if ('unread' in reading) return refuse(reading.unread);
    plantRows.push(reading);
    sum += reading.count;
    sumHere += reading.count;
  };

  const start = Math.min(proposal.dataRows!.first, sheet.cells.length);
  let now = ownTexts(sheet, merged, start);
  for (let row = start; row < sheet.cells.length; row++) {
    if (row % ROWS_AT_ONCE === 0) yield;
    const { texts, filled } = now;
    const next = ownTexts(sheet, merged, row + 1);
    const sight: RowInSight = {
      texts,
      filled,
      span: filled.length > 0 ? merged.spanOf(row, filled[0]!) : 1,
      afterPause: paused,
      beforeFullRow: next.filled.length >= proposal.usualCells,
    };
    const kind = rowKind(sight, habits);
    if (kind === 'blank') tally.blank++;
    else if (kind === 'header' && otherList < 0) tally.headers++;
    else if (kind === 'otherList' || kind === 'header') {
      if (otherList < 0) otherList = row;
      unread.push({ row, reason: 'it holds the headings of another list', text: shownRow(texts) });
    } else if (kind === 'total' && otherList < 0) {
      const number = columns.count ? texts[columns.count.index] : undefined;
      const said = texts.filter((text) => !ERROR.test(text)).join(' ');
      const digits = /^\d+$/.exec(number ?? '')?.[0] ?? /(\d+)\D*$/.exec(said)?.[1];
      addTotal(row, digits === undefined ? undefined : Number(digits));
    } else if (kind === 'section' && otherList < 0) {
      sections.push({ row, bed: bedNameFrom(texts[filled[0]!]!), followed: false });
      sumHere = 0;
      bedAbove = '';
    } else plants(row, texts, next.filled.length > 0);
    paused = kind === 'blank' || kind === 'total';
    now = next;
  }
  return { plantRows, unread, sections, totals, readings: reader.readings(), ...tally };
};

import type { ColumnGuess, ListCell, ListSheet, Overrides, Proposal, Remark } from './adoption';
import { cellText, columnLetters, nameKey, quoted } from './cellText';
import { columnContent } from './columnContent';
import { guessColumns, type ListColumn } from './columnMeaning';
import { findHeaderRows, headerRowsAt } from './headerRows';
import { looksLikeBed } from './bedNames';
import { isTotalLine } from './rowKind';
import { readHeading } from './headings';
import { mergedCells, type MergedCells } from './mergedCells';
import { topRows, usualFill, type FilledRow } from './topRows';

const TOP_ROWS = 200;
const SAMPLED_ROWS = 400;
const FIRST_ROWS = 60;

const isFilled = (row: readonly ListCell[] | undefined): boolean =>
  row !== undefined && row.some((cell) => cellText(cell) !== '');

const refusal = (sentence: string, part: Partial<Proposal> = {}): Proposal => ({
  headerRow: null,
  headerRows: [],
  dataRows: null,
  columns: [],
  bedFromAbove: false,
  usualCells: 0,
  sizeClasses: {},
  outcome: sentence,
  problems: [{ kind: 'stop', sentence }],
  ...part,
});

/** Without headings the list starts at the first row as full as the others; lone lines above it are titles. */
const firstPlantRow = (rows: readonly FilledRow[], usual: number): number => {
  const start = rows.find((row) => row.cells.length * 2 > usual || looksLikeBed(row.cells[0]!.text));
  return (start ?? rows[0])!.row;
};

const headingsOf = (
  sheet: ListSheet,
  merged: MergedCells,
  headerRows: readonly number[],
  column: number,
): readonly string[] => {
  const texts = headerRows.map((row) => {
    const [top, left] = merged.cornerOf(row, column);
    // A title merged over the whole list says nothing about one column.
    return headerRows.includes(top) ? cellText(sheet.cells[top]?.[left]) : '';
  });
  return texts.filter((text, i) => text !== '' && texts.indexOf(text) === i);
};

const sampledRows = (filled: readonly number[]): readonly number[] => {
  const step = Math.max(1, filled.length / SAMPLED_ROWS);
  return Array.from(
    { length: Math.min(filled.length, SAMPLED_ROWS) },
    (_, i) => filled[Math.floor(i * step)]!,
  );
};

const listColumns = (
  sheet: ListSheet,
  merged: MergedCells,
  headerRows: readonly number[],
  filled: readonly number[],
  usual: number,
): readonly ListColumn[] => {
  const inUse = new Set<number>();
  for (const row of [...headerRows, ...filled])
    sheet.cells[row]!.forEach((cell, column) => {
      if (cell !== null && !inUse.has(column) && cellText(cell) !== '') inUse.add(column);
    });
  const cellAt = (row: number, column: number) => {
    const [top, left] = merged.coveredFromAbove(row, column) ? merged.cornerOf(row, column) : [row, column];
    return sheet.cells[top]?.[left] ?? null;
  };
  const headings = new Map(
    [...inUse].map((index) => [index, headingsOf(sheet, merged, headerRows, index)] as const),
  );
  /** Repeated headings and totals say nothing about what a column holds. */
  const isBetweenPlants = (row: readonly ListCell[]): boolean => {
    const texts = row.flatMap((cell, column) => {
      const text = cellText(cell);
      return text === '' ? [] : [{ text, column }];
    });
    return (
      texts.some(({ text }) => isTotalLine(text)) ||
      texts.every(({ text, column }) =>
        headings.get(column)?.some((heading) => nameKey(heading) === nameKey(text)),
      )
    );
  };
  const full = filled.filter(
    (row) => usual < 2 || sheet.cells[row]!.filter((cell) => cell !== null && cell !== '').length > 1,
  );
  const isPlants = (row: number): boolean => !isBetweenPlants(sheet.cells[row]!);
  const sampled = sampledRows(full).filter(isPlants);
  const first = full.slice(0, FIRST_ROWS).filter(isPlants);
  return [...inUse]
    .sort((a, b) => a - b)
    .map((index) => ({
      index,
      headings: headings.get(index) ?? [],
      content: columnContent(
        sampled.map((row) => cellAt(row, index)),
        first.map((row) => cellAt(row, index)),
      ),
    }));
};

/** Some growers write a bed once and leave it blank for the roses under it. */
const bedStandsOnce = (
  sheet: ListSheet,
  columns: readonly ColumnGuess[],
  filled: readonly number[],
): boolean => {
  const bed = columns.find((column) => column.meaning === 'bed');
  if (!bed) return false;
  const keys = filled.slice(0, SAMPLED_ROWS).map((row) => nameKey(cellText(sheet.cells[row]?.[bed.index])));
  const named = keys.filter((key) => key !== '');
  const again = named.filter((key, i) => i > 0 && key === named[i - 1]).length;
  return keys[0] !== '' && named.length > 0 && named.length < keys.length * 0.7 && again * 10 <= named.length;
};

const remarksOn = (
  columns: readonly ColumnGuess[],
  above: readonly FilledRow[],
  usual: number,
): readonly Remark[] => {
  const remarks: Remark[] = [];
  const has = (meaning: string) => columns.some((column) => column.meaning === meaning);
  if (!has('plant'))
    remarks.push({
      kind: 'ask',
      sentence:
        'No column looks like the names of the roses. Choose the one that holds them, or go on without names.',
    });
  if (!has('class') && !has('size'))
    remarks.push({
      kind: 'ask',
      sentence:
        'No column gives the class or the size of the roses. Choose one, or give them a size class afterwards.',
    });
  if (!has('count'))
    remarks.push({
      kind: 'tell',
      sentence: 'No column says how many: each row counts as one plant, and repeated rows are added up.',
    });
  const lost = above.filter((row) => usual > 2 && row.cells.length >= usual);
  if (lost.length > 0)
    remarks.push({
      kind: 'ask',
      sentence: `${lost.length} full ${lost.length === 1 ? 'row stands' : 'rows stand'} above the headings and will not be read, from row ${lost[0]!.row + 1} on. If they hold roses, choose another row of headings.`,
    });
  const seen = new Map<string, ColumnGuess>();
  for (const column of columns) {
    const twin = column.header === '' ? undefined : seen.get(column.header);
    if (twin?.meaning === 'plant' && readHeading(column.header)?.weights.plant)
      remarks.push({
        kind: 'ask',
        sentence: `The heading ${quoted(column.header)} stands in columns ${columnLetters(twin.index)} and ${columnLetters(column.index)}: two lists side by side? Only the first is read; put the second one under it and adopt the list again.`,
      });
    seen.set(column.header, twin ?? column);
  }
  return remarks;
};

const outcomeOf = (headerRows: readonly number[], rows: number): string => {
  const follow = `${rows.toLocaleString('en-US')} filled ${rows === 1 ? 'row follows' : 'rows follow'}`;
  if (headerRows.length === 0)
    return `The list has no headings; its columns are guessed by what they hold. ${rows.toLocaleString('en-US')} filled ${rows === 1 ? 'row' : 'rows'}.`;
  if (headerRows.length === 1) return `The headings stand in row ${headerRows[0]! + 1}; ${follow}.`;
  return `The headings stand in rows ${headerRows[0]! + 1} to ${headerRows.at(-1)! + 1}; ${follow}.`;
};

/**
 * Looks at a grower's list and proposes how to read it: where the headings stand and what each column means. The
 * user confirms or overrides; `readList` then reads the rows.
 *
 * @param sheet the cells from A1, any shape, titles and blank lines included
 * @returns a proposal; one with a 'stop' problem where there is nothing to read (it never throws)
 * Source: how growers write their lists; common practice, nothing published.
 * @example proposeAdoption({ cells: [['Variety', 'Bed'], ['Amber Kettle', 'Front']], merges: [] }).headerRow // 0
 */
export const proposeAdoption = (sheet: ListSheet, overrides: Overrides = {}): Proposal => {
  const merged = mergedCells(sheet);
  const top = topRows(sheet, merged, TOP_ROWS);
  if (top.length === 0) return refusal('The sheet is empty: there is no list to adopt.');
  const chosen = overrides.headerRow;
  if (typeof chosen === 'number' && !sheet.cells[chosen])
    return refusal(`Row ${chosen + 1} holds no headings: the sheet ends at row ${sheet.cells.length}.`);
  const headerRows =
    chosen === null ? [] : chosen === undefined ? findHeaderRows(top) : headerRowsAt(top, chosen);
  const usual = usualFill(top.filter((row) => !headerRows.includes(row.row)));
  const headerRow = headerRows.at(-1) ?? null;
  const first = headerRow === null ? firstPlantRow(top, usual) : headerRow + 1;
  const filled: number[] = [];
  for (let row = first; row < sheet.cells.length; row++) if (isFilled(sheet.cells[row])) filled.push(row);
  const columns = guessColumns(
    listColumns(sheet, merged, headerRows, filled, usual),
    overrides.columns ?? {},
  );
  if (filled.length === 0) {
    const sentence = `The headings stand in row ${headerRow! + 1}, but no rows follow: there is nothing to adopt.`;
    return refusal(sentence, { headerRow, headerRows, columns });
  }
  const above = top.filter((row) => row.row < first && !headerRows.includes(row.row));
  return {
    headerRow,
    headerRows,
    dataRows: { first: filled[0]!, last: filled.at(-1)! },
    columns,
    bedFromAbove: overrides.bedFromAbove ?? bedStandsOnce(sheet, columns, filled),
    usualCells: usual,
    sizeClasses: overrides.sizeClasses ?? {},
    outcome: outcomeOf(headerRows, filled.length),
    problems: remarksOn(columns, above, usual),
  };
};

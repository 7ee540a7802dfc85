import { looksLikeBed } from './bedNames';
import { readHeading, strongest } from './headings';
import { readCount } from './plantCount';
import { readRoseWords } from './roseWords';
import { usualFill, type FilledCell, type FilledRow } from './topRows';

const MOST_STACKED = 3;
const LONGEST_HEADING = 60;
/** A lower row is preferred only where its headings say clearly more. */
const CLEARLY_MORE = 0.75;

interface Score {
  /** Sum of the weights of different meanings. */
  readonly points: number;
  readonly hits: number;
  readonly exact: number;
  /** Cells that hold what a row about a plant holds: numbers, classes, sizes, beds. */
  readonly dataCells: number;
}

/** Values repeat down a column, headings do not, unless the whole row of headings is repeated. */
const repeatedBelow = (rows: readonly FilledRow[]): ((row: FilledRow, cell: FilledCell) => boolean) => {
  const seen = new Map<string, number>();
  const sameRows = new Map<string, number>();
  for (const row of rows) {
    sameRows.set(row.key, (sameRows.get(row.key) ?? 0) + 1);
    for (const cell of row.cells) {
      const key = `${cell.column}:${cell.text}`;
      seen.set(key, (seen.get(key) ?? 0) + 1);
    }
  }
  return (row, cell) => (seen.get(`${cell.column}:${cell.text}`) ?? 0) > (sameRows.get(row.key) ?? 0);
};

const holdsData = (cell: FilledCell): boolean => {
  if (cell.isNumber || /^\d+$/.test(cell.text)) return true;
  if (readHeading(cell.text)?.exact) return false;
  return (
    looksLikeBed(cell.text) ||
    readRoseWords(cell.text, 'class') !== undefined ||
    readRoseWords(cell.text, 'size') !== undefined ||
    'count' in readCount(cell.text)
  );
};

const scoreOf = (row: FilledRow, repeated: (row: FilledRow, cell: FilledCell) => boolean): Score => {
  const best = new Map<string, number>();
  let hits = 0;
  let exact = 0;
  let dataCells = 0;
  for (const cell of row.cells) {
    if (holdsData(cell)) dataCells++;
    if (cell.isNumber || repeated(row, cell)) continue;
    const heading = readHeading(cell.text);
    if (!heading || (!heading.exact && looksLikeBed(cell.text))) continue;
    hits++;
    if (heading.exact) exact++;
    const [meaning, weight] = strongest(heading);
    const key = meaning === 'other' ? cell.text : meaning;
    best.set(key, Math.max(best.get(key) ?? 0, meaning === 'other' ? weight / 2 : weight));
  }
  return { points: [...best.values()].reduce((sum, weight) => sum + weight, 0), hits, exact, dataCells };
};

const isCandidate = (row: FilledRow, score: Score, usual: number): boolean => {
  const cells = row.cells.length;
  if (cells === 1) return usual <= 1 && score.exact === 1 && score.points >= 0.7;
  return score.points >= 0.85 && score.exact >= 1 && score.hits * 3 >= cells && score.dataCells * 3 <= cells;
};

/** A row of short different texts over a column of numbers: headings in words that are not known. */
const overNumbers = (rows: readonly FilledRow[], at: number): boolean => {
  const row = rows[at]!;
  const below = rows.slice(at + 1);
  if (row.cells.length < 2 || below.length < 3) return false;
  if (row.cells.some((cell) => cell.text.length > LONGEST_HEADING || holdsData(cell))) return false;
  return row.cells.some(({ column }) => {
    const values = below.flatMap((other) => other.cells.filter((cell) => cell.column === column));
    return values.length * 2 >= below.length && values.every((cell) => /^\d+$/.test(cell.text));
  });
};

const inBrackets = (row: FilledRow): boolean => row.cells.every((cell) => /^[([].*[)\]]$/.test(cell.text));

/** Headings over groups of columns stand right above: merged over some columns, or headings themselves. */
const stacksAbove = (row: FilledRow, score: Score, width: number): boolean => {
  if (score.dataCells > 0 || row.cells.some((cell) => cell.text.length > LONGEST_HEADING)) return false;
  const groups = row.cells.some((cell) => cell.span > 1 && cell.span < width);
  if (row.cells.length < 2) return groups;
  return groups || score.hits >= 2;
};

const stacksBelow = (row: FilledRow, score: Score): boolean =>
  inBrackets(row) || (score.exact >= 1 && score.hits * 2 >= row.cells.length && score.dataCells === 0);

/**
 * The rows of headings at the top of a list: usually one, up to three stacked ones, under titles, notes and blank
 * lines.
 *
 * @param rows the first filled rows of the sheet
 * @returns row numbers in order; empty where the list has no headings
 */
export const findHeaderRows = (rows: readonly FilledRow[]): readonly number[] => {
  const repeated = repeatedBelow(rows);
  const scores = rows.map((row) => scoreOf(row, repeated));
  const usual = usualFill(rows);
  const candidates = rows.flatMap((row, at) => (isCandidate(row, scores[at]!, usual) ? [at] : []));
  const most = Math.max(...candidates.map((at) => scores[at]!.points), 0);
  const first =
    candidates.find((at) => scores[at]!.points >= most * CLEARLY_MORE) ??
    rows.findIndex((row) => row.cells.length > 1);
  if (first < 0 || (candidates.length === 0 && !overNumbers(rows, first))) return [];
  return stackedRows(rows, scores, first);
};

const stackedRows = (
  rows: readonly FilledRow[],
  scores: readonly Score[],
  first: number,
): readonly number[] => {
  const width = Math.max(...rows.map((row) => row.cells.length));
  let top = first;
  let bottom = first;
  const adjoins = (upper: number, lower: number) => rows[upper]?.row === (rows[lower]?.row ?? -1) - 1;
  const fresh = (at: number) => rows[at]!.key !== rows[first]!.key;
  while (bottom - top + 1 < MOST_STACKED && adjoins(bottom, bottom + 1) && fresh(bottom + 1)) {
    if (!stacksBelow(rows[bottom + 1]!, scores[bottom + 1]!)) break;
    bottom++;
  }
  while (bottom - top + 1 < MOST_STACKED && adjoins(top - 1, top) && fresh(top - 1)) {
    if (!stacksAbove(rows[top - 1]!, scores[top - 1]!, width)) break;
    top--;
  }
  return rows.slice(top, bottom + 1).map((row) => row.row);
};

/** The rows of headings around one that the user names as the lowest. */
export const headerRowsAt = (rows: readonly FilledRow[], headerRow: number): readonly number[] => {
  const at = rows.findIndex((row) => row.row === headerRow);
  if (at < 0) return [headerRow];
  const scores = rows.map((row) => scoreOf(row, repeatedBelow(rows)));
  return stackedRows(rows.slice(0, at + 1), scores, at);
};

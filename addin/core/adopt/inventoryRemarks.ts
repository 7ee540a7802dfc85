import { NO_BED, type AdoptedPlant, type AskedSize, type Inventory, type Remark } from './adoption';
import { quoted } from './cellText';
import type { TotalRow } from './listRows';
import { nearPairs } from './nearNames';
import type { PlantRow } from './plantRow';

const UNUSUAL_COUNT = 100;
const MOST_ROWS_NAMED = 8;
const MOST_QUESTIONS = 20;
const MOST_NEAR_BEDS = 8;

/** A bed of the inventory and how many rows of the list name it. */
export interface BedRows {
  readonly bed: string;
  readonly rows: number;
}

const number = (n: number): string => n.toLocaleString('en-US');
const counted = (n: number, one: string, many = `${one}s`): string => `${number(n)} ${n === 1 ? one : many}`;

/** 'row 5' or 'rows 5, 9 and 12', counted from 1; long lists are cut with how many more there are. */
export const namedRows = (rows: readonly number[]): string => {
  const named = rows.slice(0, MOST_ROWS_NAMED).map((row) => number(row + 1));
  const more = rows.length - named.length;
  const last = more > 0 ? `${number(more)} more` : named.pop()!;
  if (named.length === 0) return `row ${last}`;
  return `rows ${named.join(', ')} and ${last}`;
};

/** What was read, in one sentence with the numbers that matter. */
export const outcomeOf = (
  plants: readonly AdoptedPlant[],
  { tally, unread }: Pick<Inventory, 'tally' | 'unread'>,
): string => {
  const lost = unread.length === 0 ? '' : `; ${counted(unread.length, 'row')} could not be read`;
  if (plants.length === 0) return `No roses could be read from ${counted(tally.rows, 'row')}${lost}.`;
  const beds = new Set(plants.map((plant) => plant.bed)).size;
  const roses = plants.reduce((sum, plant) => sum + plant.count, 0);
  return `${counted(roses, 'rose')} in ${counted(beds, 'bed')}, read from ${number(tally.plants)} of ${counted(tally.rows, 'row')}${lost}.`;
};

const totalRemarks = (totals: readonly TotalRow[]): readonly Remark[] =>
  totals.flatMap(({ row, said, counted: [all, here] }) =>
    said === undefined || said === all || said === here
      ? []
      : [
          {
            kind: 'tell' as const,
            sentence: `The total in row ${number(row + 1)} says ${number(said)}; the rows above it that could be read come to ${number(all)}.`,
          },
        ],
  );

/** Beds that may be one bed mistyped: told and not mended, for nobody but the grower knows. */
const nearBedRemarks = (beds: readonly BedRows[]): readonly Remark[] =>
  nearPairs(beds.map(({ bed, rows }) => ({ name: bed, rows })))
    .slice(0, MOST_NEAR_BEDS)
    .map(([rarer, bed]) => ({
      kind: 'tell',
      sentence: `The beds ${quoted(rarer)} and ${quoted(bed)} are kept apart; if they are one, write it one way in your list.`,
    }));

/** What the user should know or decide about a list that was read. */
export const inventoryRemarks = (
  rows: readonly PlantRow[],
  asked: readonly AskedSize[],
  standIn: string,
  cutNotes: readonly number[],
  totals: readonly TotalRow[],
  beds: readonly BedRows[],
): readonly Remark[] => {
  const remarks: Remark[] = [];
  const tell = (which: readonly PlantRow[], sentence: (named: string) => string) => {
    if (which.length > 0)
      remarks.push({ kind: 'tell', sentence: sentence(namedRows(which.map((row) => row.row))) });
  };
  for (const { given, plants, sourceRows } of asked.slice(0, MOST_QUESTIONS))
    remarks.push({
      kind: 'ask',
      sentence: `Give ${counted(plants, 'rose')} a size class: the list says ${given} (${namedRows(sourceRows)}).`,
    });
  const more = asked.slice(MOST_QUESTIONS);
  if (more.length > 0)
    remarks.push({
      kind: 'ask',
      sentence: `${number(more.length)} more kinds need a size class, ${counted(
        more.reduce((sum, { plants }) => sum + plants, 0),
        'rose',
      )} in all. Is the right column chosen for class and size?`,
    });
  for (const row of rows.filter(({ count }) => count > UNUSUAL_COUNT).slice(0, MOST_ROWS_NAMED))
    remarks.push({
      kind: 'ask',
      sentence: `Row ${number(row.row + 1)} counts ${number(row.count)} plants of ${quoted(row.plant)}. Is that right?`,
    });
  tell(
    rows.filter((row) => row.approximate),
    (named) => `The number of plants is not certain in ${named}; it is taken as written.`,
  );
  tell(
    rows.filter((row) => row.classFromOthers),
    (named) => `No class is given in ${named}; it is taken from the other rows of the same rose.`,
  );
  tell(
    rows.filter((row) => row.words.unknown.includes('size') && row.words.rose.roseClass),
    (named) => `The size in ${named} is not known; the class decides, and the size is kept in the notes.`,
  );
  const bedless = rows.filter((row) => row.bed === '');
  if (standIn === NO_BED)
    tell(bedless, (named) => `No bed is named in ${named}; those roses stand under ${quoted(standIn)}.`);
  else if (bedless.length > 0)
    remarks.push({
      kind: 'tell',
      sentence: `The list names no beds: all roses are put in one, ${quoted(standIn)}.`,
    });
  if (cutNotes.length > 0)
    remarks.push({
      kind: 'tell',
      sentence: `Notes were too long and are cut for the roses of ${namedRows(cutNotes)}.`,
    });
  return [...remarks, ...nearBedRemarks(beds), ...totalRemarks(totals)];
};

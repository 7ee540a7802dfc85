import { planRound } from '../../../addin/core';
import { cardAreas } from '../../../addin/workbook/card/cardNames';
import { makeCard } from '../../../addin/workbook/card/makeCard';
import { readCard } from '../../../addin/workbook/card/readCard';
import { memoryWorkbook, type MemoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../../addin/workbook/readGarden';
import { roundInput } from '../../../addin/workbook/roundInput';
import { gardenSheets } from '../../../addin/workbook/sheets/gardenSheets';
import { areaNamed } from '../../../addin/workbook/snapshot';
import { buildSheets } from '../../../addin/workbook/tables/buildSheets';
import { disagreements, shownOutOfDate } from './disagreements';
import { backOf, editOf, type CellEdit, type Draw } from './edits';
import type { MadeGarden } from './gardens';
import type { LiveBook } from './gridBook';
import { causes, planNow, type PlannedNow } from './planNow';
import { sheetsDisagree } from './sheetsAgree';
import { shownCard } from './shownCard';
import { tanksDisagree, tanksOf } from './tanksAgree';

/** What became of a garden's card. */
export interface Walked {
  /** False for a garden that the planner refuses: nothing was made. */
  readonly made: boolean;
  readonly followed: number;
  readonly outOfDate: number;
  /** What the card shows and ought not to. */
  readonly found: readonly string[];
}

const DATE = 46_147;
const areasOf = (outline: Outline) => [
  ...gardenAreas(outline),
  ...cardAreas(outline),
  ...[areaNamed(outline, 'Wandcount_Tanks') ?? []].flat(),
];

/** Garden and card, as they are shown. */
export const snapshotOf = async (book: Pick<LiveBook, 'outline' | 'read'>): Promise<Snapshot> =>
  book.read(areasOf(await book.outline()));

/** The sheets of a garden with its card, not worked out; undefined where the planner refuses. */
export const cardOf = async ({ wishes, round }: MadeGarden): Promise<MemoryWorkbook | undefined> => {
  const workbook = memoryWorkbook();
  await workbook.apply({
    title: 'Garden',
    edits: buildSheets(gardenSheets, await snapshotOf(workbook), wishes),
  });
  const snapshot = await snapshotOf(workbook);
  const garden = readGarden(snapshot);
  const { start, style, reason: overLabelReason } = round;
  const input = roundInput(garden, { start, style, overLabelReason });
  if (Array.isArray(input)) return undefined;
  const plan = planRound(input);
  if ('refused' in plan) return undefined;
  const options = { date: DATE, start, style, overLabelReason };
  await workbook.apply(makeCard(snapshot, garden, { input, plan }, options));
  const carded = await snapshotOf(workbook);
  await workbook.apply(tanksOf(carded, planNow(carded)));
  return workbook;
};

/** What a card shows against the planner: the plan it was compared with, whether it follows, what is wrong. */
export const looked = (snapshot: Snapshot, made: PlannedNow | undefined) => {
  const now = planNow(snapshot);
  const [card, reading] = [shownCard(snapshot), readCard(snapshot)];
  const follows = card.title !== 'Round card: make it again';
  const found = follows ? disagreements(card, reading, now) : shownOutOfDate(card, reading);
  const why = made === undefined ? [] : causes(made, now);
  if (!follows && why.length === 0) found.push(`it says without cause: ${String(card.warning)}`);
  return { now, follows, found, card, reading };
};

/** The same of the sheets' computed columns and the tank sheet, in which nothing but values was typed. */
const lookedAll = (snapshot: Snapshot, made: PlannedNow | undefined) => {
  const { now, follows, found } = looked(snapshot, made);
  const others = [...sheetsDisagree(snapshot, now), ...tanksDisagree(snapshot, now, made ?? now)];
  return { now, follows, found: [...found, ...others] };
};

/** A card opened again plans as it was made, and a card out of date is logged as it was made. */
const readAgain = (snapshot: Snapshot, made: PlannedNow, { round }: MadeGarden): string[] => {
  const reading = readCard(snapshot);
  if (!reading) return ['the card cannot be read back'];
  const { start, style, overLabelReason } = reading;
  const again = roundInput(readGarden(snapshot), {
    start: start * 86_400,
    style,
    ...(overLabelReason === undefined ? {} : { overLabelReason }),
  });
  const plan = Array.isArray(again) ? again : planRound(again);
  const same = JSON.stringify(plan, rounded) === JSON.stringify(made.planned!.plan, rounded);
  return [
    ...(style === round.style && reading.date === DATE ? [] : ['style or date are read back otherwise']),
    ...(same ? [] : ['opened again the card plans otherwise']),
  ];
};

/** Characters of any formula that the program writes. */
const LONGEST = 160;

const tooLong = (snapshot: Snapshot): string[] =>
  snapshot.blocks.flatMap(({ cells }) =>
    cells.flatMap((line) =>
      line.flatMap(({ formula = '' }) =>
        formula.length > LONGEST ? [`${formula.length} characters: ${formula}`] : [],
      ),
    ),
  );

const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(9)) : value;

/**
 * Types a few edits into a card's garden, and looks at the card after each.
 *
 * @param open opens the workbook where its formulas are worked out
 */
export const walkThrough = async (
  garden: MadeGarden,
  draws: readonly Draw[],
  open: (workbook: MemoryWorkbook) => Promise<LiveBook>,
): Promise<Walked> => {
  const workbook = await cardOf(garden);
  if (!workbook) return { made: false, followed: 0, outOfDate: 0, found: [] };
  const book = await open(workbook);
  const found: string[] = [];
  let [followed, outOfDate] = [0, 0];
  try {
    const first = await snapshotOf(book);
    const start = lookedAll(first, undefined);
    const { now: made } = start;
    found.push(...start.found, ...readAgain(first, made, garden), ...tooLong(first));
    if (found.length > 0)
      return { made: true, followed, outOfDate, found: found.map((one) => `as made: ${one}`) };
    const type = async ({ typed }: CellEdit) =>
      book.type(typed.map(({ value, ...cell }) => ({ input: value, ...cell })));
    let trail: CellEdit[] = [];
    for (const draw of draws) {
      const before = await snapshotOf(book);
      const edit = editOf(before, garden.wishes.measures, draw);
      if (!edit) continue;
      const back = backOf(before, edit);
      await type(edit);
      trail = [...trail, back];
      const after = lookedAll(await snapshotOf(book), made);
      if (after.follows) followed += 1;
      else outOfDate += 1;
      const told = trail.map(({ what }) => what.slice('back: '.length)).join('; ');
      found.push(...after.found.map((one) => `${told}: ${one}`));
      if (after.found.length > 0) break;
      if (!draw.back && after.follows) continue;
      await type(back);
      trail = trail.slice(0, -1);
    }
    for (const back of [...trail].reverse()) await type(back);
    if (found.length > 0) return { made: true, followed, outOfDate, found };
    const last = await snapshotOf(book);
    if (JSON.stringify(shownCard(last), rounded) !== JSON.stringify(shownCard(first), rounded))
      found.push('with every cell as it was the card is not');
    return { made: true, followed, outOfDate, found };
  } finally {
    await book.close();
  }
};

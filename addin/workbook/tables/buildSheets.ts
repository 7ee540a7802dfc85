import { only, type Edit } from '../change';
import { WorkbookError, type Snapshot } from '../port';
import { areaNamed, cellAt } from '../snapshot';
import { editsOf, emptyDraft } from './edits';
import { unitName, type Form } from './form';
import {
  lackingWords,
  layOut,
  madeWords,
  placesIn,
  type Layout,
  type SheetSet,
  type SheetWishes,
} from './layOut';
import type { Places } from './template';
import { writeForm } from './writeForm';
import { planTable, writeTable } from './writeTable';

export interface BuiltSheets {
  readonly edits: readonly Edit[];
  /** Where everything stands once the edits are applied. */
  readonly places: Places;
  /** What was made on and beside sheets that were there, in words: the column “Price” on Products. */
  readonly made: readonly string[];
  /** Titles of sheets that got formulas anew. */
  readonly renewed: readonly string[];
}

const namesOf = (form: Form): string[] =>
  Object.values(form.lines).flatMap((line) => [line.name, ...[unitName(line) ?? []].flat()]);

const refuseTakenNames = ({ sites, forms }: Layout, snapshot: Snapshot): void => {
  const needed = [
    ...Object.values(forms).flatMap(({ form, fresh }) =>
      fresh ? namesOf(form).map((name) => ({ name, title: form.title })) : [],
    ),
    ...Object.values(sites).flatMap(({ table, fresh }) =>
      fresh ? (table.heads ?? []).map(({ name }) => ({ name, title: table.title })) : [],
    ),
  ];
  const taken = needed.find(({ name }) => areaNamed(snapshot, name) !== undefined);
  if (taken)
    throw new WorkbookError(
      `The workbook has a name “${taken.name}” already, which the sheet “${taken.title}” needs. Rename or delete it in the list of names, then try again.`,
    );
};

/** Titles of sheets on which formulas are written over others. */
const writtenOver = (formulas: readonly Edit[], snapshot: Snapshot): string[] => [
  ...new Set(
    only(formulas, 'write').flatMap(({ sheet, row, column, cells }) =>
      cells.some((_line, down) => cellAt(snapshot, sheet, row + down, column).formula !== undefined)
        ? [sheet]
        : [],
    ),
  ),
];

/**
 * Edits that make the sheets of a set, or do what an action wants on those that are there. What the user put on them
 * stays: columns, the order of rows and columns, and every entry that the action is not about; no row is ever deleted.
 * What the user took away is not made again unless something is put into it. Doing the same twice changes nothing the
 * second time.
 *
 * @param snapshot with everything on the sheets that hold a table or form of the set
 * @throws WorkbookError where the workbook has a name of its own that a new sheet needs
 */
export const placeSheets = (set: SheetSet, snapshot: Snapshot, wishes: SheetWishes): BuiltSheets => {
  const layout = layOut(set, snapshot, wishes);
  const { sites, forms, newTitles } = layout;
  refuseTakenNames(layout, snapshot);
  const { renew = {} } = wishes;
  const plans = Object.fromEntries(
    Object.entries(sites).map(([key, site]) => [key, planTable(site, snapshot, wishes.tables?.[key])]),
  );
  const added = Object.fromEntries(Object.entries(plans).map(([key, plan]) => [key, plan.added.length]));
  const places = placesIn(layout, snapshot, added);
  const draft = emptyDraft();
  for (const sheet of newTitles) draft.sheets.push({ kind: 'addSheet', sheet });
  for (const [key, site] of Object.entries(sites))
    writeTable(site, snapshot, places, wishes.tables?.[key] ?? {}, plans[key]!, renew, draft);
  for (const [key, site] of Object.entries(forms))
    writeForm(site, snapshot, places, wishes.forms?.[key] ?? {}, wishes.measures, renew, draft);
  return {
    edits: editsOf(draft),
    places,
    made: madeWords(layout),
    renewed: writtenOver(draft.formulas, snapshot),
  };
};

/** The edits alone, for sets that nothing else is built on in the same change. */
export const buildSheets = (set: SheetSet, snapshot: Snapshot, wishes: SheetWishes): readonly Edit[] =>
  placeSheets(set, snapshot, wishes).edits;

/** Where a set's formulas find things on the sheets as they stand; undefined where something is missing. */
export const placesOf = (set: SheetSet, snapshot: Snapshot): Places | undefined => {
  const layout = layOut(set, snapshot, { measures: 'metric' });
  return layout.begun && lackingWords(set, snapshot).length === 0 ? placesIn(layout, snapshot) : undefined;
};

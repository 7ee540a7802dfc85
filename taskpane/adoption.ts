import {
  finished,
  proposeAdoption,
  readListInSteps,
  type AskedSize,
  type Inventory,
  type ListSheet,
  type Meaning,
  type Overrides,
  type Proposal,
  type SizeClass,
} from '../addin/core';

/** What was typed in the pane, by field. */
type Typed = Readonly<Record<string, string>>;

/** A sheet with a grower's list, as it was read. */
export interface ChosenList {
  readonly sheet: string;
  readonly cells: ListSheet;
}

/** How the list is understood with what the user decided. */
export interface Adoption {
  readonly proposal: Proposal;
  readonly inventory: Inventory;
  /** Every question about sizes, answered ones too, so that an answer can be changed. */
  readonly asked: readonly AskedSize[];
}

export const COLUMN_FIELD = 'adopt.column.';
export const SIZE_FIELD = 'adopt.size.';
export const HEADER_FIELD = 'adopt.header';
export const BED_ABOVE_FIELD = 'adopt.bedFromAbove';
export const NO_HEADER = 'none';

const typedUnder = (typed: Typed, prefix: string): [string, string][] =>
  Object.entries(typed).flatMap(([id, value]): [string, string][] =>
    id.startsWith(prefix) && value !== '' ? [[id.slice(prefix.length), value]] : [],
  );

/** What the user decided against the guesses. */
export const overridesFrom = ({ typed }: { readonly typed: Typed }): Overrides => {
  const header = typed[HEADER_FIELD];
  const bedFromAbove = typed[BED_ABOVE_FIELD];
  return {
    ...(header === undefined ? {} : { headerRow: header === NO_HEADER ? null : Number(header) }),
    ...(bedFromAbove === undefined ? {} : { bedFromAbove: bedFromAbove === 'yes' }),
    columns: Object.fromEntries(
      typedUnder(typed, COLUMN_FIELD).map(([column, meaning]) => [column, meaning as Meaning]),
    ),
    sizeClasses: Object.fromEntries(
      typedUnder(typed, SIZE_FIELD).map(([key, size]) => [key, size as SizeClass]),
    ),
  };
};

/** Reads the list as the user decided so far, with pauses: a long one takes a second. */
export const adoptionInSteps = function* (
  { cells }: ChosenList,
  overrides: Overrides,
): Generator<undefined, Adoption> {
  yield;
  const proposal = proposeAdoption(cells, overrides);
  yield;
  const inventory = yield* readListInSteps(cells, proposal);
  if (Object.keys(overrides.sizeClasses ?? {}).length === 0)
    return { proposal, inventory, asked: inventory.asked };
  const { asked } = yield* readListInSteps(cells, { ...proposal, sizeClasses: {} });
  return { proposal, inventory, asked };
};

/** The same without a pause. */
export const adoptionOf = (list: ChosenList, overrides: Overrides): Adoption =>
  finished(adoptionInSteps(list, overrides));

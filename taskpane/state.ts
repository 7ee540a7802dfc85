import type { CardReading } from '../addin/workbook/card/readCard';
import type { Garden, RoundOptions } from '../addin/workbook/garden';
import type { LoggedRound } from '../addin/workbook/log/logRound';
import type { Snapshot } from '../addin/workbook/port';

import type { Overrides } from '../addin/core';

import type { Adoption, ChosenList } from './adoption';
import { readLook } from './paneLook';
import type { CellExplanation } from './cell/explainCell';
import type { Planned } from './planning';
import type { Missing, Preparing } from './sections/missing';
import type { HostServices } from './services';
import type { StepState, View } from './view';

export const SECTION_IDS = ['garden', 'rig', 'mix', 'round', 'log', 'tanks'] as const;
export type SectionId = (typeof SECTION_IDS)[number];

export const isSection = (id: string): id is SectionId => SECTION_IDS.some((known) => known === id);

/** What follows from what the pane knows, worked out once a state. */
export interface Facts {
  /** How the stops before a round stand. */
  readonly steps: Readonly<Record<Preparing, StepState>>;
  /** What a round still needs before it is worth planning, in the order of the way. */
  readonly missing: readonly Missing[];
  /** The round as the sheets and the Round section have it; nothing is planned or refused while something is missing. */
  readonly planned: Planned;
  /** What the Round section added to the sheets when it was planned. */
  readonly options?: RoundOptions;
  /** How the list is understood that is being adopted. */
  readonly adopted?: {
    readonly list: ChosenList;
    readonly overrides: Overrides;
    readonly adoption: Adoption;
  };
}

/** Everything the pane knows; plain data, replaced and never changed. */
export interface PaneState {
  readonly section: SectionId;
  /** True once the user went to a section; until then the pane chooses where to begin. */
  readonly chosen: boolean;
  /** What was typed and is not in the sheets yet, by field. */
  readonly typed: Readonly<Record<string, string>>;
  /** Sections whose main action was refused: from then on what is missing is said as well as what is wrong. */
  readonly tried: readonly SectionId[];
  /** Folds that the user opened or closed, by block. */
  readonly folds: Readonly<Record<string, boolean>>;
  /** Today on the user's calendar, yyyy-mm-dd. */
  readonly today: string;
  readonly measures: 'US' | 'metric';
  /** What the host can do besides. */
  readonly can: { readonly undo: boolean; readonly print: boolean };
  /** How the user prints the card where the host cannot be asked to. */
  readonly howToPrint?: string;
  /** What the sheets hold; undefined until they were read. */
  readonly garden?: Garden;
  /** The cells that the garden was read from; what is written is worked out from them. */
  readonly snapshot?: Snapshot;
  /** The round card as it stands; undefined where there is none or its formulas have no numbers. */
  readonly card?: CardReading;
  /** True where there is a card without numbers. */
  readonly cardWaits: boolean;
  /** True while the host still works out formulas: what was read of them may be from before. */
  readonly calculating?: boolean;
  readonly log?: { readonly rounds: readonly LoggedRound[]; readonly problems: readonly string[] };
  /** Why nothing is written to this workbook; undefined where it is. */
  readonly newer?: string | undefined;
  /** What the user took away of the garden's sheets, in words. */
  readonly lacking: readonly string[];
  /** Sheets of the user's own with something on them: lists that may be adopted. */
  readonly ownSheets: readonly { readonly name: string; readonly rows: number; readonly active: boolean }[];
  /** The list that is being adopted. */
  readonly list?: ChosenList;
  /** True where the workbook changed since the list was read. */
  readonly listStale: boolean;
  /** The sheet whose reading the user stopped. */
  readonly listStopped?: string;
  /** Why the selected cell shows what it shows; undefined where it holds no formula. */
  readonly cell?: CellExplanation;
  readonly message?: View['message'];
  readonly busy?: View['busy'];
  readonly facts: Facts;
}

const NO_STEPS = { garden: { kind: 'empty' }, rig: { kind: 'empty' }, mix: { kind: 'empty' } } as const;

/** Before anything was read; what follows from it is worked out by `withFacts`. */
export const startState = (services: HostServices): PaneState => {
  const { section: kept = '', folds } = readLook(services.keptLook);
  const chosen = isSection(kept);
  return {
    section: chosen ? kept : 'garden',
    chosen,
    typed: {},
    tried: [],
    folds,
    today: services.today(),
    measures: services.measures,
    can: { undo: services.undo !== undefined, print: services.print !== undefined },
    ...(services.howToPrint === undefined ? {} : { howToPrint: services.howToPrint }),
    ownSheets: [],
    lacking: [],
    listStale: false,
    cardWaits: false,
    facts: { steps: NO_STEPS, missing: [], planned: { refusals: [] } },
  };
};

/**
 * The state once what was typed in fields of these beginnings stands in the sheets. What was typed on since `before`
 * is kept.
 */
export const settled =
  (before: PaneState, section: SectionId, ...prefixes: readonly string[]) =>
  (state: PaneState): PaneState => {
    const isWritten = (id: string, value: string): boolean =>
      before.typed[id] === value && prefixes.some((prefix) => id.startsWith(prefix));
    return {
      ...state,
      tried: state.tried.filter((id) => id !== section),
      typed: Object.fromEntries(Object.entries(state.typed).filter(([id, value]) => !isWritten(id, value))),
    };
  };

/** The state once a section's main action was refused: what is missing is said from now on, in opened folds too. */
export const triedIn =
  (section: SectionId, ...folds: readonly string[]) =>
  (state: PaneState): PaneState => ({
    ...state,
    tried: [...new Set([...state.tried, section])],
    folds: { ...state.folds, ...Object.fromEntries(folds.map((fold) => [fold, true])) },
  });

import { whyNoGarden } from './offer';
import { gardenSection } from './sections/garden';
import { isLogged, logSection, logStep } from './sections/log';
import { PREPARING } from './sections/missing';
import { mixSection } from './sections/mix';
import { rigSection } from './sections/rig';
import { cardSheet, roundSection, roundStep } from './sections/round';
import { tanksSection } from './sections/tanks';
import { thisCell } from './sections/thisCell';
import type { PaneState, SectionId } from './state';
import type { Block, Section, Step, StepState, View } from './view';

const LABELS: Readonly<Record<SectionId, string>> = {
  garden: 'Garden',
  rig: 'Rig',
  mix: 'Mix',
  round: 'Round',
  log: 'Log',
  tanks: 'Tank what-if',
};

type StepStates = Readonly<Record<SectionId, StepState>>;

const stepStates = (state: PaneState): StepStates => ({
  ...state.facts.steps,
  round: roundStep(state),
  log: logStep(state),
  tanks: { kind: 'ready' },
});

const stepsOf = (state: PaneState, states: StepStates): Step[] =>
  (Object.keys(LABELS) as SectionId[]).map((id) => ({
    id,
    label: LABELS[id],
    state: states[id],
    current: state.section === id,
    ...(id === 'tanks' ? { beside: true } : {}),
  }));

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, '')}.`;

/** The first stop that keeps a round from being planned, and why. */
const troubleOf = (states: StepStates): View['next'] => {
  if (states.round.kind !== 'attention') return undefined;
  for (const section of [...PREPARING, 'round'] as const) {
    const step = states[section];
    if (step.kind === 'attention') return { section, says: sentence(step.why) };
  }
  return undefined;
};

const afterPlanning = (state: PaneState): View['next'] => {
  if (cardSheet(state) === undefined) return { section: 'round', says: 'Make the card for today.' };
  return state.card !== undefined && !isLogged(state.card, state.log?.rounds ?? [])
    ? { section: 'log', says: 'Feed by the card, then write down what you used.' }
    : undefined;
};

const nextOf = (state: PaneState, states: StepStates): View['next'] => {
  const [missing] = state.facts.missing;
  if (missing !== undefined) return { section: missing.section, says: sentence(missing.why) };
  return troubleOf(states) ?? afterPlanning(state);
};

/** Where the pane opens: at the first thing that is missing, and at today's round where nothing is. */
export const firstSection = (state: PaneState): SectionId => state.facts.missing[0]?.section ?? 'round';

const unread: Section = { id: 'garden', title: 'Garden', answer: 'Reading the workbook…', blocks: [] };

const gardenFirst = (state: PaneState): Section => ({
  id: state.section,
  title: LABELS[state.section],
  answer: 'The garden comes first',
  blocks: [
    { kind: 'text', text: whyNoGarden(state) ?? '' },
    { kind: 'actions', actions: [{ id: 'go.garden', label: 'Go to Garden', primary: true }] },
  ],
});

const sectionOf = (state: PaneState): Section => {
  const { garden } = state;
  if (garden === undefined) return unread;
  if (!garden.has.plants && state.section !== 'garden') return gardenFirst(state);
  switch (state.section) {
    case 'garden':
      return gardenSection(state, garden);
    case 'rig':
      return rigSection(state, garden);
    case 'mix':
      return mixSection(state, garden);
    case 'round':
      return roundSection(state, garden);
    case 'log':
      return logSection(state);
    case 'tanks':
      return tanksSection(state, garden);
  }
};

const STILL_CALCULATING = 'The sheets are written; the grid is still working out their formulas.';

/** The news, and that what was written does not show its results yet. */
const messageOf = ({ message, calculating }: PaneState): View['message'] =>
  message?.undo && calculating ? { ...message, text: `${message.text} ${STILL_CALCULATING}` } : message;

/** What the pane shows in a state. */
export const viewOf = (state: PaneState): View => {
  const section = sectionOf(state);
  const { busy, garden } = state;
  const message = messageOf(state);
  const states = stepStates(state);
  const next = garden === undefined ? undefined : nextOf(state, states);
  const readOnly: Block[] =
    state.newer === undefined ? [] : [{ kind: 'text', tone: 'warning', text: state.newer }];
  return {
    steps: stepsOf(state, states),
    ...(next === undefined ? {} : { next }),
    section: { ...section, blocks: [...readOnly, ...section.blocks, thisCell(state)] },
    ...(message === undefined ? {} : { message }),
    ...(busy === undefined ? {} : { busy }),
  };
};

import { gardenSection, gardenStep } from './sections/garden';
import { isLogged, logSection, logStep } from './sections/log';
import { mixSection, mixStep } from './sections/mix';
import { rigSection, rigStep } from './sections/rig';
import { cardSheet, roundSection, roundStep, type Missing } from './sections/round';
import { tanksSection } from './sections/tanks';
import { thisCell } from './sections/thisCell';
import type { PaneState, SectionId } from './state';
import type { Section, Step, StepState, View } from './view';

const LABELS: Readonly<Record<SectionId, string>> = {
  garden: 'Garden',
  rig: 'Rig',
  mix: 'Mix',
  round: 'Round',
  log: 'Log',
  tanks: 'Tank what-if',
};

const PREPARING = ['garden', 'rig', 'mix'] as const;

/** What is to be done at a stop that has nothing yet, as the end of "Next: …". */
const toBegin = (section: (typeof PREPARING)[number], { garden }: PaneState): string => {
  if (section === 'rig') return 'time a bucket at the wand, and say how big the barrel is';
  if (section === 'mix') return 'say what goes into the barrel';
  return garden?.has.plants
    ? 'type your roses into the Plants sheet, or adopt a list'
    : 'make the plant inventory from your list';
};

const prepared = (state: PaneState): Readonly<Record<(typeof PREPARING)[number], StepState>> => ({
  garden: gardenStep(state),
  rig: rigStep(state),
  mix: mixStep(state),
});

/** What a round still needs before it is worth planning, in the order of the way. */
export const missingOf = (state: PaneState): Missing[] => {
  const steps = prepared(state);
  return PREPARING.filter((section) => steps[section].kind === 'empty').map((section) => ({
    section,
    why: toBegin(section, state),
  }));
};

type StepStates = Readonly<Record<SectionId, StepState>>;

const stepStates = (state: PaneState): StepStates => ({
  ...prepared(state),
  round: roundStep(state, missingOf(state)),
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
  const [missing] = missingOf(state);
  if (missing !== undefined) return { section: missing.section, says: sentence(missing.why) };
  return troubleOf(states) ?? afterPlanning(state);
};

/** Where the pane opens: at the first thing that is missing, and at today's round where nothing is. */
export const firstSection = (state: PaneState): SectionId => missingOf(state)[0]?.section ?? 'round';

const unread: Section = { id: 'garden', title: 'Garden', answer: 'Reading the workbook…', blocks: [] };

const gardenFirst = (section: SectionId): Section => ({
  id: section,
  title: LABELS[section],
  answer: 'The garden comes first',
  blocks: [
    { kind: 'text', text: 'Make the plant inventory from your list, or begin an empty garden.' },
    { kind: 'actions', actions: [{ id: 'go.garden', label: 'Go to Garden', primary: true }] },
  ],
});

const sectionOf = (state: PaneState): Section => {
  const { garden } = state;
  if (garden === undefined) return unread;
  if (!garden.has.plants && state.section !== 'garden') return gardenFirst(state.section);
  switch (state.section) {
    case 'garden':
      return gardenSection(state, garden);
    case 'rig':
      return rigSection(state, garden);
    case 'mix':
      return mixSection(state, garden);
    case 'round':
      return roundSection(state, garden, missingOf(state));
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
  return {
    steps: stepsOf(state, states),
    ...(next === undefined ? {} : { next }),
    section: { ...section, blocks: [...section.blocks, thisCell(state)] },
    ...(message === undefined ? {} : { message }),
    ...(busy === undefined ? {} : { busy }),
  };
};

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

/** What is to be done at a stop that has nothing yet, as the end of "Next: …". */
const FIRST: Readonly<Record<'garden' | 'rig' | 'mix', string>> = {
  garden: 'make the plant inventory from your list',
  rig: 'time a bucket at the wand, and say how big the barrel is',
  mix: 'say what goes into the barrel',
};

const prepared = (state: PaneState): Readonly<Record<'garden' | 'rig' | 'mix', StepState>> => ({
  garden: gardenStep(state),
  rig: rigStep(state),
  mix: mixStep(state),
});

/** What a round still needs, in the order of the way. */
export const missingOf = (state: PaneState): Missing[] =>
  (['garden', 'rig', 'mix'] as const).flatMap((section): Missing[] => {
    const step = prepared(state)[section];
    if (step.kind === 'ready') return [];
    return [{ section, why: step.kind === 'empty' ? FIRST[section] : step.why }];
  });

const stepStates = (state: PaneState): Readonly<Record<SectionId, StepState>> => ({
  ...prepared(state),
  round: roundStep(state, missingOf(state)),
  log: logStep(state),
  tanks: { kind: 'ready' },
});

const stepsOf = (state: PaneState, states: Readonly<Record<SectionId, StepState>>): Step[] =>
  (Object.keys(LABELS) as SectionId[]).map((id) => ({
    id,
    label: LABELS[id],
    state: states[id],
    current: state.section === id,
    ...(id === 'tanks' ? { beside: true } : {}),
  }));

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, '')}.`;

const nextOf = (state: PaneState): View['next'] => {
  const [missing] = missingOf(state);
  if (missing !== undefined) return { section: missing.section, says: sentence(missing.why) };
  if (cardSheet(state) === undefined) return { section: 'round', says: 'Make the card for today.' };
  return state.card !== undefined && !isLogged(state.card, state.log?.rounds ?? [])
    ? { section: 'log', says: 'Feed by the card, then write down what you used.' }
    : undefined;
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

/** What the pane shows in a state. */
export const viewOf = (state: PaneState): View => {
  const section = sectionOf(state);
  const { message, busy, garden } = state;
  const next = garden === undefined ? undefined : nextOf(state);
  return {
    steps: stepsOf(state, stepStates(state)),
    ...(next === undefined ? {} : { next }),
    section: { ...section, blocks: [...section.blocks, thisCell(state)] },
    ...(message === undefined ? {} : { message }),
    ...(busy === undefined ? {} : { busy }),
  };
};

import { andList } from '../../addin/workbook/fields/holds';
import type { Garden } from '../../addin/workbook/garden';
import { askChoice } from '../asked';
import { adopting, AGAIN_FOLD, SHEET_FIELD, sheetToAdopt } from '../chosenList';
import { offered, offeredOnly, UNREAD, whyNoGarden, type WhyNot } from '../offer';
import { plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Button, Block, Section, StepState } from '../view';

import { adoptBlocks } from './adoptList';
import { fold } from './fold';
import { goingOn, keeping } from './leading';
import { askBeds, askDoses, bedsBlock, dosesBlock, gardenSentence, sizesWithoutDose } from './gardenBeds';
import { problemBlocks } from './problems';

const hasRoses = ({ plants }: Garden): boolean => plants.some(({ howMany }) => howMany > 0);

/** Whether the sheets hold plants to feed, each with a dose. */
export const gardenStep = ({ garden }: PaneState): StepState => {
  if (garden === undefined || !garden.has.plants) return { kind: 'empty' };
  const wrong = garden.problems.find(({ place }) => place === 'garden' || place === 'doses');
  if (wrong !== undefined) return { kind: 'attention', why: wrong.sentence };
  if (!hasRoses(garden)) return { kind: 'empty' };
  const without = sizesWithoutDose(garden);
  const blank = garden.doses
    .filter(
      ({ sizeClass, dose }) =>
        dose === undefined &&
        garden.plants.some((plant) => plant.sizeClass === sizeClass && plant.howMany > 0),
    )
    .map(({ sizeClass }) => sizeClass);
  if (without.length + blank.length > 0)
    return { kind: 'attention', why: `no dose is given for ${andList([...without, ...blank])}` };
  return { kind: 'ready', says: gardenSentence(garden) };
};

const sheetField = (state: PaneState): Block => ({
  kind: 'fields',
  fields: [
    askChoice(state, {
      section: 'garden',
      id: SHEET_FIELD,
      label: 'Your list is on the sheet',
      known: sheetToAdopt(state) ?? '',
      choices: state.ownSheets.map(({ name, rows }) => ({
        value: name,
        label: `${name} (${plural(rows, 'row')})`,
      })),
    }).field,
  ],
});

const AGAIN = 'Adopt another list';

/** The list must have been looked at as it is now, and adopting it be under way. */
export const whyNotAdopt: WhyNot = (state) => {
  const { garden, list, listStale, ownSheets, section, facts } = state;
  if (garden === undefined) return UNREAD;
  if (ownSheets.length === 0)
    return garden.has.plants
      ? 'This workbook holds no other list: put one on a sheet of its own first.'
      : 'This workbook holds no list of roses yet: open the workbook with your list, or begin an empty garden.';
  if (!adopting(state))
    return `The plant inventory is made already. To add a list to it, open “${AGAIN}” under Garden first.`;
  // What changed is read again only while the garden shows.
  const changed = list?.sheet !== sheetToAdopt(state) || (section !== 'garden' && listStale);
  if (facts.adopted === undefined || changed)
    return section === 'garden'
      ? 'Choose the sheet with your list first.'
      : 'Open Garden first, and look at how your list is read.';
  return facts.adopted.adoption.inventory.plants.length > 0
    ? undefined
    : 'No rose was read from this list yet: choose another sheet, or say what its columns hold.';
};

export const whyNotBegin: WhyNot = ({ garden }) => {
  if (garden === undefined) return UNREAD;
  return garden.has.plants
    ? 'This workbook holds a garden already: type more roses into its Plants sheet.'
    : undefined;
};

const newGarden = (state: PaneState, primary: boolean): Button[] =>
  offeredOnly(state, whyNotBegin, {
    id: 'garden.new',
    label: 'Begin an empty garden',
    ...(primary ? { primary } : {}),
  });

/** The sheets to choose from and how the chosen list is understood. */
const adoptionBlocks = (state: PaneState): Block[] => {
  const { list, facts } = state;
  if (list === undefined || facts.adopted === undefined) return [sheetField(state)];
  const action = offered(state, whyNotAdopt, {
    id: 'garden.adopt',
    label: 'Make the plant inventory',
    primary: true,
  });
  return [sheetField(state), ...adoptBlocks(state, list, facts.adopted.adoption, action)];
};

const adoptionAnswer = ({ listStopped, facts }: PaneState): string => {
  if (facts.adopted === undefined)
    return listStopped === undefined ? 'Reading your list…' : 'Choose the sheet with your list';
  return facts.adopted.adoption.inventory.outcome.replace(/\.$/, '');
};

const beforeAdoption = (state: PaneState): Section => {
  if (state.ownSheets.length === 0)
    return {
      id: 'garden',
      title: 'Garden',
      answer: 'This workbook holds no list of roses yet',
      blocks: [
        {
          kind: 'text',
          text: 'Open the workbook with your list, or begin an empty garden and type your roses into its Plants sheet.',
        },
        { kind: 'actions', actions: newGarden(state, true) },
      ],
    };
  return {
    id: 'garden',
    title: 'Garden',
    answer: adoptionAnswer(state),
    blocks: [
      ...adoptionBlocks(state),
      fold(state, 'garden.empty', 'Begin without a list', [
        { kind: 'text', text: 'Makes empty sheets for plants, beds, doses, rig and mix.' },
        { kind: 'actions', actions: newGarden(state, false) },
      ]),
    ],
  };
};

export const whyNotRestore: WhyNot = (state) =>
  whyNoGarden(state) ?? (state.lacking.length > 0 ? undefined : 'Nothing is missing on the sheets.');

/** What was taken away may have been taken away on purpose: it is offered, and not put back unasked. */
const lackingBlocks = (state: PaneState): Block[] =>
  state.lacking.length === 0
    ? []
    : [
        {
          kind: 'text',
          tone: 'quiet',
          text: `The sheets had more once: ${andList(state.lacking)}. It can be put back, without what stood in it.`,
        },
        { kind: 'actions', actions: [{ id: 'garden.restore', label: 'Put it back' }] },
      ];

const READY: StepState = { kind: 'ready' };

export const gardenSection = (state: PaneState, garden: Garden): Section => {
  if (!garden.has.plants) return beforeAdoption(state);
  const without = sizesWithoutDose(garden);
  const step = gardenStep(state);
  const blocks: Block[] = [
    ...problemBlocks(garden.problems, ['garden', 'doses']),
    ...lackingBlocks(state),
    ...(without.length === 0
      ? []
      : [
          {
            kind: 'text',
            tone: 'warning',
            text: `No dose is given for ${andList(without)}: add it on the Doses sheet.`,
          } as const,
        ]),
    ...(hasRoses(garden)
      ? []
      : [
          {
            kind: 'text',
            text: `Type your roses into the Plants sheet${state.ownSheets.length > 0 ? ', or adopt a list below' : ''}.`,
          } as const,
        ]),
    dosesBlock(askDoses(state, garden)),
    {
      kind: 'actions',
      actions: [keeping(state, step, ['dose.'], { id: 'doses.keep', label: 'Keep the doses' })],
    },
    bedsBlock(state, garden, askBeds(state, garden)),
    {
      kind: 'actions',
      actions: [
        keeping(state, READY, ['bed.'], { id: 'beds.keep', label: 'Keep the walk' }),
        ...(adopting(state) ? [] : goingOn(state, step, ['dose.', 'bed.'], { id: 'rig', label: 'Rig' })),
      ],
    },
    ...(state.ownSheets.length === 0
      ? []
      : [fold(state, AGAIN_FOLD, AGAIN, adopting(state) ? adoptionBlocks(state) : [])]),
  ];
  return {
    id: 'garden',
    title: 'Garden',
    answer: hasRoses(garden) ? gardenSentence(garden) : 'The plant inventory is empty',
    blocks,
  };
};

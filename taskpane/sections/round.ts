import { overLabel } from '../../addin/core';
import type { Refusal, RoundInput, RoundPlan } from '../../addin/core';
import { CARD } from '../../addin/workbook/card/cardNames';
import type { Garden, RoundOptions } from '../../addin/workbook/garden';
import { areaNamed } from '../../addin/workbook/snapshot';
import { askChoice, askText, askToggle } from '../asked';
import { offeredOnly, whyNoGarden, type WhyNot } from '../offer';
import { mixProductsOf } from '../planning';
import type { PaneState } from '../state';
import { clockTime, readClock, readDay } from '../time';
import type { Button, Block, Section, StepState } from '../view';

import { fold } from './fold';
import type { Missing, Preparing } from './missing';
import { countsBlock, fillsBlock, foodBlock, roundSentence, totalsBlock } from './roundPlan';

/** Warnings of this plan, said above it; the other cautions stand below. */
const ABOVE = ['over-label', 'count-rounding', 'plain-water'];

const STEP_LABELS: Readonly<Record<Preparing, string>> = { garden: 'Garden', rig: 'Rig', mix: 'Mix' };

/** When the last card began; a cool hour of the morning before there is one. */
const usualStart = ({ card }: PaneState): string => {
  if (card === undefined) return '07:00';
  const minutes = Math.round(card.start * 1440) % 1440;
  return clockTime(minutes * 60).padStart('07:00'.length, '0');
};

/** Letters that stand on one line of a printed card. */
const LONGEST_REASON = 90;

export const askRound = (state: PaneState, garden: Garden) => {
  const { card } = state;
  const mix = mixProductsOf(garden);
  const over = 'refused' in mix ? [] : overLabel(mix);
  const unread = garden.problems.some(({ place }) => place === 'garden');
  return {
    date: askText(state, {
      section: 'round',
      id: 'round.date',
      label: 'Day',
      kind: 'date',
      known: state.today,
      read: readDay,
      allowed: 'a day such as 2026-05-03',
      required: true,
    }),
    start: askText(state, {
      section: 'round',
      id: 'round.start',
      label: 'Start',
      kind: 'time',
      known: usualStart(state),
      read: (text) => (readClock(text) === undefined ? undefined : text),
      allowed: 'a time from 0:00 to 23:59',
      required: true,
    }),
    style: askChoice(state, {
      section: 'round',
      id: 'round.style',
      label: 'Fills',
      known: card?.style ?? garden.settings.fillStyle,
      choices: [
        { value: 'full', label: 'Full barrels and a short last one' },
        { value: 'equal', label: 'All the same size' },
      ],
    }),
    reason: askText(state, {
      section: 'round',
      id: 'round.reason',
      label: 'Why above the label?',
      // A reason was given for what the card was made for, and for nothing else.
      known: card?.outOfDate === undefined ? card?.overLabelReason : undefined,
      help: `${over.map(({ name }) => name).join(', ')}: the reason is written on the card.`,
      read: (text) => (text.length <= LONGEST_REASON ? text : undefined),
      allowed: `at most ${LONGEST_REASON} letters, so that it stands on one line of the card`,
    }),
    overLabel: over.length > 0,
    leaveOut: askToggle(state, {
      section: 'round',
      id: 'round.leaveOut',
      label: 'Plan without the plant rows that could not be read',
      known: card?.leaveOutUnread ?? false,
    }),
    unread,
  };
};

export const roundAnswers = (asked: ReturnType<typeof askRound>): RoundOptions => ({
  start: readClock(asked.start.value ?? '') ?? 0,
  style: asked.style.value === 'equal' ? 'equal' : 'full',
  ...(asked.overLabel && asked.reason.value !== undefined ? { overLabelReason: asked.reason.value } : {}),
  leaveOutUnread: asked.unread && asked.leaveOut.value === true,
});

const leads = (sections: readonly Preparing[]): Button[] =>
  sections.map((section, index) => ({
    id: `go.${section}`,
    label: `Go to ${STEP_LABELS[section]}`,
    ...(index === 0 ? { primary: true } : {}),
  }));

const missingBlocks = (state: PaneState, missing: readonly Missing[]): Block[] => [
  { kind: 'heading', text: 'What it needs' },
  { kind: 'steps', items: missing.map(({ section, why }) => `${STEP_LABELS[section]}: ${why}`) },
  {
    kind: 'actions',
    actions: [...leads(missing.map(({ section }) => section)), ...offeredOnly(state, whyNoPrint, PRINT)],
  },
];

/** The sheet of the round card; undefined where there is none. */
export const cardSheet = ({ snapshot }: PaneState): string | undefined =>
  snapshot && areaNamed(snapshot, CARD)?.sheet;

export const whyNoCard: WhyNot = (state) => {
  const { garden } = state;
  const none = whyNoGarden(state);
  if (garden === undefined || none !== undefined) return none;
  const [missing] = state.facts.missing;
  if (missing !== undefined)
    return `This round is not ready to plan. First, under ${STEP_LABELS[missing.section]}: ${missing.why}.`;
  const { planned } = state.facts;
  return 'refusals' in planned ? planned.refusals[0]?.refused : undefined;
};

export const whyNoPrint: WhyNot = (state) => {
  const none = whyNoGarden(state);
  if (none !== undefined) return none;
  if (cardSheet(state) === undefined) return 'There is no card to print: make the card first.';
  if (state.cardWaits) return 'The card cannot be read: look at it, or make it again, and print it then.';
  if (state.card?.outOfDate !== undefined) return state.card.outOfDate;
  return state.can.print ? undefined : (state.howToPrint ?? 'Print the card from its sheet.');
};

const PRINT: Button = { id: 'round.print', label: 'Print the card' };

const planBlocks = (state: PaneState, garden: Garden, input: RoundInput, plan: RoundPlan): Block[] => {
  const loud = plan.cautions.filter(({ id }) => ABOVE.includes(id));
  const usual = plan.cautions.filter(({ id }) => !ABOVE.includes(id));
  return [
    ...loud.map(({ text }): Block => ({ kind: 'text', text, tone: 'warning' })),
    countsBlock(garden, plan),
    fillsBlock(garden, input, plan),
    totalsBlock(garden, plan),
    fold(state, 'round.food', 'Food for each plant', [foodBlock(plan)]),
    { kind: 'cautions', items: usual.map(({ text }) => text) },
  ];
};

/** Whether a round can be planned from what the sheets hold. */
export const roundStep = (state: PaneState): StepState => {
  const { garden } = state;
  const { missing, planned } = state.facts;
  if (garden === undefined || missing.length > 0) return { kind: 'empty' };
  if ('refusals' in planned) return { kind: 'attention', why: planned.refusals[0]?.refused ?? '' };
  return { kind: 'ready', says: roundSentence(garden, planned.input, planned.plan) };
};

const MENDED_AT: Readonly<Record<Refusal['place'], Preparing | undefined>> = {
  garden: 'garden',
  doses: 'garden',
  rig: 'rig',
  mix: 'mix',
  round: undefined,
};

const REFUSALS_SHOWN = 5;

/** Why this round is not planned, and where each reason is mended. */
const refusedSection = (state: PaneState, refusals: readonly Refusal[], fields: Block): Section => {
  const places = [...new Set(refusals.flatMap(({ place }) => MENDED_AT[place] ?? []))];
  const actions = [...leads(places), ...offeredOnly(state, whyNoPrint, PRINT)];
  return {
    id: 'round',
    title: 'Round',
    answer: 'This round cannot be planned yet',
    blocks: [
      ...refusals
        .slice(0, REFUSALS_SHOWN)
        .map(({ refused }): Block => ({ kind: 'text', text: refused, tone: 'warning' })),
      ...staleBlocks(state),
      fields,
      ...(actions.length === 0 ? [] : [{ kind: 'actions', actions } as const]),
    ],
  };
};

/** Why the card that stands there is not to be fed by. */
const staleBlocks = ({ card }: PaneState): Block[] =>
  card?.outOfDate === undefined
    ? []
    : [{ kind: 'text', tone: 'warning', text: `The card: ${card.outOfDate}` }];

export const roundSection = (state: PaneState, garden: Garden): Section => {
  const { missing, planned } = state.facts;
  const asked = askRound(state, garden);
  const fields: Block = {
    kind: 'fields',
    fields: [
      asked.date.field,
      asked.start.field,
      asked.style.field,
      ...(asked.overLabel ? [asked.reason.field] : []),
      ...(asked.unread ? [asked.leaveOut.field] : []),
    ],
  };
  if (missing.length > 0)
    return {
      id: 'round',
      title: 'Round',
      answer: 'This round is not ready to plan',
      blocks: missingBlocks(state, missing),
    };
  if ('refusals' in planned) return refusedSection(state, planned.refusals, fields);
  const card: Button[] = [
    ...offeredOnly(state, whyNoCard, { id: 'round.card', label: 'Make the card', primary: true }),
    ...offeredOnly(state, whyNoPrint, PRINT),
  ];
  return {
    id: 'round',
    title: 'Round',
    answer: roundSentence(garden, planned.input, planned.plan),
    blocks: [
      fields,
      ...staleBlocks(state),
      { kind: 'actions', actions: card },
      ...(state.howToPrint !== undefined &&
      whyNoPrint({ ...state, can: { ...state.can, print: true } }) === undefined
        ? [{ kind: 'text', text: state.howToPrint, tone: 'quiet' } as const]
        : []),
      ...planBlocks(state, garden, planned.input, planned.plan),
    ],
  };
};

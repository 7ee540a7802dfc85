import { findUnit, measure } from '../../addin/core';
import type { CardProductReading, CardReading } from '../../addin/workbook/card/readCard';
import { andList } from '../../addin/workbook/fields/holds';
import type { LoggedRound, RoundFed } from '../../addin/workbook/log/logRound';
import { askChoice, askNumber, askText, firstFault } from '../asked';
import { offeredOnly, whyNoGarden, type WhyNot } from '../offer';
import { plural, shortNumber } from '../quantityWords';
import type { PaneState } from '../state';
import { dayInWords, dayOfSerial, readDay, serialDay } from '../time';
import type { Block, Section, StepState } from '../view';

const RECENT = 6;

/** The newest round of the card's day and mix in the log. */
const loggedAs = (card: CardReading, rounds: readonly LoggedRound[]): LoggedRound | undefined =>
  rounds.find(({ date, mix }) => date === card.date && mix === card.mix);

/** True where the log holds a round of the card's day and mix. */
export const isLogged = (card: CardReading, rounds: readonly LoggedRound[]): boolean =>
  loggedAs(card, rounds) !== undefined;

const volume = (value: number, unit: string): string => `${shortNumber(value)} ${unit}`;

const pumpedOut = ({ madeUp, leftOver, need, unit }: LoggedRound): string => {
  const out = madeUp - leftOver;
  const share = need === undefined || !(need > 0) ? '' : `, ${Math.round((out / need) * 100)} % of the plan`;
  return `${volume(out, unit)}${share}`;
};

const FED_BY = 'log.fedBy';

/** Which of the two the user fed by, where the card has followed a change since it was made. */
const askFedBy = (state: PaneState) =>
  askChoice(state, {
    section: 'log',
    id: FED_BY,
    label: 'You fed by',
    known: 'now',
    choices: [
      { value: 'now', label: 'the card as it is now' },
      { value: 'made', label: 'the card as it was made' },
    ],
  });

/** What is logged: the card as it is, or as it was made where the user fed by that. */
export const cardFed = (state: PaneState, { asMade, ...now }: CardReading): CardReading =>
  asMade !== undefined && askFedBy(state).value === 'made' ? asMade : now;

const amountWords = ({ product, amount, unit }: CardProductReading): string =>
  `${amount > 0 ? (measure(amount, findUnit(unit)!)?.words ?? `${shortNumber(amount)} ${unit}`) : 'none'} of ${product}`;

/** A round by what differs between two of them. */
const fedWords = ({ fills, madeUp, unit, products }: CardReading): string =>
  andList([plural(fills, 'fill'), `${volume(madeUp, unit)} made up`, ...products.map(amountWords)]);

const followedBlocks = (state: PaneState, { asMade, ...now }: CardReading): Block[] =>
  asMade === undefined
    ? []
    : [
        {
          kind: 'text',
          tone: 'warning',
          text: `The sheets have changed since the card was made. Now it says ${fedWords(now)}; it was made with ${fedWords(asMade)}. Say below which one you fed by.`,
        },
        { kind: 'fields', fields: [askFedBy(state).field] },
      ];

export const askLog = (state: PaneState, card: CardReading) => {
  const madeUp = askNumber(state, {
    section: 'log',
    id: 'log.madeUp',
    label: 'Made up',
    known: card.madeUp,
    figures: 4,
    unit: card.unit,
    range: { above: 0 },
    required: true,
    help: 'Water and products together, all fills.',
  });
  return {
    date: askText(state, {
      section: 'log',
      id: 'log.date',
      label: 'Day',
      kind: 'date',
      known: dayOfSerial(card.date),
      read: readDay,
      allowed: 'a day such as 2026-05-03',
      required: true,
    }),
    fills: askNumber(state, {
      section: 'log',
      id: 'log.fills',
      label: 'Fills',
      known: card.fills,
      range: { least: 0, whole: true },
      required: true,
    }),
    madeUp,
    leftOver: askNumber(state, {
      section: 'log',
      id: 'log.leftOver',
      label: 'Left over',
      known: Math.max(0, card.madeUp - card.need),
      figures: 3,
      unit: card.unit,
      range: { least: 0, most: madeUp.value ?? card.madeUp },
      required: true,
      help: 'In the barrel at the end, and at each move.',
    }),
    notes: askText(state, { section: 'log', id: 'log.notes', label: 'Notes' }),
  };
};

export type LogAnswers = ReturnType<typeof askLog>;

export const logFault = (asked: LogAnswers): string | undefined => firstFault(Object.values(asked));

/** What the grower says of the round; call it only where `logFault` finds nothing. */
export const roundFed = (asked: LogAnswers, today: string): RoundFed => ({
  date: serialDay(asked.date.value ?? today),
  leftOver: asked.leftOver.value ?? 0,
  ...(asked.madeUp.value === undefined ? {} : { madeUp: asked.madeUp.value }),
  ...(asked.fills.value === undefined ? {} : { fills: asked.fills.value }),
  notes: asked.notes.value ?? '',
});

const recentBlocks = (rounds: readonly LoggedRound[]): Block[] =>
  rounds.length === 0
    ? []
    : [
        {
          kind: 'table',
          table: {
            id: 'log.recent',
            caption: 'Last rounds',
            columns: [{ label: 'Day' }, { label: 'Mix' }, { label: 'Pumped out', numeric: true }],
            rows: rounds
              .slice(0, RECENT)
              .map((round) => [dayInWords(dayOfSerial(round.date)), round.mix, pumpedOut(round)]),
          },
        },
      ];

/** Whether rounds are logged, and whether an earlier card waits to be. */
export const logStep = ({ card, log, today }: PaneState): StepState => {
  const rounds = log?.rounds ?? [];
  if (card !== undefined && !isLogged(card, rounds) && dayOfSerial(card.date) < today)
    return { kind: 'attention', why: `the round of ${dayInWords(dayOfSerial(card.date))} is not logged yet` };
  const [last] = rounds;
  return last === undefined
    ? { kind: 'empty' }
    : { kind: 'ready', says: `last round ${dayInWords(dayOfSerial(last.date))}` };
};

export const whyNoLog: WhyNot = (state) => {
  const none = whyNoGarden(state);
  if (none !== undefined || state.card !== undefined) return none;
  return state.cardWaits
    ? 'The card has no numbers to log yet: look at it first, or make it again.'
    : 'There is no card to log: make the card first.';
};

const withoutCard = (state: PaneState, rounds: readonly LoggedRound[]): Section => ({
  id: 'log',
  title: 'Log',
  answer: state.cardWaits ? 'The card has no numbers yet' : 'Make a card, feed by it, then log it here',
  blocks: [
    state.cardWaits
      ? {
          kind: 'text',
          text: 'Its formulas are not worked out yet, or one of them shows an error. Look at the card, or make it again.',
        }
      : {
          kind: 'text',
          text: 'The log takes its numbers from the round card and asks only what went differently.',
        },
    { kind: 'actions', actions: [{ id: 'go.round', label: 'Go to Round', primary: true }] },
    ...recentBlocks(rounds),
  ],
});

export const logSection = (state: PaneState): Section => {
  const rounds = state.log?.rounds ?? [];
  const problems = (state.log?.problems ?? []).map((text): Block => ({
    kind: 'text',
    text,
    tone: 'warning',
  }));
  if (state.card === undefined) return withoutCard(state, rounds);
  const card = cardFed(state, state.card);
  const asked = askLog(state, card);
  const day = dayInWords(dayOfSerial(card.date));
  const logged = loggedAs(card, rounds);
  const done = logged !== undefined;
  const asMade = card.outOfDate !== undefined || card === state.card.asMade;
  const told = logged ?? card;
  const already: Block[] = done
    ? [
        {
          kind: 'text',
          tone: 'good',
          text: 'This card is in the log. Write again only if you fed by it twice.',
        },
      ]
    : [];
  const stale: Block[] =
    card.outOfDate === undefined ? [] : [{ kind: 'text', tone: 'warning', text: card.outOfDate }];
  return {
    id: 'log',
    title: 'Log',
    answer: `${done ? 'Logged: ' : ''}${day}, ${plural(told.fills, 'fill')}, ${volume(told.madeUp, told.unit)} made up`,
    blocks: [
      ...problems,
      ...stale,
      ...already,
      ...followedBlocks(state, state.card),
      {
        kind: 'text',
        tone: 'quiet',
        text: `As the card planned it${asMade ? ' when it was made' : ''}. Change what went differently.`,
      },
      {
        kind: 'fields',
        fields: [
          asked.date.field,
          asked.fills.field,
          asked.madeUp.field,
          asked.leftOver.field,
          asked.notes.field,
        ],
      },
      {
        kind: 'actions',
        actions: offeredOnly(state, whyNoLog, {
          id: 'log.write',
          label: 'Write the log line',
          ...(done ? {} : { primary: true }),
        }),
      },
      ...recentBlocks(rounds),
    ],
  };
};

import { makeCard } from '../../addin/workbook/card/makeCard';
import { did, refused, type Act, type Action } from '../action';
import { firstFault } from '../asked';
import { askRound, cardSheet, roundAnswers, whyNoCard, whyNoPrint } from '../sections/round';
import { roundSentence } from '../sections/roundPlan';
import { triedIn } from '../state';
import { readClock, serialDay } from '../time';

import { bookOf } from './bookOf';

const card: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askRound(state, garden);
  const fault = firstFault([asked.date, asked.start, asked.reason]);
  if (fault !== undefined) return refused(fault, triedIn('round'));
  const options = roundAnswers(asked);
  const { planned } = state.facts;
  if ('refusals' in planned) return refused(planned.refusals[0]?.refused ?? '', triedIn('round'));
  const change = makeCard(snapshot, garden, planned, {
    date: serialDay(asked.date.value ?? state.today),
    start: readClock(asked.start.value ?? '') ?? 0,
    style: options.style ?? garden.settings.fillStyle,
    leaveOutUnread: options.leaveOutUnread === true,
    ...(options.overLabelReason === undefined ? {} : { overLabelReason: options.overLabelReason }),
  });
  return did(`Made the card: ${roundSentence(garden, planned.input, planned.plan)}.`, change);
};

const print: Act = async (state, { services }) => {
  await services.print?.(cardSheet(state)!);
  return did('Handed the card to the printer.');
};

export const roundActions: Readonly<Record<string, Action>> = {
  'round.card': { whyNot: whyNoCard, act: card },
  'round.print': { whyNot: whyNoPrint, act: print },
};

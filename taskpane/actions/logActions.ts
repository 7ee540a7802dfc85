import { logRound } from '../../addin/workbook/log/logRound';
import { did, refused, type Act, type Action } from '../action';
import { askLog, cardFed, logFault, roundFed, whyNoLog } from '../sections/log';
import { settled, triedIn } from '../state';
import { dayInWords } from '../time';

import { bookOf } from './bookOf';

const write: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const card = cardFed(state, state.card!);
  const asked = askLog(state, card);
  const fault = logFault(asked);
  if (fault !== undefined) return refused(fault, triedIn('log'));
  const fed = roundFed(asked, state.today);
  const change = logRound(snapshot, garden.settings.measures, card, fed);
  return did(
    `Wrote the round of ${dayInWords(asked.date.value ?? state.today)} into the log, and what each product took.`,
    change,
    settled(state, 'log', 'log.'),
  );
};

export const logActions: Readonly<Record<string, Action>> = {
  'log.write': { whyNot: whyNoLog, act: write },
};

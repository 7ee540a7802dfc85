import type { Meaning } from '../addin/core';

import { COLUMN_FIELD } from './adoption';
import { SHEET_FIELD } from './chosenList';
import type { PaneState } from './state';

/** What several columns of a list may hold. */
const OFTEN: readonly string[] = ['notes', 'leftOut'] satisfies readonly Meaning[];

/** The column chosen last holds it; the one chosen before for the same goes back to its guess. */
const withoutSame = (typed: PaneState['typed'], field: string, value: string): PaneState['typed'] =>
  !field.startsWith(COLUMN_FIELD) || OFTEN.includes(value)
    ? typed
    : Object.fromEntries(
        Object.entries(typed).filter(([id, other]) => !id.startsWith(COLUMN_FIELD) || other !== value),
      );

/** The state after a field was typed in. Another list begins with its own guesses. */
export const afterTyping = (state: PaneState, field: string, value: string): PaneState => {
  const typed = { ...withoutSame(state.typed, field, value), [field]: value };
  if (field !== SHEET_FIELD) return { ...state, typed };
  const kept = Object.entries(typed).filter(([id]) => id === SHEET_FIELD || !id.startsWith('adopt.'));
  return { ...state, typed: Object.fromEntries(kept), listStopped: undefined };
};

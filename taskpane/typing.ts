import { SHEET_FIELD } from './chosenList';
import type { PaneState } from './state';

/** The state after a field was typed in. Another list begins with its own guesses. */
export const afterTyping = (state: PaneState, field: string, value: string): PaneState => {
  const typed = { ...state.typed, [field]: value };
  if (field !== SHEET_FIELD) return { ...state, typed };
  const kept = Object.entries(typed).filter(([id]) => id === SHEET_FIELD || !id.startsWith('adopt.'));
  return { ...state, typed: Object.fromEntries(kept), listStopped: undefined };
};

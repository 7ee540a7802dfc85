import type { PaneState } from './state';
import type { Button } from './view';

/** Why an action cannot be done in a state: one sentence that says what to do first. Undefined where it can. */
export type WhyNot = (state: PaneState) => string | undefined;

export const UNREAD = 'The workbook is not read yet. Try again in a moment.';

/** What all but the first steps need: sheets of a garden. */
export const whyNoGarden: WhyNot = ({ garden, ownSheets }) => {
  if (garden === undefined) return UNREAD;
  if (garden.has.plants) return undefined;
  return ownSheets.length > 0
    ? 'Make the plant inventory from your list first, or begin an empty garden.'
    : 'Begin an empty garden first, and type your roses into its Plants sheet.';
};

/** A button with the reason beside it where it cannot be pressed. */
export const offered = (state: PaneState, whyNot: WhyNot, action: Button): Button => {
  const why = whyNot(state);
  return why === undefined ? action : { ...action, disabled: true, why };
};

/** A button that is not there where it cannot be pressed. */
export const offeredOnly = (state: PaneState, whyNot: WhyNot, action: Button): Button[] =>
  whyNot(state) === undefined ? [action] : [];

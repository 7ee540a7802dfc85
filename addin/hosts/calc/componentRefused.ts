import { WorkbookError } from '../../workbook/port';
import words from './words.json';

/** What the component names where it does not do what it was asked, though nothing is wrong with it. */
const SENTENCES = {
  closed: 'The workbook is closed.',
  noSheet: words.noSheet,
  notComputed: 'Calc does not compute this function on plain values.',
} as const;

export type RefusalReason = keyof typeof SENTENCES;

/** An expected refusal of the component. */
export class ComponentRefused extends WorkbookError {
  constructor(readonly reason: RefusalReason) {
    super(SENTENCES[reason]);
  }
}

/** What the user reads where the component failed at something; its own words go into the log. */
export const failedAt = (what: string, cause: unknown): WorkbookError =>
  cause instanceof WorkbookError
    ? cause
    : new WorkbookError(`${what} Try again; the log, in the menu Rose feeding, says more.`, { cause });

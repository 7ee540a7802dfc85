import { WorkbookError } from '../../workbook/port';
import words from './words.json';

/** What the component names where it does not do what it was asked, though nothing is wrong with it. */
const SENTENCES = {
  closed: 'The workbook is closed.',
  noSheet: words.noSheet,
} as const;

export type RefusalReason = keyof typeof SENTENCES;
export const REFUSALS = Object.keys(SENTENCES) as RefusalReason[];

/** An expected refusal of the component. */
export class ComponentRefused extends WorkbookError {
  constructor(readonly reason: RefusalReason) {
    super(SENTENCES[reason]);
  }
}

/** What was asked; where the component failed at it, what the user reads. Its own words go into the log. */
export const orFailedAt = async <Told>(what: string, asked: Promise<Told>): Promise<Told> => {
  try {
    return await asked;
  } catch (cause) {
    if (cause instanceof WorkbookError) throw cause;
    throw new WorkbookError(`${what} Try again; the log, in the menu Rose feeding, says more.`, { cause });
  }
};

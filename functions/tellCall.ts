import { explain } from './call';
import type { Outcome, RawArgument } from './definition';

/** One call of a function, as a formula made it. */
export interface FeedCall {
  readonly name: string;
  readonly args: readonly RawArgument[];
  readonly outcome: Outcome;
}

/**
 * A call told line by line, as the pane shows it: what the function is for, its steps with their sources, the source
 * of its formula. Nothing for a call that has no value; its sentence says why.
 *
 * @example tellCall('DOSE', [15, 2.8, 'gal/min', 'gal'])[0] // 'DOSE: Finished solution that a count gives to one plant.'
 */
export const tellCall = (name: string, args: readonly RawArgument[]): string[] => {
  const told = explain(name, args);
  if (!('steps' in told)) return [];
  return [
    `${told.name}: ${told.summary}.`,
    ...told.steps.map(({ text, source }) => (source ? `${text} (${source})` : text)),
    `Source: ${told.source}.`,
  ];
};

import type { StepState, View } from './view';

/** How a stop stands, in words. */
export const stateWords = (state: StepState): string => {
  if (state.kind === 'empty') return 'nothing yet';
  if (state.kind === 'attention') return `needs attention: ${state.why}`;
  return state.says === undefined ? 'ready' : `ready: ${state.says}`;
};

/** The line of what comes next: its beginning, the stop to go to where it is another one, and its end. */
export interface NextLine {
  readonly begins: string;
  readonly stop?: { readonly section: string; readonly label: string };
  readonly ends: string;
}

/** Undefined where nothing is left to do. */
export const nextLine = ({ next, steps }: View): NextLine | undefined => {
  if (next === undefined) return undefined;
  const { section, says } = next;
  const there = steps.find(({ id }) => id === section);
  return there === undefined || there.current
    ? { begins: 'Next: ', ends: says }
    : { begins: 'Next: ', stop: { section, label: there.label }, ends: `. ${says}` };
};

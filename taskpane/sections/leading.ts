import type { PaneState } from '../state';
import type { Button, StepState } from '../view';

const typedUnder = ({ typed }: PaneState, prefixes: readonly string[]): boolean =>
  Object.keys(typed).some((id) => prefixes.some((prefix) => id.startsWith(prefix)));

/** Keeping is the main thing to do while something was typed for it, or while the section is not ready. */
export const keeping = (
  state: PaneState,
  step: StepState,
  prefixes: readonly string[],
  action: Button,
): Button => (step.kind !== 'ready' || typedUnder(state, prefixes) ? { ...action, primary: true } : action);

/** Once a section is ready and nothing is typed in it, the main thing is to go on. */
export const goingOn = (
  state: PaneState,
  step: StepState,
  prefixes: readonly string[],
  to: { id: string; label: string },
): Button[] =>
  step.kind === 'ready' && !typedUnder(state, prefixes)
    ? [{ id: `go.${to.id}`, label: `Go on to ${to.label}`, primary: true }]
    : [];

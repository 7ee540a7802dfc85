import type { PaneState } from '../state';
import type { Block } from '../view';

/** A block that stays folded until the user opens it; `open` is how it stands before the user touched it. */
export const fold = (
  state: PaneState,
  id: string,
  label: string,
  blocks: readonly Block[],
  open = false,
): Block => ({
  kind: 'more',
  id,
  label,
  open: state.folds[id] ?? open,
  blocks,
});

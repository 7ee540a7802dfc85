import { h, type JSX } from 'preact';

import type { Action, Block } from '../view';

import { documentId, type Send } from './hands';

const button =
  (send: Send) =>
  (action: Action): JSX.Element =>
    h(
      'button',
      {
        key: action.id,
        type: 'button',
        class: action.primary ? 'primary' : 'ordinary',
        // Stays in the tab order, so that the reason beside it can be found.
        'aria-disabled': action.disabled ? 'true' : undefined,
        'aria-describedby': action.why === undefined ? undefined : documentId(action.id, 'why'),
        onClick: () => {
          if (!action.disabled) send({ kind: 'press', action: action.id });
        },
      },
      action.label,
    );

/** A row of buttons, and beneath it why any of them cannot be pressed now. */
export const actionsBlock = (actions: readonly Action[], send: Send): JSX.Element =>
  h(
    'div',
    { class: 'actions' },
    actions.map(button(send)),
    actions.map(({ id, why }) =>
      why === undefined
        ? undefined
        : h('p', { key: `${id} why`, class: 'why', id: documentId(id, 'why') }, why),
    ),
  );

/** What Enter does in a field: the first main action that can be done now, folded blocks left out. */
export const mainAction = (blocks: readonly Block[]): Action | undefined => {
  for (const block of blocks) {
    const found =
      block.kind === 'actions'
        ? block.actions.find(({ primary, disabled }) => primary && !disabled)
        : block.kind === 'more' && block.open
          ? mainAction(block.blocks)
          : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
};

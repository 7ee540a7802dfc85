import { h, type JSX } from 'preact';

import type { Button, Block, Field } from '../view';

import { documentId, type Send } from './hands';

const button =
  (send: Send) =>
  (action: Button): JSX.Element =>
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
export const actionsBlock = (actions: readonly Button[], send: Send): JSX.Element =>
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

/** Blocks in their order, those in opened folds among them. */
const opened = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === 'more' ? (block.open ? opened(block.blocks) : []) : [block]));

const fieldsOf = (block: Block): readonly Field[] => {
  if (block.kind === 'fields') return block.fields;
  if (block.kind !== 'table') return [];
  return block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string'));
};

/**
 * What Enter does in a field: the first main action after it that can be done now, else the first one before it.
 *
 * @param inField the field's id in the page; the section's first main action without it
 */
export const mainAction = (blocks: readonly Block[], inField = ''): Button | undefined => {
  const flat = opened(blocks);
  const here = Math.max(
    0,
    flat.findIndex((block) => fieldsOf(block).some(({ id }) => documentId(id) === inField)),
  );
  return [...flat.slice(here), ...flat.slice(0, here)]
    .flatMap((block) => (block.kind === 'actions' ? block.actions : []))
    .find(({ primary, disabled }) => primary && !disabled);
};

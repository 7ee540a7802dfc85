import { h, type JSX } from 'preact';

import type { Section, View } from '../view';

import { mainAction } from './actions';
import { blocksOf } from './blocks';
import { documentId, type Send } from './hands';
import { messageBar } from './message';
import { stepsBar } from './steps';

// Enter in these keeps its own meaning: it opens the list, presses the button, unfolds the block.
const OWN_ENTER = 'select, button, summary, [type=checkbox]';

const pressMain =
  (section: Section, send: Send) =>
  (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.isComposing) return;
    const withControl = event.ctrlKey || event.metaKey;
    const target = event.target as Element;
    if (!withControl && (target.matches(OWN_ENTER) || !target.matches('input'))) return;
    const main = mainAction(section.blocks, target.id);
    if (main === undefined) return;
    event.preventDefault();
    send({ kind: 'press', action: main.id });
  };

const sectionView = (section: Section, busy: boolean, send: Send): JSX.Element => {
  const titleId = documentId(section.id, 'title');
  return h(
    'section',
    {
      key: section.id,
      class: 'section',
      'aria-labelledby': titleId,
      'aria-busy': busy ? 'true' : undefined,
      onKeyDown: pressMain(section, send),
    },
    h('h2', { id: titleId, tabIndex: -1 }, section.title),
    h('p', { class: 'answer' }, section.answer),
    blocksOf(section.blocks, send),
  );
};

/** The whole pane for one view. */
export const paneView = (view: View, send: Send): JSX.Element =>
  h(
    'div',
    { class: 'wandcount' },
    stepsBar(view, send),
    sectionView(view.section, view.busy !== undefined, send),
    messageBar(view, send),
  );

import { h, type JSX } from 'preact';

import type { Step, View } from '../view';
import { nextLine, stateWords } from '../wayWords';

import type { Send } from './hands';
import { mark } from './mark';

const stepButton = (send: Send, stop: Step): JSX.Element =>
  h(
    'button',
    {
      type: 'button',
      class: 'step',
      'aria-current': stop.current ? 'step' : undefined,
      title: stop.beside ? undefined : `${stop.label}: ${stateWords(stop.state)}`,
      onClick: () => send({ kind: 'open', section: stop.id }),
    },
    stop.beside ? undefined : mark(stop.state.kind),
    h('span', { class: 'step-label' }, stop.label),
    stop.beside ? undefined : h('span', { class: 'unseen' }, `, ${stateWords(stop.state)}`),
  );

const stops = (steps: readonly Step[], send: Send): JSX.Element =>
  h(
    'ol',
    { class: 'steps' },
    steps.map((stop) => h('li', { key: stop.id }, stepButton(send, stop))),
  );

const next = (view: View, send: Send): JSX.Element | undefined => {
  const line = nextLine(view);
  if (line === undefined) return undefined;
  const { begins, stop, ends } = line;
  const link =
    stop &&
    h(
      'button',
      {
        type: 'button',
        class: 'plain-link',
        onClick: () => send({ kind: 'open', section: stop.section }),
      },
      stop.label,
    );
  return h('p', { class: 'next' }, begins, link, ends);
};

/** Where the user is, how each stop stands, and what comes next. */
export const stepsBar = (view: View, send: Send): JSX.Element =>
  h(
    'header',
    { class: 'way' },
    h(
      'nav',
      { 'aria-label': 'The way to a round' },
      stops(
        view.steps.filter(({ beside }) => !beside),
        send,
      ),
    ),
    h(
      'div',
      { class: 'way-on' },
      next(view, send),
      h(
        'nav',
        { 'aria-label': 'Beside the way' },
        stops(
          view.steps.filter(({ beside }) => beside),
          send,
        ),
      ),
    ),
  );

import { h, type JSX } from 'preact';

import type { Step, StepState, View } from '../view';

import type { Send } from './hands';
import { mark } from './mark';

const stateWords = (state: StepState): string => {
  if (state.kind === 'empty') return 'nothing yet';
  if (state.kind === 'attention') return `needs attention: ${state.why}`;
  return state.says === undefined ? 'ready' : `ready: ${state.says}`;
};

const step =
  (send: Send) =>
  (stop: Step): JSX.Element =>
    h(
      'li',
      { key: stop.id, class: stop.beside ? 'beside' : undefined },
      h(
        'button',
        {
          type: 'button',
          class: 'step',
          'aria-current': stop.current ? 'step' : undefined,
          title: `${stop.label}: ${stateWords(stop.state)}`,
          onClick: () => send({ kind: 'open', section: stop.id }),
        },
        stop.beside ? undefined : mark(stop.state.kind),
        h('span', { class: 'step-label' }, stop.label),
        stop.beside ? undefined : h('span', { class: 'unseen' }, `, ${stateWords(stop.state)}`),
      ),
    );

const nextLine = (view: View, send: Send): JSX.Element | undefined => {
  const { next } = view;
  if (next === undefined) return undefined;
  const there = view.steps.find(({ id }) => id === next.section);
  if (there === undefined || there.current) return h('p', { class: 'next' }, `Next: ${next.says}`);
  return h(
    'p',
    { class: 'next' },
    'Next: ',
    h(
      'button',
      { type: 'button', class: 'plain-link', onClick: () => send({ kind: 'open', section: next.section }) },
      there.label,
    ),
    `. ${next.says}`,
  );
};

/** Where the user is, how each stop stands, and what comes next. */
export const stepsBar = (view: View, send: Send): JSX.Element =>
  h(
    'header',
    { class: 'way' },
    h('nav', { 'aria-label': 'The way to a round' }, h('ol', { class: 'steps' }, view.steps.map(step(send)))),
    nextLine(view, send),
  );

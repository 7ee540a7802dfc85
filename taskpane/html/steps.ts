import { h, type JSX } from 'preact';

import type { Step, StepState, View } from '../view';

import type { Send } from './hands';
import { mark } from './mark';

const stateWords = (state: StepState): string => {
  if (state.kind === 'empty') return 'nothing yet';
  if (state.kind === 'attention') return `needs attention: ${state.why}`;
  return state.says === undefined ? 'ready' : `ready: ${state.says}`;
};

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
      {
        type: 'button',
        class: 'plain-link',
        onClick: () => send({ kind: 'open', section: next.section }),
      },
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
      nextLine(view, send),
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

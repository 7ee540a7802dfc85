import { h, type JSX } from 'preact';

import type { View } from '../view';

import type { Send } from './hands';
import { mark } from './mark';

const press = (send: Send, action: string, label: string, className: string): JSX.Element =>
  h('button', { type: 'button', class: className, onClick: () => send({ kind: 'press', action }) }, label);

const busyLine = (busy: NonNullable<View['busy']>, send: Send): JSX.Element =>
  h(
    'div',
    { class: 'busy' },
    h(
      'label',
      { class: 'busy-label' },
      h('span', null, busy.text),
      h('progress', busy.share === undefined ? {} : { value: busy.share, max: 1 }),
    ),
    busy.canStop ? press(send, 'stop', 'Stop', 'ordinary') : undefined,
  );

/** What the last action did, and long work under way. The region stays in the page, so that news in it is read out. */
export const messageBar = ({ message, busy }: View, send: Send): JSX.Element =>
  h(
    'footer',
    { class: `news${message === undefined && busy === undefined ? ' silent' : ''}` },
    busy === undefined ? undefined : busyLine(busy, send),
    h(
      'div',
      { class: `message ${message?.tone ?? ''}` },
      h(
        'p',
        { role: 'status', 'aria-live': 'polite' },
        message === undefined
          ? undefined
          : [mark(message.tone === 'good' ? 'ready' : 'attention'), h('span', null, message.text)],
      ),
      message === undefined
        ? undefined
        : h(
            'span',
            { class: 'after' },
            message.undo ? press(send, 'undo', 'Undo', 'ordinary') : undefined,
            press(send, 'dismiss', 'Close', 'plain-link'),
          ),
    ),
  );

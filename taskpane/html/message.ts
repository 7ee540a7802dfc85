import { h, type JSX } from 'preact';

import type { View } from '../view';

import { documentId, type Send } from './hands';
import { mark } from './mark';

const press = (send: Send, action: string, label: string, className: string): JSX.Element =>
  h('button', { type: 'button', class: className, onClick: () => send({ kind: 'press', action }) }, label);

const BUSY_TEXT = documentId('pane', 'busy');

const busyLine = (busy: View['busy'], send: Send): JSX.Element =>
  h(
    'div',
    { class: 'busy' },
    h(
      'div',
      { class: 'busy-label' },
      h('span', { id: BUSY_TEXT, role: 'status', 'aria-live': 'polite' }, busy?.text),
      busy === undefined
        ? undefined
        : h('progress', {
            'aria-labelledby': BUSY_TEXT,
            ...(busy.share === undefined ? {} : { value: busy.share, max: 1 }),
          }),
    ),
    busy?.canStop ? press(send, 'stop', 'Stop', 'ordinary') : undefined,
  );

/**
 * What the last action did, and long work under way. Both regions stay in the page, so that news in them is read out;
 * how far the work is stands outside them, as nobody wants every step of it read.
 */
export const messageBar = ({ message, busy }: View, send: Send): JSX.Element =>
  h(
    'footer',
    { class: `news${message === undefined && busy === undefined ? ' silent' : ''}` },
    busyLine(busy, send),
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

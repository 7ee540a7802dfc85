import { h, type JSX } from 'preact';

export type MarkShape = 'empty' | 'attention' | 'ready';

const DRAWN: Record<MarkShape, JSX.Element[]> = {
  empty: [h('circle', { cx: 8, cy: 8, r: 5.5, class: 'outline' })],
  attention: [
    h('path', { d: 'M8 1.5 15 14H1Z', class: 'filled' }),
    h('path', { d: 'M8 6v4', class: 'cut' }),
    h('path', { d: 'M8 11.6v.8', class: 'cut' }),
  ],
  ready: [
    h('circle', { cx: 8, cy: 8, r: 7, class: 'filled' }),
    h('path', { d: 'M4.8 8.2 7 10.4 11.4 6', class: 'cut' }),
  ],
};

/** A small mark told apart by its shape as well as its colour; the words beside it say the same. */
export const mark = (shape: MarkShape): JSX.Element =>
  h(
    'svg',
    { class: `mark ${shape}`, viewBox: '0 0 16 16', width: 16, height: 16, 'aria-hidden': 'true' },
    DRAWN[shape],
  );

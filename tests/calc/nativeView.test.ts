import { expect, test } from 'vitest';

import { nativeView } from '../../addin/hosts/calc/nativeView';
import type { Piece } from '../../addin/hosts/calc/wire/pieces';
import type { View } from '../../taskpane/view';

import { rigView } from '../taskpane/handPane';

/** A piece in one line: its kind, and what a user reads or types in. */
const line = (piece: Piece): string => {
  const words = (() => {
    switch (piece.kind) {
      case 'text':
        return `${piece.tone}: ${piece.text}`;
      case 'entry': {
        const unit =
          typeof piece.unit === 'object'
            ? `${piece.unit.value} of ${piece.unit.values.join(', ')}`
            : piece.unit;
        return `${piece.label} [${piece.value}]${unit === undefined ? '' : ` ${unit}`}`;
      }
      case 'choice':
        return `${piece.label} [${piece.value}] of ${piece.shown.join(', ')}`;
      case 'toggle':
        return `${piece.label} [${piece.on ? 'x' : ' '}]`;
      case 'buttons':
        return piece.buttons
          .map(({ label, primary, current, disabled }) =>
            [label, primary && 'main', current && 'here', disabled && 'not now'].filter(Boolean).join(', '),
          )
          .join(' | ');
      case 'table':
        return `${piece.label}: ${piece.columns.map(({ label }) => label).join(', ')}`;
      case 'picture':
        return piece.label;
      case 'progress':
        return `${piece.share * 100} %`;
      case 'rule':
        return '';
    }
  })();
  // Where a line is broken is not looked at here.
  return `${'  '.repeat(piece.indent)}${piece.kind} ${words}`.replaceAll('\u00a0', ' ').trimEnd();
};

const lines = (view: View): string[] => nativeView(view).pieces.map(line);

test('a view is drawn from top to bottom: the way, what comes next, the section and each of its blocks', () => {
  expect(lines(rigView)).toEqual([
    'buttons Garden ✓ | Rig !, here | Mix | Tank what-if',
    'text quiet: Next: Mix. Say what goes into the barrel.',
    'rule',
    'text title: Rig',
    'text answer: 2.6 gal a minute at the wand',
    'text heading: Timed bucket',
    'text heading: The barrel',
    'entry Barrel holds [60] gal of gal, L',
    'text quiet: To the brim.',
    'entry Heel [two] gal',
    'text error: Heel is "two"; it takes a number of gallons.',
    'toggle The wand stays open between plants [x]',
    'choice Fills [full] of Full and a short last, Equal',
    'buttons Keep this rig, main | Print, not now',
    'text quiet: Make the card first.',
    'text heading: Fills',
    'text answer: 1 – Make up: 60 gal',
    '  entry Seen []',
    'text answer: 2 – Make up: 22 gal – short one',
    '  text quiet: Seen: no',
    'text heading: Round time',
    'text plain: A 60 gal barrel takes 1 h 35 min.',
    'picture Round time. A 60 gal barrel takes 1 h 35 min.',
    'text quiet: • Plug the pump into a ground-fault outlet; the manual says how.',
    'buttons ▸ This cell',
  ]);
});

test('a stop tells its state to who points at it, and each button what it does', () => {
  const [way] = nativeView(rigView).pieces;
  if (way?.kind !== 'buttons') throw new Error('The way is no row of buttons.');
  expect(way.buttons.map(({ help }) => help)).toEqual([
    'Garden: ready: 350 roses',
    'Rig: needs attention: no timed bucket yet',
    'Mix: nothing yet',
    'Tank what-if',
  ]);
  expect(way.buttons[2]!.event).toEqual({ kind: 'open', section: 'mix' });
});

test('news and long work stand above the section, with their buttons', () => {
  const busy = { text: 'Reading the roses', share: 0.25, canStop: true };
  const message = { tone: 'good', text: 'Kept the rig.', undo: true } as const;
  expect(lines({ ...rigView, busy, message }).slice(3, 9)).toEqual([
    'text plain: Reading the roses',
    'progress 25 %',
    'text good: Kept the rig.',
    'buttons Stop | Undo | Close',
    'rule',
    'text title: Rig',
  ]);
});

test('a table of words stays a table, and what an open fold holds is set in', () => {
  const table = {
    id: 'fills',
    caption: 'Fills',
    columns: [{ label: 'Fill' }, { label: 'Make up', numeric: true }],
    rows: [['1', '60 gal']],
    marked: [{ row: 0, word: 'short one' }],
  };
  const view: View = {
    ...rigView,
    section: {
      ...rigView.section,
      blocks: [{ kind: 'more', id: 'more', label: 'More', open: true, blocks: [{ kind: 'table', table }] }],
    },
  };
  expect(lines(view).slice(5)).toEqual([
    'buttons ▾ More',
    '  text heading: Fills',
    '  table Fills: Fill, Make up',
  ]);
  expect(nativeView(view).pieces.at(-1)).toMatchObject({ rows: [['1 – short one', '60\u00a0gal']] });
});

import type { StyleToken } from './change';

/** A line along one side of a cell. */
export interface Line {
  readonly kind: 'thin' | 'medium' | 'double';
  readonly colour: string;
}

/** How cells are drawn; colours as #rrggbb. What is left out is as in the user's own cells. */
export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Points. */
  readonly size?: number;
  readonly ink?: string;
  readonly ground?: string;
  readonly align?: 'left' | 'right';
  /** Lines along the sides of every single cell. */
  readonly lines?: Partial<Readonly<Record<'top' | 'right' | 'bottom' | 'left', Line>>>;
}

const PLUM = '#572a5c';
const INK = '#262229';
const QUIET = '#5f5865';
const AMBER = '#874a00';
const EDGE: Line = { kind: 'thin', colour: '#a79eae' };

const HEADER: Look = {
  bold: true,
  ink: INK,
  ground: '#ece7ee',
  lines: { bottom: { kind: 'medium', colour: PLUM } },
};
const COMPUTED: Look = { italic: true, ink: INK, ground: '#f6f4f7' };
const TOTAL: Look = {
  bold: true,
  ink: INK,
  lines: { top: { kind: 'thin', colour: INK }, bottom: { kind: 'double', colour: INK } },
};
const BIG: Look = { bold: true, size: 18, ink: '#000000' };

/**
 * How each token is drawn, in every host alike. Input has a box of its own and computed is in italics on a ground, so
 * that the two are told apart in black and white. A new look leaves nothing of the old one behind.
 */
export const LOOKS: Readonly<Record<StyleToken, Look>> = {
  plain: {},
  title: { bold: true, size: 16, ink: PLUM },
  answer: { bold: true, size: 12, ink: INK },
  header: HEADER,
  // Stands over its numbers, which every host puts to the right.
  numberHeader: { ...HEADER, align: 'right' },
  input: { ink: INK, ground: '#fffdf5', lines: { top: EDGE, right: EDGE, bottom: EDGE, left: EDGE } },
  computed: COMPUTED,
  // A time in words stands as a number does.
  time: { ...COMPUTED, align: 'right' },
  total: TOTAL,
  totalTime: { ...TOTAL, align: 'right' },
  warning: { bold: true, italic: true, ink: AMBER },
  note: { italic: true, size: 10, ink: QUIET },
  // A volume beside a measure in words must keep clear of it.
  big: { ...BIG, align: 'left' },
  bigNumber: { ...BIG, align: 'right' },
};

import { BooleanNumber, BorderStyleTypes, HorizontalAlign, type IStyleData } from '@univerjs/core';

import type { StyleToken } from '../../../workbook/change';

const line = (s: BorderStyleTypes, rgb: string) => ({ s, cl: { rgb } });
const box = (s: BorderStyleTypes, rgb: string) => ({
  t: line(s, rgb),
  r: line(s, rgb),
  b: line(s, rgb),
  l: line(s, rgb),
});
const NO_BORDERS = { t: null, r: null, b: null, l: null };

/** Everything that a look may set, at rest: a new look leaves nothing of the old one behind. */
const PLAIN = { bl: null, it: null, fs: null, cl: null, bg: null, bd: NO_BORDERS, ht: null };

const PLUM = '#572a5c';
const INK = '#262229';
const QUIET = '#5f5865';

/*
 * How each token is drawn. Input has a box of its own and computed is in italics, so that the two are told apart in
 * black and white.
 */
const DRAWN = {
  plain: PLAIN,
  title: { ...PLAIN, bl: BooleanNumber.TRUE, fs: 16, cl: { rgb: PLUM } },
  answer: { ...PLAIN, bl: BooleanNumber.TRUE, fs: 12, cl: { rgb: INK } },
  header: {
    ...PLAIN,
    bl: BooleanNumber.TRUE,
    cl: { rgb: INK },
    bg: { rgb: '#ece7ee' },
    bd: { ...NO_BORDERS, b: line(BorderStyleTypes.MEDIUM, PLUM) },
  },
  input: { ...PLAIN, cl: { rgb: INK }, bg: { rgb: '#fffdf5' }, bd: box(BorderStyleTypes.THIN, '#a79eae') },
  computed: { ...PLAIN, it: BooleanNumber.TRUE, cl: { rgb: INK }, bg: { rgb: '#f6f4f7' } },
  total: {
    ...PLAIN,
    bl: BooleanNumber.TRUE,
    cl: { rgb: INK },
    bd: { ...NO_BORDERS, t: line(BorderStyleTypes.THIN, INK), b: line(BorderStyleTypes.DOUBLE, INK) },
  },
  warning: { ...PLAIN, bl: BooleanNumber.TRUE, it: BooleanNumber.TRUE, cl: { rgb: '#874a00' } },
  note: { ...PLAIN, it: BooleanNumber.TRUE, fs: 10, cl: { rgb: QUIET } },
  big: { ...PLAIN, bl: BooleanNumber.TRUE, fs: 18, cl: { rgb: '#000000' }, ht: HorizontalAlign.LEFT },
} satisfies Record<StyleToken, object>;

/** A null takes away what an earlier look had set; the grid's types do not say that it may. */
export const LOOKS = DRAWN as unknown as Readonly<Record<StyleToken, IStyleData>>;

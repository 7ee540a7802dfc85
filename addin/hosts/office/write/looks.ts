import type { StyleToken } from '../../../workbook/change';

/** One side of a cell. */
export interface Line {
  readonly style: 'Continuous' | 'Double';
  readonly weight: 'Thin' | 'Medium' | 'Thick';
  readonly color: string;
}

export type Side =
  'EdgeTop' | 'EdgeRight' | 'EdgeBottom' | 'EdgeLeft' | 'InsideHorizontal' | 'InsideVertical';

/** Everything that a look sets: a new look leaves nothing of the old one behind. */
export interface Look {
  readonly bold: boolean;
  readonly italic: boolean;
  readonly size: number;
  readonly ink: string;
  /** Undefined is no fill, so that the grid's own lines show. */
  readonly ground?: string;
  readonly lines: Partial<Readonly<Record<Side, Line>>>;
  readonly align: 'General' | 'Left';
}

const PLUM = '#572A5C';
const INK = '#262229';
const QUIET = '#5F5865';
const AMBER = '#874A00';

const line = (style: Line['style'], weight: Line['weight'], color: string): Line => ({
  style,
  weight,
  color,
});
const thin = line('Continuous', 'Thin', '#847B8B');
const BOX: Look['lines'] = {
  EdgeTop: thin,
  EdgeRight: thin,
  EdgeBottom: thin,
  EdgeLeft: thin,
  InsideHorizontal: thin,
  InsideVertical: thin,
};

const PLAIN: Look = { bold: false, italic: false, size: 11, ink: '#000000', lines: {}, align: 'General' };

/**
 * How each token is drawn. Input is the only look with a box of its own, computed the only one in italics on a ground,
 * so that the two are told apart in black and white.
 */
export const LOOKS: Readonly<Record<StyleToken, Look>> = {
  plain: PLAIN,
  title: { ...PLAIN, bold: true, size: 16, ink: PLUM },
  answer: { ...PLAIN, bold: true, size: 12, ink: INK, ground: '#F3EBF4' },
  header: {
    ...PLAIN,
    bold: true,
    ink: INK,
    ground: '#ECE7EE',
    lines: { EdgeBottom: line('Continuous', 'Medium', PLUM) },
  },
  input: { ...PLAIN, ink: INK, ground: '#FFFDF5', lines: BOX },
  computed: { ...PLAIN, italic: true, ink: INK, ground: '#F6F4F7' },
  total: {
    ...PLAIN,
    bold: true,
    ink: INK,
    lines: { EdgeTop: line('Continuous', 'Thin', INK), EdgeBottom: line('Double', 'Thick', INK) },
  },
  warning: {
    ...PLAIN,
    bold: true,
    ink: AMBER,
    ground: '#FCF2E1',
    lines: { EdgeLeft: line('Continuous', 'Thick', AMBER) },
  },
  note: { ...PLAIN, italic: true, size: 10, ink: QUIET },
  big: { ...PLAIN, bold: true, size: 22, align: 'Left' },
};

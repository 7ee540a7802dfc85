import { STYLES, type StyleToken } from '../../../workbook/change';
import { LOOKS as DRAWN, type Line as CellLine, type Look as CellLook } from '../../../workbook/looks';

/** One side of a cell as the program takes it. */
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
  readonly align: 'General' | 'Left' | 'Right';
}

const ALIGN = { left: 'Left', right: 'Right' } as const;

/** A cell that nobody drew on. */
const ORDINARY = { size: 11, ink: '#000000' };

const KINDS = {
  thin: { style: 'Continuous', weight: 'Thin' },
  medium: { style: 'Continuous', weight: 'Medium' },
  double: { style: 'Double', weight: 'Thick' },
} as const;

const lineOf = ({ kind, colour }: CellLine): Line => ({ ...KINDS[kind], color: colour });

/** Lines of every cell of an area: those between two cells are the first one's where both have one. */
const linesOf = ({ top, right, bottom, left }: NonNullable<CellLook['lines']>): Look['lines'] => {
  const sides: readonly (readonly [Side, CellLine | undefined])[] = [
    ['EdgeTop', top],
    ['EdgeRight', right],
    ['EdgeBottom', bottom],
    ['EdgeLeft', left],
    ['InsideHorizontal', bottom ?? top],
    ['InsideVertical', right ?? left],
  ];
  return Object.fromEntries(sides.flatMap(([side, line]) => (line ? [[side, lineOf(line)]] : [])));
};

const drawn = ({ bold = false, italic = false, size, ink, ground, align, lines = {} }: CellLook): Look => ({
  bold,
  italic,
  size: size ?? ORDINARY.size,
  ink: ink ?? ORDINARY.ink,
  ...(ground === undefined ? {} : { ground }),
  lines: linesOf(lines),
  align: align === undefined ? 'General' : ALIGN[align],
});

/** How the program draws each token. */
export const LOOKS = Object.fromEntries(STYLES.map((style) => [style, drawn(DRAWN[style])])) as Readonly<
  Record<StyleToken, Look>
>;

import { BooleanNumber, BorderStyleTypes, HorizontalAlign, type IStyleData } from '@univerjs/core';

import { STYLES, type StyleToken } from '../../../workbook/change';
import { LOOKS as DRAWN, type Line, type Look } from '../../../workbook/looks';

const KINDS: Readonly<Record<Line['kind'], BorderStyleTypes>> = {
  thin: BorderStyleTypes.THIN,
  medium: BorderStyleTypes.MEDIUM,
  double: BorderStyleTypes.DOUBLE,
};

const border = (line: Line | undefined) => line && { s: KINDS[line.kind], cl: { rgb: line.colour } };
const colour = (rgb: string | undefined) => (rgb === undefined ? null : { rgb });
const truth = (given: boolean | undefined) => (given ? BooleanNumber.TRUE : null);

const ALIGN = { left: HorizontalAlign.LEFT, right: HorizontalAlign.RIGHT } as const;

/** A look with everything that a look may set: a null takes away what an earlier look had set. */
const styleOf = ({ bold, italic, size, ink, ground, align, lines = {} }: Look): object => ({
  bl: truth(bold),
  it: truth(italic),
  fs: size ?? null,
  cl: colour(ink),
  bg: colour(ground),
  bd: {
    t: border(lines.top) ?? null,
    r: border(lines.right) ?? null,
    b: border(lines.bottom) ?? null,
    l: border(lines.left) ?? null,
  },
  ht: align === undefined ? null : ALIGN[align],
});

/** How the grid draws each token; its types do not say that a null may stand there. */
export const LOOKS = Object.fromEntries(
  STYLES.map((style) => [style, styleOf(DRAWN[style])]),
) as unknown as Readonly<Record<StyleToken, IStyleData>>;

import type { Alignment, Border, Borders, Color, Style } from '@cj-tech-master/excelts';
import type {
  BorderStyleTypes,
  HorizontalAlign,
  IBorderData,
  IStyleData,
  VerticalAlign,
} from '@univerjs/core';

import { WRAPPED, YES } from '../grid/kept';

/** The colours of an ordinary file's theme, by their number; files that bring another theme look a little different. */
const THEME = [
  'FFFFFF',
  '000000',
  'E7E6E6',
  '44546A',
  '4472C4',
  'ED7D31',
  'A5A5A5',
  'FFC000',
  '5B9BD5',
  '70AD47',
];
/** Fonts that a file names where nobody chose one; the grid shows its own in their place. */
const ORDINARY_FONTS = new Set(['Calibri', 'Aptos Narrow', 'Arial', 'Liberation Sans', 'Carlito']);
const ORDINARY_SIZE = 11;

/** Files name lines and places that the grid numbers, in the order of its numbers. */
const BORDERS: readonly (Border['style'] | undefined)[] = [
  undefined,
  'thin',
  'hair',
  'dotted',
  'dashed',
  'dashDot',
  'dashDotDot',
  'double',
  'medium',
  'mediumDashed',
  'mediumDashDot',
  'mediumDashDotDot',
  'slantDashDot',
  'thick',
];
const HORIZONTAL: readonly (Alignment['horizontal'] | undefined)[] = [
  undefined,
  'left',
  'center',
  'right',
  'justify',
];
const VERTICAL: readonly (Alignment['vertical'] | undefined)[] = [undefined, 'top', 'middle', 'bottom'];
const SIDES = [
  ['top', 't'],
  ['right', 'r'],
  ['bottom', 'b'],
  ['left', 'l'],
] as const;

/** The grid's number of what a file names; undefined for what it does not know. */
const numbered = (names: readonly (string | undefined)[], name: string | undefined): number | undefined => {
  const number = name === undefined ? -1 : names.indexOf(name);
  return number < 0 ? undefined : number;
};

/** Lighter for a tint above 0, darker below, as files mean it. */
const tinted = (hex: string, tint: number): string =>
  (hex.match(/../g) ?? [])
    .map((part) => Number.parseInt(part, 16))
    .map((level) => (tint < 0 ? level * (1 + tint) : level + (255 - level) * tint))
    .map((level) => Math.round(level).toString(16).padStart(2, '0'))
    .join('');

const gridColour = (
  colour: (Partial<Color> & { tint?: number }) | undefined,
): { rgb: string } | undefined => {
  if (!colour) return undefined;
  if (colour.argb) return { rgb: `#${colour.argb.slice(-6).toLowerCase()}` };
  const theme = colour.theme === undefined ? undefined : THEME[colour.theme];
  return theme === undefined ? undefined : { rgb: `#${tinted(theme, colour.tint ?? 0).toLowerCase()}` };
};

const fileColour = (rgb: unknown): { argb: string } | undefined => {
  const hex = /^#?([0-9a-f]{6})$/i.exec(String(rgb ?? ''))?.[1];
  return hex === undefined ? undefined : { argb: `FF${hex.toUpperCase()}` };
};

const gridBorders = (borders: Partial<Borders> | undefined): IBorderData | undefined => {
  const sides = SIDES.flatMap(([from, to]) => {
    const s: BorderStyleTypes | undefined = numbered(BORDERS, borders?.[from]?.style);
    return s === undefined ? [] : [[to, { s, cl: gridColour(borders?.[from]?.color) ?? { rgb: '#000000' } }]];
  });
  return sides.length > 0 ? (Object.fromEntries(sides) as IBorderData) : undefined;
};

const without = <T extends object>(style: T): T =>
  Object.fromEntries(Object.entries(style).filter(([, value]) => value !== undefined)) as T;

/** A cell's look in a file, as the grid draws it; undefined for an ordinary cell. */
export const gridStyle = ({
  font,
  fill,
  border,
  alignment,
  numFmt,
}: Partial<Style>): IStyleData | undefined => {
  const pattern = typeof numFmt === 'object' ? numFmt.formatCode : numFmt;
  const style: IStyleData = without({
    bl: font?.bold ? YES : undefined,
    it: font?.italic ? YES : undefined,
    ul: font?.underline && font.underline !== 'none' ? { s: YES } : undefined,
    st: font?.strike ? { s: YES } : undefined,
    fs: font?.size && font.size !== ORDINARY_SIZE ? font.size : undefined,
    ff: font?.name && !ORDINARY_FONTS.has(font.name) ? font.name : undefined,
    cl: font?.color && font.color.theme !== 1 ? gridColour(font.color) : undefined,
    bg: fill?.type === 'pattern' && fill.pattern === 'solid' ? gridColour(fill.fgColor) : undefined,
    bd: gridBorders(border),
    ht: numbered(HORIZONTAL, alignment?.horizontal) as HorizontalAlign | undefined,
    vt: numbered(VERTICAL, alignment?.vertical) as VerticalAlign | undefined,
    tb: alignment?.wrapText ? WRAPPED : undefined,
    n: pattern && !/^general$/i.test(pattern) ? { pattern } : undefined,
  });
  return Object.keys(style).length > 0 ? style : undefined;
};

/** A look of the grid, as a file keeps it. */
export const fileStyle = (style: IStyleData): Partial<Style> => {
  const colour = fileColour(style.cl?.rgb);
  const ground = fileColour(style.bg?.rgb);
  const borders = SIDES.flatMap(([to, from]) => {
    const side = style.bd?.[from];
    const kind = side ? BORDERS[side.s] : undefined;
    return kind === undefined
      ? []
      : [[to, { style: kind, color: fileColour(side?.cl.rgb) ?? { argb: 'FF000000' } }]];
  });
  const alignment = without({
    horizontal: HORIZONTAL[style.ht ?? 0],
    vertical: VERTICAL[style.vt ?? 0],
    wrapText: style.tb === WRAPPED ? true : undefined,
  });
  return without({
    font: without({
      name: style.ff ?? 'Calibri',
      size: style.fs ?? ORDINARY_SIZE,
      bold: style.bl === YES ? true : undefined,
      italic: style.it === YES ? true : undefined,
      underline: style.ul?.s === YES ? true : undefined,
      strike: style.st?.s === YES ? true : undefined,
      color: colour,
    }),
    fill: ground ? { type: 'pattern' as const, pattern: 'solid' as const, fgColor: ground } : undefined,
    border: borders.length > 0 ? (Object.fromEntries(borders) as Partial<Borders>) : undefined,
    alignment: Object.keys(alignment).length > 0 ? alignment : undefined,
    numFmt: style.n?.pattern,
  }) as Partial<Style>;
};

import type { Border, Borders, Color, Style } from '@cj-tech-master/excelts';
import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IBorderData,
  type IStyleData,
} from '@univerjs/core';

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

const BORDERS: readonly (readonly [Border['style'], BorderStyleTypes])[] = [
  ['thin', BorderStyleTypes.THIN],
  ['hair', BorderStyleTypes.HAIR],
  ['dotted', BorderStyleTypes.DOTTED],
  ['dashed', BorderStyleTypes.DASHED],
  ['dashDot', BorderStyleTypes.DASH_DOT],
  ['dashDotDot', BorderStyleTypes.DASH_DOT_DOT],
  ['double', BorderStyleTypes.DOUBLE],
  ['medium', BorderStyleTypes.MEDIUM],
  ['mediumDashed', BorderStyleTypes.MEDIUM_DASHED],
  ['mediumDashDot', BorderStyleTypes.MEDIUM_DASH_DOT],
  ['mediumDashDotDot', BorderStyleTypes.MEDIUM_DASH_DOT_DOT],
  ['slantDashDot', BorderStyleTypes.SLANT_DASH_DOT],
  ['thick', BorderStyleTypes.THICK],
];
const HORIZONTAL: readonly (readonly [string, HorizontalAlign])[] = [
  ['left', HorizontalAlign.LEFT],
  ['center', HorizontalAlign.CENTER],
  ['right', HorizontalAlign.RIGHT],
  ['justify', HorizontalAlign.JUSTIFIED],
];
const VERTICAL: readonly (readonly [string, VerticalAlign])[] = [
  ['top', VerticalAlign.TOP],
  ['middle', VerticalAlign.MIDDLE],
  ['bottom', VerticalAlign.BOTTOM],
];
const SIDES = [
  ['top', 't'],
  ['right', 'r'],
  ['bottom', 'b'],
  ['left', 'l'],
] as const;

const forward = <From, To>(table: readonly (readonly [From, To])[], key: From | undefined): To | undefined =>
  table.find(([from]) => from === key)?.[1];
const backward = <From, To>(
  table: readonly (readonly [From, To])[],
  key: To | null | undefined,
): From | undefined => table.find(([, to]) => to === key)?.[0];

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
    const s = forward(BORDERS, borders?.[from]?.style);
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
    bl: font?.bold ? BooleanNumber.TRUE : undefined,
    it: font?.italic ? BooleanNumber.TRUE : undefined,
    ul: font?.underline && font.underline !== 'none' ? { s: BooleanNumber.TRUE } : undefined,
    st: font?.strike ? { s: BooleanNumber.TRUE } : undefined,
    fs: font?.size && font.size !== ORDINARY_SIZE ? font.size : undefined,
    ff: font?.name && !ORDINARY_FONTS.has(font.name) ? font.name : undefined,
    cl: font?.color && font.color.theme !== 1 ? gridColour(font.color) : undefined,
    bg: fill?.type === 'pattern' && fill.pattern === 'solid' ? gridColour(fill.fgColor) : undefined,
    bd: gridBorders(border),
    ht: forward(HORIZONTAL, alignment?.horizontal),
    vt: forward(VERTICAL, alignment?.vertical),
    tb: alignment?.wrapText ? WrapStrategy.WRAP : undefined,
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
    const kind = side ? backward(BORDERS, side.s) : undefined;
    return kind === undefined
      ? []
      : [[to, { style: kind, color: fileColour(side?.cl.rgb) ?? { argb: 'FF000000' } }]];
  });
  const alignment = without({
    horizontal: backward(HORIZONTAL, style.ht) as 'left' | undefined,
    vertical: backward(VERTICAL, style.vt) as 'top' | undefined,
    wrapText: style.tb === WrapStrategy.WRAP ? true : undefined,
  });
  return without({
    font: without({
      name: style.ff ?? 'Calibri',
      size: style.fs ?? ORDINARY_SIZE,
      bold: style.bl === BooleanNumber.TRUE ? true : undefined,
      italic: style.it === BooleanNumber.TRUE ? true : undefined,
      underline: style.ul?.s === BooleanNumber.TRUE ? true : undefined,
      strike: style.st?.s === BooleanNumber.TRUE ? true : undefined,
      color: colour,
    }),
    fill: ground ? { type: 'pattern' as const, pattern: 'solid' as const, fgColor: ground } : undefined,
    border: borders.length > 0 ? (Object.fromEntries(borders) as Partial<Borders>) : undefined,
    alignment: Object.keys(alignment).length > 0 ? alignment : undefined,
    numFmt: style.n?.pattern,
  }) as Partial<Style>;
};

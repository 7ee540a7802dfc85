import type { StyleToken } from '../../workbook/change';
import { LOOKS, type Line as CellLine } from '../../workbook/looks';

/** A line around cells as Calc takes it; widths in hundredths of a millimetre. */
interface Line {
  readonly Color: number;
  readonly OuterLineWidth: number;
  readonly InnerLineWidth: number;
  readonly LineDistance: number;
}

/** Properties of a Calc cell style. */
export type StyleProperties = Readonly<Record<string, number | boolean | Line>>;

const BOLD = 150;
const ITALIC = 2;
const ALIGN = { left: 1, right: 3 } as const;
const WIDTHS: Readonly<Record<CellLine['kind'], Omit<Line, 'Color'>>> = {
  thin: { OuterLineWidth: 18, InnerLineWidth: 0, LineDistance: 0 },
  medium: { OuterLineWidth: 53, InnerLineWidth: 0, LineDistance: 0 },
  double: { OuterLineWidth: 18, InnerLineWidth: 18, LineDistance: 26 },
};
const BORDERS = {
  top: 'TopBorder',
  right: 'RightBorder',
  bottom: 'BottomBorder',
  left: 'LeftBorder',
} as const;

const colourNumber = (colour: string): number => Number.parseInt(colour.slice(1), 16);

const PLAIN = 'Default';

/** The cell style's name as users read it in their list of styles. */
export const styleName = (style: StyleToken): string =>
  style === 'plain' ? PLAIN : `Wandcount ${style.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`;

/** How Calc draws a token. Plain is the user's own default. */
export const lookOf = (style: StyleToken): StyleProperties => {
  const { bold, italic, size, ink, ground, align, lines = {} } = LOOKS[style];
  const borders = Object.entries(lines).map(([side, { kind, colour }]) => [
    BORDERS[side as keyof typeof BORDERS],
    { Color: colourNumber(colour), ...WIDTHS[kind] },
  ]);
  return {
    ...(bold ? { CharWeight: BOLD } : {}),
    ...(italic ? { CharPosture: ITALIC } : {}),
    ...(size === undefined ? {} : { CharHeight: size }),
    ...(ink === undefined ? {} : { CharColor: colourNumber(ink) }),
    ...(ground === undefined ? {} : { CellBackColor: colourNumber(ground) }),
    ...(align === undefined ? {} : { HoriJustify: ALIGN[align] }),
    ...Object.fromEntries(borders),
  };
};

/** Shades of a chart's series, told apart in black and white. */
export const SERIES_COLOURS: readonly number[] = [0x6a3470, 0xb98abf, 0x3f3a44, 0x8a8391];

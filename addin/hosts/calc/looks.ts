import type { StyleToken } from '../../workbook/change';

/** A line around cells as Calc takes it; widths in hundredths of a millimetre. */
interface Line {
  readonly Color: number;
  readonly OuterLineWidth: number;
  readonly InnerLineWidth: number;
  readonly LineDistance: number;
}

/** Properties of a Calc cell style. */
export type Look = Readonly<Record<string, number | boolean | Line>>;

const PLUM = 0x572a5c;
const INK = 0x262229;
const EDGE = 0x847b8b;
const AMBER = 0x874a00;

const BOLD = 150;
const ITALIC = 2;
const LEFT = 1;

const line = (Color: number, OuterLineWidth: number): Line => ({
  Color,
  OuterLineWidth,
  InnerLineWidth: 0,
  LineDistance: 0,
});
const doubled = (Color: number): Line => ({
  Color,
  OuterLineWidth: 18,
  InnerLineWidth: 18,
  LineDistance: 26,
});

const box = (one: Line): Look => ({ TopBorder: one, BottomBorder: one, LeftBorder: one, RightBorder: one });

/**
 * How each token is drawn, the same as in the browser's grid. Input has a box of its own and computed is in italics,
 * so that the two are told apart in black and white. Plain is the user's own default.
 */
export const LOOKS: Readonly<Record<Exclude<StyleToken, 'plain'>, Look>> = {
  title: { CharWeight: BOLD, CharHeight: 16, CharColor: PLUM },
  answer: { CharWeight: BOLD, CharHeight: 12, CharColor: INK, CellBackColor: 0xf3ebf4 },
  header: { CharWeight: BOLD, CharColor: INK, CellBackColor: 0xece7ee, BottomBorder: line(PLUM, 53) },
  input: { CharColor: INK, CellBackColor: 0xfffdf5, ...box(line(EDGE, 18)) },
  computed: { CharPosture: ITALIC, CharColor: INK, CellBackColor: 0xf6f4f7 },
  total: { CharWeight: BOLD, CharColor: INK, TopBorder: line(INK, 18), BottomBorder: doubled(INK) },
  warning: { CharWeight: BOLD, CharColor: AMBER, CellBackColor: 0xfcf2e1, LeftBorder: line(AMBER, 88) },
  note: { CharPosture: ITALIC, CharHeight: 9, CharColor: 0x5f5865 },
  big: { CharWeight: BOLD, CharHeight: 22, CharColor: 0x000000, HoriJustify: LEFT },
};

const PLAIN = 'Default';

/** The cell style's name as users read it in their list of styles. */
export const styleName = (style: StyleToken): string => (style === 'plain' ? PLAIN : `Wandcount ${style}`);

export const lookOf = (style: StyleToken): Look => (style === 'plain' ? {} : LOOKS[style]);

/** Shades of a chart's series, told apart in black and white. */
export const SERIES_COLOURS: readonly number[] = [0x6a3470, 0xb98abf, 0x3f3a44, 0x8a8391];

import { only, STYLES, type Area, type StyleToken } from '../../../workbook/change';
import { LOOKS as DRAWN, type Line as CellLine, type Look } from '../../../workbook/looks';

import { keepAspect, type Aspect } from './aspect';
import { byPiece, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

/** One side of a cell as the program takes it. */
interface Line {
  readonly style: 'Continuous' | 'Double';
  readonly weight: 'Thin' | 'Medium' | 'Thick';
  readonly color: string;
}

type Side = 'EdgeTop' | 'EdgeRight' | 'EdgeBottom' | 'EdgeLeft' | 'InsideHorizontal' | 'InsideVertical';

/** Everything that a look sets: a new look leaves nothing of the old one behind. */
interface OfficeLook {
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
const linesOf = ({ top, right, bottom, left }: NonNullable<Look['lines']>): OfficeLook['lines'] => {
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

const drawn = ({ bold = false, italic = false, size, ink, ground, align, lines = {} }: Look): OfficeLook => ({
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
  Record<StyleToken, OfficeLook>
>;

const EDGES: readonly Side[] = ['EdgeTop', 'EdgeRight', 'EdgeBottom', 'EdgeLeft'];

/** The sides that an area has; those inside only where there is more than one row or column. */
const sidesOf = ({ rows, columns }: Area): Side[] => [
  ...EDGES,
  ...(rows > 1 ? (['InsideHorizontal'] as const) : []),
  ...(columns > 1 ? (['InsideVertical'] as const) : []),
];

const CALLS = 30;

const setLook = (area: Area, look: OfficeLook): Piece =>
  piece(CALLS, (at) => {
    const { format } = at.range(area);
    format.font.bold = look.bold;
    format.font.italic = look.italic;
    format.font.size = look.size;
    format.font.color = look.ink;
    format.horizontalAlignment = look.align;
    if (look.ground === undefined) format.fill.clear();
    else format.fill.color = look.ground;
    for (const side of sidesOf(area)) {
      const border = format.borders.getItem(side);
      const line = look.lines[side];
      border.style = line?.style ?? 'None';
      if (!line) continue;
      border.weight = line.weight;
      border.color = line.color;
    }
  });

const setWrap = (area: Area): Piece =>
  piece(2, (at) => {
    at.range(area).format.wrapText = true;
  });

/** The program answers null where cells differ. */
const unlike = (value: unknown): boolean => value === null || value === undefined;

/** Font, ground, lines, alignment and wrapping. */
const drawing: Aspect = {
  load: ({ format }) => {
    format.load('horizontalAlignment,wrapText');
    format.font.load('bold,italic,size,color');
    format.fill.load('color,pattern');
    format.borders.load('items/sideIndex,items/style,items/weight,items/color');
  },
  putBack: ({ format }, area) => {
    const { horizontalAlignment, wrapText } = format;
    const { bold, italic, size, color } = format.font;
    const { color: ground, pattern } = format.fill;
    const sides = sidesOf(area).map((side) => ({
      side,
      border: format.borders.items.find(({ sideIndex }) => sideIndex === side),
    }));
    const told = [horizontalAlignment, wrapText, bold, italic, size, color, ground, pattern];
    if (told.some(unlike) || sides.some(({ border }) => unlike(border?.style))) return undefined;
    return piece(CALLS, (at) => {
      const { format: now } = at.range(area);
      now.horizontalAlignment = horizontalAlignment;
      now.wrapText = wrapText;
      now.font.bold = bold;
      now.font.italic = italic;
      now.font.size = size;
      now.font.color = color;
      if (pattern === 'None') now.fill.clear();
      else now.fill.color = ground;
      for (const { side, border } of sides) {
        const line = now.borders.getItem(side);
        line.style = border!.style;
        if (border!.style === 'None') continue;
        line.weight = border!.weight;
        line.color = border!.color;
      }
    });
  },
};

/** Looks of cells, and texts on several lines. */
export const prepareLooks: Prepare = async ({ at, edits, over }) => {
  const areas = only(over, 'style', 'wrap').map(({ area }) => area);
  const before = await keepAspect(at, drawing, areas);
  return {
    pieces: only(edits, 'style', 'wrap').map((edit) =>
      edit.kind === 'style' ? setLook(edit.area, LOOKS[edit.style]) : setWrap(edit.area),
    ),
    putBack: before.map(byPiece),
  };
};

import type { Area, PageEdit } from '../change';
import type { CardLayout, CardRequest } from './cardLayout';
import { charactersAcross } from './cardWidths';

/** What both Letter and A4 hold between margins of 10 mm, points. */
const PAPER = { short: 539, long: 734 } as const;
/** Below this share the eleven points of the sheet's ordinary print are too small to read outdoors. */
const LEAST_SCALE = 0.68;

/** Points across a character, and down a line in each size of print. */
const CHARACTER = 5.25;
const LINE = { ordinary: 15, answer: 16, title: 21, big: 24 } as const;
/** Lines that heads of size classes and measures of a fill come to in their columns. */
const HEAD_LINES = { counts: 2, fills: 2, beds: 3, total: 2 } as const;
const MEASURE_LINES = 2;

/** About how high the card stands at full size, points: a row's height is the host's own to find. */
const heightOf = ({ stations, products }: CardRequest, layout: CardLayout, rows: number): number => {
  const above = LINE.title + LINE.answer + (layout.counts.header - 2) * LINE.ordinary;
  const counts = HEAD_LINES.counts * LINE.ordinary + LINE.big + 2 * LINE.ordinary;
  const fill = LINE.big * (products.length > 0 ? MEASURE_LINES : 1);
  const parts = stations.map(
    ({ beds, fills }) =>
      LINE.answer +
      (HEAD_LINES.fills + HEAD_LINES.beds) * LINE.ordinary +
      fills * fill +
      beds.length * LINE.ordinary,
  );
  const below = (HEAD_LINES.total + rows - layout.cautions) * LINE.ordinary;
  return above + counts + parts.reduce((sum, part) => sum + part, 0) + below;
};

/**
 * How a card prints: upright and on one page where it can still be read so; lying where it is too wide for that; on
 * as many pages as it takes, under its title and counts, where it is too long.
 */
export const cardPage = (area: Area, request: CardRequest, layout: CardLayout): PageEdit => {
  const width = charactersAcross(request, layout) * CHARACTER;
  const landscape = PAPER.short / width < LEAST_SCALE;
  const down = landscape ? PAPER.short : PAPER.long;
  const fits = down / heightOf(request, layout, area.rows) >= LEAST_SCALE;
  return {
    kind: 'page',
    area,
    landscape,
    repeatRows: layout.counts.seconds + 1,
    ...(fits ? { pagesHigh: 1 } : {}),
  };
};

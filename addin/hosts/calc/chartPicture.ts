import type { Chart } from '../../../taskpane/view';
import { SERIES_COLOURS } from './looks';

/** Lengths in the drawing's own units, pixels at its own width. */
const FONT = 11;
/** Mean width of a letter of the labels, a little more than it is. */
const LETTER = 6.6;
const LINE = 16;
const LEFT = 40;
const RIGHT = 6;
const BOTTOM = 24;
const PLOT_HEIGHT = 134;
const BAR = 11;
const BESIDE_BOX = 17;

const SHADES = SERIES_COLOURS.map((colour) => `#${colour.toString(16).padStart(6, '0')}`);
const shadeOf = (series: number): string => SHADES[series % SHADES.length]!;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const label = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end'): string =>
  `<text x="${x}" y="${y}" font-size="${FONT}" font-family="sans-serif" fill="#5f5865" text-anchor="${anchor}">${escaped(words)}</text>`;

const box = (x: number, y: number, width: number, height: number, shade: string): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${shade}"/>`;

const picture = (width: number, height: number, drawn: readonly string[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    box(0, 0, width, height, '#ffffff'),
    ...drawn,
    '</svg>',
  ].join('');

const widthOf = (words: string): number => words.length * LETTER;

const round = (n: number): string =>
  n.toLocaleString('en-US', { maximumSignificantDigits: 3, useGrouping: false });

/** A round number at or above the largest value, so that the scale ends on something people read. */
const topOf = (values: readonly number[]): number => {
  const largest = Math.max(...values, 0);
  if (!(largest > 0)) return 1;
  const step = 10 ** Math.floor(Math.log10(largest));
  return Math.ceil(largest / step) * step;
};

const allValues = ({ series }: Chart): number[] => series.flatMap(({ values }) => values);

/** Words on as many lines as a width asks for. */
const broken = (words: string, width: number): string[] => {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = [...lines.slice(-1), word].join(' ');
    if (lines.length > 0 && widthOf(longer) <= width) lines.splice(-1, 1, longer);
    else lines.push(word);
  }
  return lines;
};

/** What each shade stands for, from the top, and where that ends. */
const legend = ({ series }: Chart, width: number): { drawn: string[]; end: number } => {
  const drawn: string[] = [];
  let end = 4;
  for (const [index, { name, unit }] of series.entries()) {
    drawn.push(box(4, end, 9, 9, shadeOf(index)));
    for (const line of broken(unit === '' ? name : `${name}, ${unit}`, width - BESIDE_BOX - RIGHT)) {
      drawn.push(label(BESIDE_BOX, end + 9, line, 'start'));
      end += LINE;
    }
  }
  return { drawn, end };
};

/** Bars that lie under their labels, each with its value: legible however narrow and however many. */
const lying = (chart: Chart, width: number): string => {
  const { labels, series } = chart;
  const top = topOf(allValues(chart));
  const longest = width - RIGHT - LEFT;
  const { drawn: named, end: first } = legend(chart, width);
  const each = LINE + series.length * (BAR + 2) + 4;
  const drawn = labels.flatMap((words, at) => {
    const y = first + at * each;
    return [
      label(4, y + FONT, words, 'start'),
      ...series.flatMap(({ values }, index) => {
        const [long, under] = [(longest * values[at]!) / top, y + LINE + index * (BAR + 2)];
        return [
          box(4, under, long, BAR, shadeOf(index)),
          label(8 + long, under + BAR - 1, round(values[at]!), 'start'),
        ];
      }),
    ];
  });
  return picture(width, first + labels.length * each, [...named, ...drawn]);
};

/** Bars side by side, or lines, over their labels and beside a scale. */
const standing = (chart: Chart, width: number, slot: number, every: number): string => {
  const { type, labels, series } = chart;
  const top = topOf(allValues(chart));
  const { drawn: named, end } = legend(chart, width);
  const above = end + 4;
  const y = (value: number): number => above + PLOT_HEIGHT * (1 - value / top);
  const drawn = series.flatMap(({ values }, index) => {
    if (type === 'line') {
      const points = values.map((value, at) => `${LEFT + slot * (at + 0.5)},${y(value)}`).join(' ');
      return [`<polyline points="${points}" fill="none" stroke="${shadeOf(index)}" stroke-width="2"/>`];
    }
    const wide = (slot * 0.7) / series.length;
    return values.map((value, at) => {
      const x = LEFT + slot * (at + 0.15) + wide * index;
      return box(x, y(value), wide, above + PLOT_HEIGHT - y(value), shadeOf(index));
    });
  });
  const height = above + PLOT_HEIGHT + BOTTOM;
  return picture(width, height, [
    ...[0, 0.5, 1].map((share) => {
      const at = y(top * share);
      return `<line x1="${LEFT}" y1="${at}" x2="${width - RIGHT}" y2="${at}" stroke="#dfdae2"/>${label(LEFT - 5, at + 4, round(top * share), 'end')}`;
    }),
    ...drawn,
    ...labels.flatMap((words, at) =>
      at % every === 0 ? [label(LEFT + slot * (at + 0.5), height - 8, words, 'middle')] : [],
    ),
    ...named,
  ]);
};

/**
 * A chart as an SVG picture with labels and a legend, its letters as large as those of the pane.
 *
 * @param width pixels
 */
export const chartPicture = (chart: Chart, width: number): string => {
  const slot = (width - LEFT - RIGHT) / Math.max(chart.labels.length, 1);
  const every = Math.ceil((Math.max(...chart.labels.map(widthOf), 0) + 4) / slot);
  return chart.type === 'bar' && every > 1 ? lying(chart, width) : standing(chart, width, slot, every);
};

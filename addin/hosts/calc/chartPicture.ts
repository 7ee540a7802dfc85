import type { Chart } from '../../../taskpane/view';
import { SERIES_COLOURS } from './looks';

/** Size of the drawing, in its own units; the pane scales it to its width. */
const WIDTH = 320;
const HEIGHT = 180;
const LEFT = 40;
const BOTTOM = 24;
const TOP = 22;

const SHADES = SERIES_COLOURS.map((colour) => `#${colour.toString(16).padStart(6, '0')}`);

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const label = (x: number, y: number, words: string, anchor: string): string =>
  `<text x="${x}" y="${y}" font-size="11" font-family="sans-serif" fill="#5f5865" text-anchor="${anchor}">${escaped(words)}</text>`;

const round = (n: number): string =>
  n.toLocaleString('en-US', { maximumSignificantDigits: 3, useGrouping: false });

/** A round number at or above the largest value, so that the scale ends on something people read. */
const topOf = (values: readonly number[]): number => {
  const largest = Math.max(...values, 0);
  if (!(largest > 0)) return 1;
  const step = 10 ** Math.floor(Math.log10(largest));
  return Math.ceil(largest / step) * step;
};

/** A chart as a small SVG picture with scale, labels and a legend. */
export const chartPicture = ({ type, labels, series }: Chart): string => {
  const top = topOf(series.flatMap(({ values }) => values));
  const plot = { width: WIDTH - LEFT - 6, height: HEIGHT - TOP - BOTTOM };
  const slot = plot.width / Math.max(labels.length, 1);
  const y = (value: number): number => TOP + plot.height * (1 - value / top);
  const drawn = series.flatMap(({ values }, index) => {
    const shade = SHADES[index % SHADES.length]!;
    if (type === 'line') {
      const points = values.map((value, at) => `${LEFT + slot * (at + 0.5)},${y(value)}`).join(' ');
      return [`<polyline points="${points}" fill="none" stroke="${shade}" stroke-width="2"/>`];
    }
    const width = (slot * 0.7) / series.length;
    return values.map(
      (value, at) =>
        `<rect x="${LEFT + slot * (at + 0.15) + width * index}" y="${y(value)}" width="${width}" height="${TOP + plot.height - y(value)}" fill="${shade}"/>`,
    );
  });
  const legend = series.map(({ name, unit }, index) => {
    const x = LEFT + (index * plot.width) / series.length;
    const words = unit === '' ? name : `${name}, ${unit}`;
    return `<rect x="${x}" y="4" width="9" height="9" fill="${SHADES[index % SHADES.length]}"/>${label(x + 13, 13, words, 'start')}`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    ...[0, 0.5, 1].map((share) => {
      const at = y(top * share);
      return `<line x1="${LEFT}" y1="${at}" x2="${WIDTH - 6}" y2="${at}" stroke="#dfdae2"/>${label(LEFT - 5, at + 4, round(top * share), 'end')}`;
    }),
    ...drawn,
    ...labels.map((words, at) => label(LEFT + slot * (at + 0.5), HEIGHT - 8, words, 'middle')),
    ...legend,
    '</svg>',
  ].join('');
};

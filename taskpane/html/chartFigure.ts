import { h, type JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

import type { Chart } from '../view';

import { documentId } from './hands';
import { whenThemeChanges } from './theme';

const numbersTable = (chart: Chart): JSX.Element =>
  h(
    'table',
    null,
    h('caption', { class: 'unseen' }, `${chart.title}: the numbers`),
    h(
      'thead',
      null,
      h(
        'tr',
        null,
        h('th', { scope: 'col' }, ''),
        chart.series.map(({ name, unit }) =>
          h('th', { key: name, scope: 'col', class: 'numeric' }, unit === '' ? name : `${name}, ${unit}`),
        ),
      ),
    ),
    h(
      'tbody',
      null,
      chart.labels.map((label, row) =>
        h(
          'tr',
          { key: row },
          h('th', { scope: 'row' }, label),
          chart.series.map(({ name, values }) =>
            h('td', { key: name, class: 'numeric' }, String(values[row] ?? '')),
          ),
        ),
      ),
    ),
  );

/** A chart with its finding in words and its numbers as a table; the drawing itself is fetched on demand. */
export const ChartFigure = ({ chart }: { chart: Chart }): JSX.Element => {
  const canvas = useRef<HTMLCanvasElement>(null);
  const shown = JSON.stringify(chart);

  useEffect(() => {
    let wanted = true;
    let erase = (): void => undefined;
    const draw = async (): Promise<void> => {
      const { drawChart } = await import('./drawChart');
      erase();
      if (wanted && canvas.current !== null) erase = drawChart(canvas.current, chart);
    };
    const drawOrSay = (): void => {
      draw().catch((reason: unknown) =>
        console.warn('The chart could not be drawn; its numbers are in the table.', reason),
      );
    };
    drawOrSay();
    const stopWatching = whenThemeChanges(drawOrSay);
    return () => {
      wanted = false;
      stopWatching();
      erase();
    };
    // The chart is plain data: the same text is the same drawing.
  }, [shown]);

  return h(
    'figure',
    null,
    h('figcaption', null, h('strong', null, chart.title), ' ', h('span', null, chart.finding)),
    h(
      'div',
      { class: 'canvas' },
      h('canvas', {
        ref: canvas,
        id: documentId(chart.id),
        role: 'img',
        'aria-label': `${chart.title}. ${chart.finding}`,
      }),
    ),
    h(
      'details',
      { class: 'numbers' },
      h('summary', null, 'The numbers'),
      h('div', { class: 'table-strip' }, numbersTable(chart)),
    ),
  );
};

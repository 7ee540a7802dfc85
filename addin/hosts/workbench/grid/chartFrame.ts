import { createElement, useEffect, useRef, type FunctionComponent } from 'react';
import { SetRangeValuesMutation } from '@univerjs/preset-sheets-core';

import { whenThemeChanges } from '../../../../taskpane/html/theme';
import { CHART_COMPONENT, type KeptChart } from './chartDrawing';
import { chartNow } from './charts';
import type { Grid } from './openGrid';

/** Cells often change many at a time; a chart is drawn anew this long after the last, ms. */
const PAUSE = 200;

/** Calls the listener some time after cells have changed, results of formulas included. */
const whenCellsChange = (grid: Grid, listener: () => void): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(listener, PAUSE);
  };
  const writing = grid.commands.onCommandExecuted(({ id }) => {
    if (id === SetRangeValuesMutation.id) soon();
  });
  const computing = grid.api.getFormula().calculationResultApplied(soon);
  return () => {
    clearTimeout(timer);
    writing.dispose();
    computing.dispose();
  };
};

/** Keeps a chart drawn with what its cells hold; the drawing itself is fetched on demand. */
const keepDrawn = (grid: Grid, canvas: HTMLCanvasElement, kept: KeptChart): (() => void) => {
  let drawn = '';
  let erase = (): void => undefined;
  let wanted = true;
  const draw = (afresh: boolean): void => {
    const chart = chartNow(grid, kept);
    const text = JSON.stringify(chart);
    if (text === drawn && !afresh) return;
    drawn = text;
    import('../../../../taskpane/html/drawChart')
      .then(({ drawChart }) => {
        if (!wanted) return;
        erase();
        erase = drawChart(canvas, chart);
      })
      .catch((reason: unknown) =>
        console.warn('The chart could not be drawn; its numbers are in the cells.', reason),
      );
  };
  draw(true);
  const stops = [whenCellsChange(grid, () => draw(false)), whenThemeChanges(() => draw(true))];
  return () => {
    wanted = false;
    stops.forEach((stop) => stop());
    erase();
  };
};

/** Teaches the grid to draw the charts that lie over its cells. */
export const teachCharts = (grid: Grid): void => {
  const ChartFrame: FunctionComponent<{ readonly data: KeptChart }> = ({ data }) => {
    const canvas = useRef<HTMLCanvasElement>(null);
    useEffect(() => (canvas.current ? keepDrawn(grid, canvas.current, data) : undefined), [data]);
    return createElement(
      'figure',
      { className: 'chart' },
      createElement('figcaption', null, createElement('strong', null, data.title), ' ', data.finding),
      createElement(
        'div',
        { className: 'canvas' },
        createElement('canvas', { ref: canvas, role: 'img', 'aria-label': `${data.title}. ${data.finding}` }),
      ),
    );
  };
  grid.api.registerComponent(CHART_COMPONENT, ChartFrame);
};

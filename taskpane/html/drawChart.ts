import {
  BarController,
  BarElement,
  CategoryScale,
  Chart as Drawing,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
} from 'chart.js';

import type { Chart } from '../view';

Drawing.register(
  BarController,
  BarElement,
  CategoryScale,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
);

// Chart.js keeps one set of defaults for the page; a moving chart would also ignore a wish for less motion.
Drawing.defaults.animation = false;

const colours = (canvas: HTMLCanvasElement) => {
  const style = getComputedStyle(canvas);
  const probe = (token: string): string => {
    canvas.style.color = `var(${token})`;
    const { color } = getComputedStyle(canvas);
    canvas.style.color = '';
    return color;
  };
  return {
    font: style.fontFamily,
    ink: probe('--ink'),
    quiet: probe('--quiet'),
    line: probe('--line'),
    accent: probe('--accent'),
  };
};

/** Series are told apart by fill against outline and by dash, not by colour alone. */
const look = (type: Chart['type'], index: number, { accent, quiet }: ReturnType<typeof colours>) => ({
  backgroundColor: index === 0 ? accent : 'transparent',
  borderColor: index === 0 ? accent : quiet,
  borderWidth: index === 0 && type === 'bar' ? 0 : 2,
  borderDash: index === 0 ? [] : [4, 3],
});

/** Draws the chart on the canvas; the returned function takes it away again. */
export const drawChart = (canvas: HTMLCanvasElement, chart: Chart): (() => void) => {
  const shades = colours(canvas);
  const units = [...new Set(chart.series.map(({ unit }) => unit))];
  const axisOf = (unit: string): string => (units.indexOf(unit) === 0 ? 'y' : 'y2');
  const words = { color: shades.quiet, font: { family: shades.font, size: 12 } };
  const axis = (unit: string) => ({
    position: units.indexOf(unit) === 0 ? ('left' as const) : ('right' as const),
    beginAtZero: true,
    ticks: { ...words, maxTicksLimit: 5 },
    title: { display: unit !== '', text: unit, ...words },
    grid: { color: shades.line, drawOnChartArea: units.indexOf(unit) === 0 },
    border: { display: false },
  });

  const drawing = new Drawing(canvas, {
    type: chart.type,
    data: {
      labels: [...chart.labels],
      datasets: chart.series.map(({ name, unit, values }, index) => ({
        label: unit === '' ? name : `${name}, ${unit}`,
        data: [...values],
        yAxisID: axisOf(unit),
        ...look(chart.type, index, shades),
      })),
    },
    options: {
      responsive: true,
      maintainAspectRatio: false,
      scales: {
        x: { ticks: words, grid: { display: false }, border: { color: shades.line } },
        ...Object.fromEntries(units.slice(0, 2).map((unit) => [axisOf(unit), axis(unit)])),
      },
      plugins: {
        legend: {
          display: chart.series.length > 1,
          labels: { color: shades.ink, font: words.font, boxWidth: 14 },
        },
      },
    },
  });
  return () => drawing.destroy();
};

import { NOTHING, type Behaviour, type Run, type Target } from './behaviour';
import type { HostBook, HostChart } from './hostBook';
import { HostError } from './hostError';
import { cellsIn, oneOf, text, truth, whole } from './shapes';

/** A chart's target: its sheet and a number that stays while others come and go; here its name at the moment. */
interface ChartTarget {
  readonly sheet: string;
  name: string;
}

const placeOf = async ({ sheet, name }: ChartTarget, book: HostBook): Promise<[number, HostChart]> => {
  const charts = await book.charts(sheet);
  const at = charts.findIndex((chart) => chart.name === name);
  const chart = charts[at];
  if (!chart) throw new HostError('ItemNotFound');
  return [at, chart];
};

const change = async (target: ChartTarget, book: HostBook, more: Partial<HostChart>): Promise<void> => {
  const [at, chart] = await placeOf(target, book);
  await book.setChart(target.sheet, at, { ...chart, ...more });
};

interface SeriesTarget {
  readonly chart: ChartTarget;
  readonly at: number;
}

const changeSeries = async ({ chart, at }: SeriesTarget, book: HostBook, more: object): Promise<void> => {
  const [, { series }] = await placeOf(chart, book);
  await change(chart, book, {
    series: series.map((one, place) => (place === at ? { ...one, ...more } : one)),
  });
};

const find: Run = async ({ id }, [name], book) => {
  const wanted = text(name);
  const found = (await book.charts(id)).some((chart) => chart.name === wanted);
  return found ? ({ sheet: id, name: wanted } satisfies ChartTarget) : NOTHING;
};

export const chartBehaviours: Readonly<Record<string, Behaviour>> = {
  ChartCollection: {
    items: {
      of: 'Chart',
      all: async ({ id }, book) => (await book.charts(id)).map(({ name }) => ({ sheet: id, name })),
    },
    calls: {
      getItemOrNullObject: find,
      getItem: async (...given) => {
        const found = await find(...given);
        if (found === NOTHING) throw new HostError('ItemNotFound');
        return found;
      },
      add: async ({ id }, [type, source, by], book) => {
        if (await book.isProtected(id)) throw new HostError('AccessDenied');
        const values = cellsIn(source);
        oneOf('Auto', 'Columns', 'Rows')(by);
        const count = (await book.charts(id)).length;
        const series = Array.from({ length: by === 'Rows' ? values.rows : values.columns }, () => ({
          name: 'Series',
          values,
        }));
        if (series.length !== 1) throw new Error('The fake lays a chart from one series.');
        const chart: HostChart = {
          name: `Chart ${count + 1} of ${Math.floor(Math.random() * 1e9)}`,
          type: oneOf('ColumnClustered', 'LineMarkers')(type),
          title: '',
          below: '',
          legend: true,
          series,
        };
        await book.setChart(id, count, chart);
        return { sheet: id, name: chart.name } satisfies ChartTarget;
      },
    },
    changes: ['add'],
  },
  Chart: {
    values: { name: async (target, book) => (await placeOf(target, book))[1].name },
    sets: {
      name: async (target: ChartTarget, value, book) => {
        const name = text(value, 255);
        if (
          (await book.charts(target.sheet)).some((chart) => chart.name === name && chart.name !== target.name)
        )
          throw new HostError('InvalidArgument', 'a chart of that name is there');
        await change(target, book, { name });
        target.name = name;
      },
    },
    objects: {
      title: (chart) => ({ chart }),
      axes: (chart) => ({ chart }),
      legend: (chart) => ({ chart }),
      series: (chart) => ({ chart }),
    },
    calls: {
      setPosition: (target, [from, to], book) =>
        change(target, book, { from: cellsIn(from), to: cellsIn(to) }),
      delete: async (target: ChartTarget, _args, book) => {
        const [at] = await placeOf(target, book);
        await book.setChart(target.sheet, at, undefined);
      },
    },
    changes: ['setPosition', 'delete'],
  },
  ChartTitle: { sets: { text: ({ chart }, value, book) => change(chart, book, { title: text(value) }) } },
  ChartLegend: {
    sets: { visible: ({ chart }, value, book) => change(chart, book, { legend: truth(value) }) },
  },
  ChartAxes: { objects: { categoryAxis: (target: Target) => target } },
  ChartAxis: { objects: { title: (target: Target) => target } },
  ChartAxisTitle: { sets: { text: ({ chart }, value, book) => change(chart, book, { below: text(value) }) } },
  ChartSeriesCollection: {
    calls: {
      getItemAt: async ({ chart }, [at], book) => {
        const [, { series }] = await placeOf(chart, book);
        return { chart, at: whole(at, 0, series.length - 1) } satisfies SeriesTarget;
      },
      add: async ({ chart }, [name], book) => {
        const [, { series }] = await placeOf(chart, book);
        await change(chart, book, { series: [...series, { name: text(name) }] });
        return { chart, at: series.length } satisfies SeriesTarget;
      },
    },
    changes: ['add'],
  },
  ChartSeries: {
    sets: { name: (target, value, book) => changeSeries(target, book, { name: text(value, 255) }) },
    calls: {
      setValues: (target, [range], book) => changeSeries(target, book, { values: cellsIn(range) }),
      setXAxisValues: (target, [range], book) => changeSeries(target, book, { labels: cellsIn(range) }),
    },
    changes: ['setValues', 'setXAxisValues'],
  },
};

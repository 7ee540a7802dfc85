import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { VOLUME, place, tickBox, workingsAt } from './cardContext';
import { MEASURED_IN, barrelArguments, cell, cells, formula, plantsOf, spilledBetween } from './cardFormulas';
import type { CardStation, StationRows } from './cardLayout';
import { fillRow } from './fillRow';

const bedRow = ({ sources, request, layout }: CardContext, row: number, bed: string): PageCell[] => {
  const { counts, column } = layout;
  const { doses, rig } = sources;
  const lastClass = column.firstClass + request.sizeClasses.length - 1;
  const need =
    `FEED.NEED(${cells(row, column.firstClass, row, lastClass)},` +
    `${cells(counts.dose, column.firstClass, counts.dose, lastClass)},${doses.unit},${rig.barrel.unit})`;
  return [
    tickBox(row, column.tick),
    place(row, column.name, bed, 'total'),
    ...request.sizeClasses.map((_, index) => {
      const at = column.firstClass + index;
      return place(
        row,
        at,
        formula(plantsOf(sources, cell(row, column.name), cell(counts.header, at))),
        'computed',
        '0;-0;"–"',
      );
    }),
    place(row, column.solution, formula(need), 'computed', VOLUME),
  ];
};

const stationFigures = (
  { sources, layout }: CardContext,
  station: CardStation,
  rows: StationRows,
): PageCell[] => {
  const { column } = layout;
  const { rig } = sources;
  const work = workingsAt(column.workings);
  const lastBed = rows.firstBed + station.beds.length - 1;
  const solution = `SUM(${cells(rows.firstBed, column.solution, lastBed, column.solution)})`;
  const need = cell(rows.fillHeader, work.need0);
  const plants = cell(rows.fillHeader, work.plants0);
  const lastClass = column.solution - 1;
  const asked = `${solution}+${spilledBetween(sources, plants)}+FEED.INUNITS(${rig.hose.value},${rig.hose.unit},${rig.barrel.unit})`;
  return [
    ...['Need', 'Plants', 'Fills now'].map((label, index) =>
      place(rows.title, work.need0 + index, label, 'header'),
    ),
    place(rows.fillHeader, work.need0, formula(`IF(${plants}>0,${asked},0)`), 'computed', VOLUME),
    place(
      rows.fillHeader,
      work.plants0,
      formula(`SUM(${cells(rows.firstBed, column.firstClass, lastBed, lastClass)})`),
      'computed',
      '0',
    ),
    place(
      rows.fillHeader,
      work.fills0,
      formula(`IF(${need}>0,FEED.FILLS(${need},${barrelArguments(sources)}),0)`),
      'computed',
      '0',
    ),
  ];
};

/** A station: its fills, its beds in walking order, and the figures that size the fills. */
export const stationRows = (context: CardContext, index: number, firstNumber: number): PageCell[] => {
  const { sources, request, layout } = context;
  const { column, counts } = layout;
  const { rig } = sources;
  const station = request.stations[index]!;
  const rows = layout.stations[index]!;
  const work = workingsAt(column.workings);
  const where =
    request.stations.length > 1
      ? `Station ${index + 1} of ${request.stations.length}: ${station.name}`
      : `Station ${station.name}`;
  const heads: [at: number, input: CellInput, style?: StyleToken][] = [
    [column.name, 'Fill'],
    [column.makeUp, formula(`"Make up, "&${rig.barrel.unit}`)],
    ...request.products.map(({ name }, at): [number, CellInput] => [column.firstProduct + at, name]),
    ...(column.hotWater === undefined ? [] : [[column.hotWater, 'Hot water'] as [number, CellInput]]),
    [column.pumpOut, 'Pump out', 'numberHeader'],
    [column.start, 'Start', 'numberHeader'],
    [column.pumpFrom, 'Pump from', 'numberHeader'],
    [column.doneBy, 'Done by', 'numberHeader'],
  ];
  const bedHeads: [at: number, input: CellInput, style?: StyleToken][] = [
    [column.name, 'Bed'],
    ...request.sizeClasses.map((_, at): [number, CellInput, StyleToken] => {
      const of = column.firstClass + at;
      return [
        of,
        formula(`${cell(counts.header, of)}&" "&${cell(counts.seconds, of)}&"\u00a0s"`),
        'numberHeader',
      ];
    }),
    [column.solution, formula(`"Solution, "&${rig.barrel.unit}`), 'numberHeader'],
  ];
  const workingHeads = request.products.flatMap(({ name, way }, at) =>
    ['exact', 'label allows', 'measured'].map((what, offset) =>
      place(
        rows.fillHeader,
        work.productColumns + 3 * at + offset,
        `${name}: ${what}, ${MEASURED_IN[way]}`,
        'note',
      ),
    ),
  );
  const wrapped = (cellOf: PageCell): PageCell => ({ ...cellOf, wrap: true });
  return [
    place(rows.title, column.name, where, 'answer'),
    ...heads.map(([at, input, style = 'header']) => wrapped(place(rows.fillHeader, at, input, style))),
    ...Array.from({ length: station.fills }, (_, fill) =>
      fillRow(context, index, fill, firstNumber + fill),
    ).flat(),
    ...bedHeads.map(([at, input, style = 'header']) => wrapped(place(rows.bedHeader, at, input, style))),
    ...station.beds.flatMap((bed, at) => bedRow(context, rows.firstBed + at, bed)),
    ...stationFigures(context, station, rows),
    ...workingHeads,
  ];
};

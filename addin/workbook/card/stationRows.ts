import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { VOLUME, place, plantedKey, tickBox, workings } from './cardContext';
import { cell, cells, formula, plantsOf } from './cardFormulas';
import type { CardStation, StationRows } from './cardLayout';
import { fillRow } from './fillRow';

const bedRow = (context: CardContext, row: number, bed: string): PageCell[] => {
  const { sources, request, layout } = context;
  const { counts, column } = layout;
  const { rig } = workings(context);
  const lastClass = column.firstClass + request.sizeClasses.length - 1;
  const need =
    `FEED.NEED(${cells(row, column.firstClass, row, lastClass)},` +
    `${cells(counts.dose, column.firstClass, counts.dose, lastClass)},${sources.doses.unit},${rig('unit')})`;
  const plants = (sizeClass: string, at: number): CellInput =>
    request.planted === undefined
      ? formula(plantsOf(sources, cell(row, column.name), cell(counts.header, at)))
      : (request.planted[plantedKey(bed, sizeClass)] ?? 0);
  return [
    tickBox(row, column.tick),
    place(row, column.name, bed, 'total'),
    ...request.sizeClasses.map((sizeClass, index) => {
      const at = column.firstClass + index;
      return place(row, at, plants(sizeClass, at), 'computed', '0;-0;"–"');
    }),
    place(row, column.solution, formula(need), 'computed', VOLUME),
  ];
};

const figures = (context: CardContext, station: CardStation, rows: StationRows): PageCell[] => {
  const { column } = context.layout;
  const { work, rig } = workings(context);
  const lastBed = rows.firstBed + station.beds.length - 1;
  const solution = `SUM(${cells(rows.firstBed, column.solution, lastBed, column.solution)})`;
  const need = cell(rows.fillHeader, work.need0);
  const plants = cell(rows.fillHeader, work.plants0);
  const asked = `${solution}+${plants}*${rig('spill')}+${rig('hose')}`;
  const fills = `FEED.FILLS(${need},${rig('barrel')},${rig('unit')},${rig('heel')},${rig('fillLine')})`;
  const inBeds = `SUM(${cells(rows.firstBed, column.firstClass, lastBed, column.solution - 1)})`;
  return [
    ...['Need', 'Plants', 'Fills now'].map((label, index) =>
      place(rows.title, work.need0 + index, label, 'header'),
    ),
    place(rows.fillHeader, work.need0, formula(`IF(${plants}>0,${asked},0)`), 'computed', VOLUME),
    place(rows.fillHeader, work.plants0, formula(inBeds), 'computed', '0'),
    place(rows.fillHeader, work.fills0, formula(`IF(${need}>0,${fills},0)`), 'computed', '0'),
  ];
};

/** A station: its fills, its beds in walking order, and the figures that size the fills. */
export const stationRows = (context: CardContext, index: number, firstFill: number): PageCell[] => {
  const { request, layout } = context;
  const { column, counts } = layout;
  const { rig, work, product } = workings(context);
  const station = request.stations[index]!;
  const rows = layout.stations[index]!;
  const where =
    request.stations.length > 1
      ? `Station ${index + 1} of ${request.stations.length}: ${station.name}`
      : `Station ${station.name}`;
  const heads: [at: number, input: CellInput, style?: StyleToken][] = [
    [column.name, 'Fill'],
    [column.makeUp, formula(`"Make up, "&${rig('unit')}`)],
    ...request.products.map((_, at): [number, CellInput] => [
      column.firstProduct + at,
      formula(product(at, 'name')),
    ]),
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
    [column.solution, formula(`"Solution, "&${rig('unit')}`), 'numberHeader'],
  ];
  const times = ['Start, min', 'Pump from, min', 'Done by, min', 'Start', 'Pump from', 'Done by'].map(
    (label, at) => place(rows.fillHeader, work.startAt + at, label, 'header'),
  );
  const wrapped = (cellOf: PageCell): PageCell => ({ ...cellOf, wrap: true });
  return [
    place(rows.title, column.name, where, 'answer'),
    ...heads.map(([at, input, style = 'header']) => wrapped(place(rows.fillHeader, at, input, style))),
    ...Array.from({ length: station.fills }, (_, fill) =>
      fillRow(context, index, fill, firstFill + fill),
    ).flat(),
    ...bedHeads.map(([at, input, style = 'header']) => wrapped(place(rows.bedHeader, at, input, style))),
    ...station.beds.flatMap((bed, at) => bedRow(context, rows.firstBed + at, bed)),
    ...figures(context, station, rows),
    ...times,
  ];
};

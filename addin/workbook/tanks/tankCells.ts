import type { Area, CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import { place } from '../card/cardContext';
import { cell, cells, formula, inUnit, wandOpen } from '../card/cardFormulas';
import type { CardSources } from '../card/cardSources';

/** What the sheet starts with; all of it can be changed there. */
export interface TankRequest {
  readonly sheet: string;
  /** In walking order; '' stands for a garden fed from one place. */
  readonly stations: readonly string[];
  /** In the rig's unit of volume. */
  readonly barrels: readonly number[];
  /** A limit that is left out limits nothing. Weight is in the rig's unit, the round in minutes. */
  readonly limits: { readonly fills?: number; readonly weight?: number; readonly minutes?: number };
  readonly style: 'full' | 'equal';
  /** What the chart shows, in words, for those who cannot see it. */
  readonly finding: string;
}

const LIMITS_AT = 3;
const STATIONS_AT = 8;
const COLUMNS = ['barrel', 'fills', 'lastFill', 'weight', 'mixing', 'round', 'moves', 'fits'] as const;
type Column = (typeof COLUMNS)[number];
const column = (of: Column): number => COLUMNS.indexOf(of);

export const tankRows = ({ stations, barrels }: TankRequest) => {
  const firstStation = STATIONS_AT + 1;
  const header = firstStation + stations.length + 1;
  return { firstStation, header, firstBarrel: header + 1, lastBarrel: header + barrels.length };
};

const needOf = (sources: CardSources, station: string, name: string, plants: string): string => {
  const { beds, doses, rig } = sources;
  const solution =
    station === '' ? `SUM(${beds.solution})` : `SUMIFS(${beds.solution},${beds.station},${name})`;
  const spill = `FEED.DOSE(${rig.betweenPlants}*${plants},${rig.flow.value},${rig.flow.unit},${rig.barrel.unit})`;
  const spilled = `IF(AND(${wandOpen(sources)},${rig.betweenPlants}*${plants}>0),${spill},0)`;
  return (
    `IF(${plants}>0,FEED.INUNITS(${solution},${doses.unit},${rig.barrel.unit})+${spilled}` +
    `+${inUnit(rig.hose, rig.barrel.unit)},0)`
  );
};

const stationRows = (sources: CardSources, request: TankRequest): PageCell[] => {
  const { beds, rig } = sources;
  const heads: CellInput[] = ['Station', 'Plants', formula(`"Need, "&${rig.barrel.unit}`)];
  return [
    ...heads.map((input, at) => place(STATIONS_AT, at, input, at === 0 ? 'header' : 'numberHeader')),
    ...request.stations.flatMap((station, index) => {
      const row = STATIONS_AT + 1 + index;
      const [name, plants] = [cell(row, 0), cell(row, 1)];
      const count = station === '' ? `SUM(${beds.plants})` : `SUMIFS(${beds.plants},${beds.station},${name})`;
      return [
        place(row, 0, station === '' ? 'the whole garden' : station, 'computed', '@'),
        place(row, 1, formula(count), 'computed', '0'),
        place(row, 2, formula(needOf(sources, station, name, plants)), 'computed', '#,##0.0'),
      ];
    }),
  ];
};

const limitRows = ({ rig }: CardSources, { limits, style }: TankRequest): PageCell[] => {
  const rows: [string, CellInput, CellInput][] = [
    ['Most fills', limits.fills ?? null, 'fills'],
    ['Most weight, full', limits.weight ?? null, formula(rig.emptyWeight.unit)],
    ['Longest round', limits.minutes ?? null, 'min'],
    ['Fills: full or equal', style, null],
  ];
  return rows.flatMap(([label, value, unit], index) => [
    place(LIMITS_AT + index, 0, label, 'header'),
    place(LIMITS_AT + index, 1, value, 'input', index === 3 ? '@' : 'General'),
    place(LIMITS_AT + index, 2, unit, 'note'),
  ]);
};

const barrelRow = (sources: CardSources, request: TankRequest, row: number, barrel: number): PageCell[] => {
  const { rig, mix } = sources;
  const { firstStation } = tankRows(request);
  const at = (of: Column) => cell(row, column(of));
  const needs = request.stations.map((_, index) => cell(firstStation + index, 2));
  const last = firstStation + request.stations.length - 1;
  const total = `SUM(${cells(firstStation, 2, last, 2)})`;
  const plants = `SUM(${cells(firstStation, 1, last, 1)})`;
  const unit = rig.barrel.unit;
  const heel = inUnit(rig.heel, unit);
  const barrelArguments = `${at('barrel')},${unit},${heel},${rig.fillLine}`;
  const fillsOf = (need: string) => `IF(${need}>0,FEED.FILLS(${need},${barrelArguments}),0)`;
  const lastNeed = needs.at(-1)!;
  const style = cell(LIMITS_AT + 3, 1);
  const visited = `COUNTIF(${cells(firstStation, 2, last, 2)},">0")`;
  const minutes = (volume: string, flow: { value: string; unit: string }) =>
    `FEED.FILLTIME(${volume},${unit},${flow.value},${flow.unit})`;
  const limit = (of: Column, index: number) => {
    const most = cell(LIMITS_AT + index, 1);
    return `OR(N(${most})=0,${at(of)}<=${most})`;
  };
  const inputs: [Column, string, string][] = [
    ['fills', needs.map(fillsOf).join('+'), '0'],
    [
      'lastFill',
      `INDEX(FEED.FILLPLAN(${lastNeed},${barrelArguments},${style}),FEED.FILLS(${lastNeed},${barrelArguments}),2)`,
      '#,##0.0',
    ],
    [
      'weight',
      `FEED.WEIGHT(${at('barrel')}*IF(${rig.fillLine}>0,${rig.fillLine},1),${unit},${rig.emptyWeight.unit},${rig.emptyWeight.value})`,
      '#,##0',
    ],
    [
      'mixing',
      `IF(COUNTIF(${mix.rate},">0")>0,${at('fills')}*${rig.premixMinutes},0)+${minutes(`(${total}+${visited}*${heel})`, rig.tapFlow)}`,
      '#,##0',
    ],
    [
      'round',
      `${at('mixing')}+${minutes(total, rig.flow)}+IF(${wandOpen(sources)},0,${rig.betweenPlants}*${plants}/60)` +
        `+${at('moves')}*${rig.moveMinutes}`,
      '#,##0',
    ],
    ['moves', `MAX(0,${visited}-1)`, '0'],
    ['fits', `IF(AND(${limit('fills', 0)},${limit('weight', 1)},${limit('round', 2)}),"yes","no")`, '@'],
  ];
  return [
    place(row, 0, barrel, 'input', 'General'),
    ...inputs.map(([of, text, format]) => place(row, column(of), formula(text), 'computed', format)),
  ];
};

const barrelHeads = ({ rig }: CardSources, row: number): PageCell[] => {
  const heads: Record<Column, CellInput> = {
    barrel: formula(`"Barrel, "&${rig.barrel.unit}`),
    fills: 'Fills',
    lastFill: formula(`"Last fill, "&${rig.barrel.unit}`),
    weight: formula(`"Weight full, "&${rig.emptyWeight.unit}`),
    mixing: 'Mixing and filling, min',
    round: 'Whole round, min',
    moves: 'Moves',
    fits: 'Within your limits',
  };
  const style = (of: Column): StyleToken => (of === 'fits' ? 'header' : 'numberHeader');
  return COLUMNS.map((of, at) => ({ ...place(row, at, heads[of], style(of)), wrap: true }));
};

/** Every cell of the tank sheet. */
export const tankCells = (sources: CardSources, request: TankRequest): PageCell[] => {
  const { header, firstBarrel, lastBarrel } = tankRows(request);
  const fits = cells(firstBarrel, column('fits'), lastBarrel, column('fits'));
  const barrels = cells(firstBarrel, 0, lastBarrel, 0);
  const smallest = `SUMPRODUCT(MIN(${barrels}+1E+9*(${fits}<>"yes")))`;
  const answer =
    `IF(COUNTIF(${fits},"yes")=0,"None of these barrels keeps within your limits.",` +
    `"The smallest barrel within your limits holds "&${smallest}&" "&${sources.rig.barrel.unit}&".")`;
  return [
    place(0, 0, 'Tank what-if', 'title'),
    place(1, 0, formula(answer), 'answer'),
    place(2, 0, 'Change a barrel or a limit here and see. A limit that is blank limits nothing.', 'note'),
    ...limitRows(sources, request),
    ...stationRows(sources, request),
    ...barrelHeads(sources, header),
    ...request.barrels.flatMap((barrel, index) => barrelRow(sources, request, firstBarrel + index, barrel)),
  ];
};

/** Where the chart finds its numbers. */
export const tankChartAreas = (request: TankRequest): { labels: Area; mixing: Area; round: Area } => {
  const { firstBarrel } = tankRows(request);
  const down = (of: Column): Area => ({
    sheet: request.sheet,
    row: firstBarrel,
    column: column(of),
    rows: request.barrels.length,
    columns: 1,
  });
  return { labels: down('barrel'), mixing: down('mixing'), round: down('round') };
};

import type { Area, CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import { RIG_ROWS, place, type RigRow } from '../card/cardContext';
import { cell, cells, formula } from '../card/cardFormulas';
import type { CardSources } from '../card/cardSources';
import { rigFigures } from '../card/rigFigures';

/** What the sheet starts with; all of it can be changed there. */
export interface TankRequest {
  readonly sheet: string;
  /** In walking order; '' stands for a garden fed from one place. */
  readonly stations: readonly string[];
  /** Beds without a station of their own, and the one that the walk gives them. */
  readonly inherited?: readonly { readonly bed: string; readonly station: string }[];
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
/** Beside what is printed: what the numbers come from, each once. */
const WORKINGS = COLUMNS.length + 1;
const RIG = { row: 0, column: WORKINGS } as const;
const ROUND_ROWS = [
  'need',
  'plants',
  'missing',
  'visited',
  'last',
  'lastNeed',
  'smallest',
  'within',
] as const;
/** Beside a station what its doses come to and its place among those to feed; beside a barrel its fills at each station. */
const FILLS = WORKINGS + 3;

/** Below the figures of the round: beds without a station of their own, from their heads on. */
const INHERITED = RIG_ROWS.length + ROUND_ROWS.length + 1;

export const tankRows = ({ stations, barrels }: TankRequest) => {
  const firstStation = STATIONS_AT + 1;
  const header = firstStation + stations.length + 1;
  return { firstStation, header, firstBarrel: header + 1, lastBarrel: header + barrels.length };
};

const rig = (of: RigRow): string => cell(RIG_ROWS.indexOf(of), WORKINGS + 1);
const ofRound = (of: (typeof ROUND_ROWS)[number]): string =>
  cell(RIG_ROWS.length + ROUND_ROWS.indexOf(of), WORKINGS + 1);

const INHERITED_COLUMNS = ['bed', 'station', 'row', 'plants', 'solution'] as const;
type InheritedColumn = (typeof INHERITED_COLUMNS)[number];

const inheritedOf = ({ inherited = [] }: TankRequest, of: InheritedColumn): string | undefined => {
  const at = WORKINGS + INHERITED_COLUMNS.indexOf(of);
  return inherited.length === 0 ? undefined : cells(INHERITED + 1, at, INHERITED + inherited.length, at);
};

/** Each bed counts at the walk's station as long as it has none of its own. */
const inheritedRows = ({ beds }: CardSources, { inherited = [] }: TankRequest): PageCell[] => {
  if (inherited.length === 0) return [];
  const heads = ['Bed without a station', 'Station', 'Row of Beds', 'Plants', 'Solution'];
  return [
    ...heads.map((head, at) => place(INHERITED, WORKINGS + at, head, 'header')),
    ...inherited.flatMap(({ bed, station }, index) => {
      const row = INHERITED + 1 + index;
      const at = cell(row, WORKINGS + 2);
      const of = (column: string) =>
        formula(`IF(LEN(TRIM(INDEX(${beds.station},${at})))=0,INDEX(${column},${at}),0)`);
      const found = formula(`FEED.ROWOF(${cell(row, WORKINGS)},${beds.bed})`);
      return [bed, station, found, of(beds.plants), of(beds.solution)].map((input, column) =>
        place(row, WORKINGS + column, input, 'computed', column < 2 ? '@' : 'General'),
      );
    }),
  ];
};

const stationRows = (sources: CardSources, request: TankRequest): PageCell[] => {
  const { beds, doses } = sources;
  const heads: [at: number, input: CellInput][] = [
    [1, 'Plants'],
    [2, formula(`"Need, "&${rig('unit')}`)],
    [FILLS, formula(`"Doses, "&${doses.unit}`)],
    [FILLS + 1, formula(`"Doses, "&${rig('unit')}`)],
    [FILLS + 2, 'Fed as number'],
  ];
  return [
    place(STATIONS_AT, 0, 'Station', 'header'),
    ...heads.map(([at, input]) => place(STATIONS_AT, at, input, 'numberHeader')),
    ...request.stations.flatMap((station, index) => {
      const row = STATIONS_AT + 1 + index;
      const [name, plants, dosed] = [cell(row, 0), cell(row, 1), cell(row, FILLS + 1)];
      const soFar = `COUNTIF(${cells(STATIONS_AT + 1, 2, row, 2)},">0")`;
      const sum = (of: 'plants' | 'solution') => {
        if (station === '') return `SUM(${beds[of]})`;
        const own = `SUMIFS(${beds[of]},${beds.station},${name})`;
        const rest = inheritedOf(request, of);
        return rest === undefined ? own : `${own}+SUMIFS(${rest},${inheritedOf(request, 'station')},${name})`;
      };
      const asked = `FEED.INUNITS(${cell(row, FILLS)},${doses.unit},${rig('unit')})`;
      const need = `IF(${plants}>0,${dosed}+${plants}*${rig('spill')}+${rig('hose')},0)`;
      return [
        place(row, 0, station === '' ? 'the whole garden' : station, 'computed', '@'),
        place(row, 1, formula(sum('plants')), 'computed', '0'),
        place(row, 2, formula(need), 'computed', '#,##0.0'),
        place(row, FILLS, formula(sum('solution')), 'computed', '#,##0.0'),
        place(row, FILLS + 1, formula(asked), 'computed', '#,##0.0'),
        place(row, FILLS + 2, formula(`IF(${cell(row, 2)}>0,${soFar},0)`), 'computed', '0'),
      ];
    }),
  ];
};

const limitRows = ({ rig: from }: CardSources, { limits, style }: TankRequest): PageCell[] => {
  const rows: [string, CellInput, CellInput][] = [
    ['Most fills', limits.fills ?? null, 'fills'],
    ['Most weight, full', limits.weight ?? null, formula(from.emptyWeight.unit)],
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
  const { rig: from } = sources;
  const { firstStation } = tankRows(request);
  const at = (of: Column) => cell(row, column(of));
  const fills = cells(row, FILLS, row, FILLS + request.stations.length - 1);
  const ofBarrel = `${at('barrel')},${rig('unit')},${rig('heel')},${rig('fillLine')}`;
  const need = (station: number) => cell(firstStation + station, 2);
  const style = cell(LIMITS_AT + 3, 1);
  const minutes = (volume: string, flow: { value: string; unit: string }) =>
    `FEED.FILLTIME(${volume},${rig('unit')},${flow.value},${flow.unit})`;
  const limit = (of: Column, index: number) => {
    const most = cell(LIMITS_AT + index, 1);
    return `OR(N(${most})=0,${at(of)}<=${most})`;
  };
  const [needs, visited] = [ofRound('need'), ofRound('visited')];
  const inputs: [at: number, text: string, format: string][] = [
    [column('fills'), `SUM(${fills})`, '0'],
    [
      column('lastFill'),
      `INDEX(FEED.FILLPLAN(${ofRound('lastNeed')},${ofBarrel},${style}),INDEX(${fills},${ofRound('last')}),2)`,
      '#,##0.0',
    ],
    [
      column('weight'),
      `FEED.WEIGHT(${at('barrel')}*${rig('fillLine')},${rig('unit')},${from.emptyWeight.unit},${rig('weight')})`,
      '#,##0',
    ],
    [
      column('mixing'),
      `${at('fills')}*${rig('premix')}+${minutes(`${needs}+${visited}*${rig('heel')}`, from.tapFlow)}`,
      '#,##0',
    ],
    [
      column('round'),
      `${at('mixing')}+${minutes(needs, from.flow)}+${rig('walk')}*${ofRound('plants')}+${at('moves')}*${rig('move')}`,
      '#,##0',
    ],
    [column('moves'), `MAX(0,${visited}-1)`, '0'],
    [
      column('fits'),
      `IF(AND(${limit('fills', 0)},${limit('weight', 1)},${limit('round', 2)}),"yes","no")`,
      '@',
    ],
    ...request.stations.map((_, station): [number, string, string] => [
      FILLS + station,
      `IF(${need(station)}>0,FEED.FILLS(${need(station)},${ofBarrel}),0)`,
      '0',
    ]),
  ];
  return [
    place(row, 0, barrel, 'input', 'General'),
    ...inputs.map(([of, text, format]) => place(row, of, formula(text), 'computed', format)),
  ];
};

/** What all barrels have in common. */
const workingRows = (sources: CardSources, request: TankRequest): PageCell[] => {
  const { firstStation, header, firstBarrel, lastBarrel } = tankRows(request);
  const down = (at: number) => cells(firstStation, at, firstStation + request.stations.length - 1, at);
  const [barrels, fits] = (['barrel', 'fits'] as const).map((of) =>
    cells(firstBarrel, column(of), lastBarrel, column(of)),
  );
  const { plants: planted } = sources;
  const figures: Record<(typeof ROUND_ROWS)[number], [label: string, text: string]> = {
    need: ['Whole need', `SUM(${down(2)})`],
    plants: ['All plants', `SUM(${down(1)})`],
    missing: [
      'Not counted here',
      `IF(COUNT(${planted.howMany})>COUNT(${planted.solution}),1,SUM(${planted.howMany})-${ofRound('plants')})`,
    ],
    visited: ['Stations to feed', `MAX(${down(FILLS + 2)})`],
    last: ['The last of them', `MATCH(${ofRound('visited')},${down(FILLS + 2)},0)`],
    lastNeed: ['Its need', `INDEX(${down(2)},${ofRound('last')})`],
    smallest: ['Smallest within the limits', `SUMPRODUCT(MIN(${barrels}+1E+9*(${fits}<>"yes")))`],
    within: [
      'In words',
      `IF(COUNTIF(${fits},"yes")=0,"None of these barrels keeps within your limits.",` +
        `"The smallest barrel within your limits holds "&${ofRound('smallest')}&" "&${rig('unit')}&".")`,
    ],
  };
  return [
    ...rigFigures(sources, RIG, sources.rig.emptyWeight.unit),
    ...ROUND_ROWS.flatMap((of, index) => [
      place(RIG_ROWS.length + index, WORKINGS, figures[of][0], 'header'),
      place(RIG_ROWS.length + index, WORKINGS + 1, formula(figures[of][1]), 'computed', 'General'),
    ]),
    ...request.stations.map((station, index) => ({
      ...place(header, FILLS + index, station === '' ? 'Fills' : `Fills, ${station}`, 'numberHeader'),
      wrap: true as const,
    })),
  ];
};

const barrelHeads = ({ rig: from }: CardSources, row: number): PageCell[] => {
  const heads: Record<Column, CellInput> = {
    barrel: formula(`"Barrel, "&${rig('unit')}`),
    fills: 'Fills',
    lastFill: formula(`"Last fill, "&${rig('unit')}`),
    weight: formula(`"Weight full, "&${from.emptyWeight.unit}`),
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
  const { header, firstBarrel } = tankRows(request);
  const answer =
    `IF(${ofRound('missing')}<>0,"Some plants are not counted here yet. Compare the barrels again.",` +
    `${ofRound('within')})`;
  return [
    place(0, 0, 'Tank what-if', 'title'),
    place(1, 0, formula(answer), 'answer'),
    place(2, 0, 'Change a barrel or a limit here and see. A limit that is blank limits nothing.', 'note'),
    ...limitRows(sources, request),
    ...stationRows(sources, request),
    ...barrelHeads(sources, header),
    ...request.barrels.flatMap((barrel, index) => barrelRow(sources, request, firstBarrel + index, barrel)),
    ...workingRows(sources, request),
    ...inheritedRows(sources, request),
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

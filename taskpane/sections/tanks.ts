import { compareTanks, findUnit } from '../../addin/core';
import type { RoundInput, TankComparison, TankLimits, TankRow } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { roundInput } from '../../addin/workbook/roundInput';
import { offeredOnly, whyNoGarden, type WhyNot } from '../offer';
import { inUnitWords, plural } from '../quantityWords';
import type { PaneState } from '../state';
import { aboutTime } from '../time';
import type { Block, Chart, Section } from '../view';

import { askRound, roundAnswers } from './round';
import { askTanks, tanksAsked, tanksFault, type TankAnswers } from './tankFields';

const HOUR = 3600;
const MINUTE = 60;

const isRow = (row: TankComparison['rows'][number]): row is TankRow => !('refused' in row);

const words = (row: TankRow, unit: string): string =>
  `${inUnitWords(row.barrel, unit)} (${plural(row.fills, 'fill')}, ${aboutTime(row.roundTime)})`;

const limited = (limits: TankLimits): boolean => Object.keys(limits).length > 0;

const answerOf = ({ rows, smallest }: TankComparison, limits: TankLimits, unit: string): string => {
  const possible = rows.filter(isRow).sort((a, b) => a.barrel - b.barrel);
  const [least, most] = [possible[0], possible.at(-1)];
  if (least === undefined || most === undefined) return 'The round cannot be fed from any of these barrels';
  if (!limited(limits))
    return least === most ? words(least, unit) : `From ${words(least, unit)} to ${words(most, unit)}`;
  const found = smallest === undefined ? undefined : rows[smallest];
  if (found === undefined || !isRow(found)) return 'No barrel of these meets your limits';
  const { barrel, fills, roundTime } = found;
  return `${inUnitWords(barrel, unit)} is the smallest that meets your limits: ${plural(fills, 'fill')}, ${aboutTime(roundTime)}`;
};

const brief = (time: number): string => aboutTime(time).replace('about ', '');

/** What is told of each barrel, the weightiest first. */
const columnsOf = (unit: string, weightUnit: string): [string, (row: TankRow) => string][] => [
  ['Fills', ({ fills }) => String(fills)],
  ['Round', ({ roundTime }) => brief(roundTime)],
  ['Weight full', ({ weightFull }) => inUnitWords(weightFull, weightUnit)],
  ['Mixing and filling', ({ mixingAndFilling }) => brief(mixingAndFilling)],
  ['Last fill', ({ lastFill }) => inUnitWords(lastFill, unit)],
  ['Moves', ({ moves }) => String(moves)],
];

const tableOf = (
  { rows, smallest }: TankComparison,
  limits: TankLimits,
  unit: string,
  weightUnit: string,
): Block => {
  const columns = columnsOf(unit, weightUnit);
  return {
    kind: 'table',
    table: {
      id: 'tanks.table',
      caption: 'Barrels side by side',
      columns: [{ label: 'Barrel' }, ...columns.map(([label]) => ({ label, numeric: true }))],
      rows: rows.map((row) => [
        inUnitWords(row.barrel, unit),
        ...columns.map(([, words], index) => (isRow(row) ? words(row) : index === 0 ? 'not possible' : '')),
      ]),
      marked:
        smallest === undefined || !limited(limits) ? [] : [{ row: smallest, word: 'smallest that fits' }],
    },
  };
};

const refusalBlocks = ({ rows }: TankComparison, unit: string): Block[] =>
  rows.flatMap((row) =>
    isRow(row)
      ? []
      : [{ kind: 'text', tone: 'quiet', text: `${inUnitWords(row.barrel, unit)}: ${row.refused}` } as const],
  );

const chartOf = (comparison: TankComparison, unit: string): Chart | undefined => {
  const rows = comparison.rows.filter(isRow);
  const [first] = rows;
  if (first === undefined || rows.length < 2) return undefined;
  const quickest = rows.reduce((best, row) => (row.roundTime < best.roundTime ? row : best), first);
  const slowest = rows.reduce((worst, row) => (row.roundTime > worst.roundTime ? row : worst), first);
  const saved = slowest.roundTime - quickest.roundTime;
  const finding =
    saved < MINUTE
      ? 'The round takes as long with each of them.'
      : `${inUnitWords(quickest.barrel, unit)} is quickest, ${aboutTime(saved)} shorter than ${inUnitWords(slowest.barrel, unit)}.`;
  const hours = (time: number): number => Number((time / HOUR).toFixed(2));
  return {
    id: 'tanks.chart',
    type: 'bar',
    title: 'Round time by barrel',
    finding,
    labels: rows.map(({ barrel }) => inUnitWords(barrel, unit)),
    series: [
      { name: 'Round', unit: 'h', values: rows.map(({ roundTime }) => hours(roundTime)) },
      {
        name: 'of it mixing and filling',
        unit: 'h',
        values: rows.map(({ mixingAndFilling }) => hours(mixingAndFilling)),
      },
    ],
  };
};

export const whyNoTanks: WhyNot = (state) => {
  const { garden } = state;
  const none = whyNoGarden(state);
  if (garden === undefined || none !== undefined) return none;
  const input = roundInput(garden, roundAnswers(askRound(state, garden)));
  if (Array.isArray(input)) return input[0]?.refused;
  const asked = askTanks(state, garden);
  return tanksAsked(asked) === undefined ? tanksFault(asked) : undefined;
};

export const tanksSection = (state: PaneState, garden: Garden): Section => {
  const asked = askTanks(state, garden);
  const input = roundInput(garden, roundAnswers(askRound(state, garden)));
  const wanted = tanksAsked(asked);
  const fields: Block[] = [
    {
      kind: 'fields',
      legend: 'Barrels',
      fields: [asked.unit.field, ...asked.sizes.map(({ field }) => field)],
    },
    {
      kind: 'fields',
      legend: 'Your limits',
      fields: [asked.mostFills.field, asked.mostWeight.field, asked.longest.field],
    },
  ];
  const bare = (answer: string, blocks: Block[]): Section => ({
    id: 'tanks',
    title: 'Tank what-if',
    answer,
    blocks,
  });
  if (Array.isArray(input))
    return bare('A round must be ready before barrels can be compared', [
      { kind: 'text', text: input[0]?.refused ?? '', tone: 'warning' },
      { kind: 'actions', actions: [{ id: 'go.round', label: 'Go to Round', primary: true }] },
    ]);
  if (wanted === undefined) return bare('Type the sizes to compare', fields);
  const unit = findUnit(asked.unit.value ?? '')?.token ?? 'L';
  const comparison = compareTanks(input, wanted.tanks, wanted.limits);
  const chart = chartOf(comparison, unit);
  return bare(answerOf(comparison, wanted.limits, unit), [
    ...fields,
    {
      kind: 'actions',
      actions: offeredOnly(state, whyNoTanks, {
        id: 'tanks.write',
        label: 'Write the what-if sheet',
        primary: true,
      }),
    },
    tableOf(comparison, wanted.limits, unit, asked.weightUnit),
    ...refusalBlocks(comparison, unit),
    ...(chart === undefined ? [] : [{ kind: 'chart', chart } as const]),
  ]);
};

/** What the comparison comes to, in one sentence. */
export const tanksFinding = (input: RoundInput, asked: TankAnswers): string => {
  const { tanks, limits } = tanksAsked(asked) ?? { tanks: [], limits: {} };
  return `${answerOf(compareTanks(input, tanks, limits), limits, asked.unit.value ?? '')}.`;
};

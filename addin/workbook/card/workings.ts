import { countsApartText } from '../../core';
import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import {
  TIME,
  VOLUME,
  fillRanges,
  lastTime,
  overFills,
  place,
  stationFigures,
  workings as workingsOf,
  type WordRow,
} from './cardContext';
import { cells, formula, quoted } from './cardFormulas';
import { measureHeads } from './measureCells';
import { productFigures } from './productFigures';
import { rigFigures } from './rigFigures';

/** Plants × what stands in a row of the counts, over all sizes. */
const overSizes = ({ request, layout }: CardContext, row: number): string => {
  const { counts, column } = layout;
  const last = column.firstClass + request.sizeClasses.length - 1;
  const across = (at: number) => cells(at, column.firstClass, at, last);
  return `SUMPRODUCT(${across(counts.plants)},${across(row)})`;
};

/** Share by which the counts give more, or less, than the doses ask for. */
const apart = (context: CardContext): string => {
  const { rig, doses } = context.sources;
  const { words: word } = workingsOf(context);
  return `FEED.DOSE(${word('held')},${rig.flow.value},${rig.flow.unit},${doses.unit})/${word('asked')}-1`;
};

const heaviest = (context: CardContext): string => {
  const { request, layout } = context;
  const { rig } = workingsOf(context);
  const level = `MAX(${fillRanges(context, layout.column.pumpOut)})+${rig('heel')}`;
  return `FEED.WEIGHT(${level},${rig('unit')},${quoted(request.weightUnit)},${rig('weight')})`;
};

/** What the round came to when the card was made: values, so that it can be logged whatever the sheets say later. */
const record = (context: CardContext): PageCell[] => {
  const { made } = context.request;
  const { row, column } = workingsOf(context).work.made;
  const lines: [string, CellInput, string][] = [
    ['Date, as made', made.date, 'yyyy-mm-dd'],
    ['Start, as made', made.start, TIME],
    ['Mix, as made', made.mix, '@'],
    ['Fills, as made', made.fills, '0'],
    ['Plants, as made', made.plants, '0'],
    ['Made up, as made', made.madeUp, VOLUME],
    ['Need, as made', made.need, VOLUME],
    ['Done by, as made', made.finish, TIME],
    ['Unit, as made', made.unit, '@'],
    ['Cost, as made', made.cost ?? 'not known', '0.00'],
  ];
  return lines.flatMap(([label, value, format], at) => [
    place(row + at, column - 1, label, 'header'),
    place(row + at, column, value, 'computed', format),
  ]);
};

const pairs = (context: CardContext): PageCell[] => {
  const { sources, request, layout } = context;
  const { work } = workingsOf(context);
  const sumOf = (column: number) => `SUM(${stationFigures(context, column)})`;
  const finish = `${lastTime(context, work.doneBy)}/1440`;
  const { row, column } = work.product(0, 'cost');
  const costs = cells(row, column, row + Math.max(1, request.products.length) - 1, column);
  const cost = `IF(COUNT(${costs})=${request.products.length},SUM(${costs}),"not known")`;
  const mix = `IF(TRIM(${sources.mix.name})="",${quoted(request.unnamed)},TRIM(${sources.mix.name}))`;
  const rows: [string, { row: number; column: number }, CellInput, StyleToken, string][] = [
    ['Date', work.date, request.date, 'input', 'yyyy-mm-dd'],
    ['Start', work.start, request.start, 'input', TIME],
    ['Fills: full or equal', work.style, request.style, 'input', '@'],
    ['Mix', work.mix, formula(mix), 'computed', '@'],
    ['Fills now', work.fills, formula(sumOf(work.fills0)), 'computed', '0'],
    ['Plants', work.plants, formula(sumOf(work.plants0)), 'computed', '0'],
    ['Counts give more by', work.apart, formula(apart(context)), 'computed', '0.0%'],
    ['Made up', work.madeUp, formula(overFills(context, layout.column.makeUp)), 'computed', VOLUME],
    ['Need', work.need, formula(sumOf(work.need0)), 'computed', VOLUME],
    ['Done by', work.finish, formula(finish), 'computed', TIME],
    ['Cost', work.cost, request.products.length === 0 ? 0 : formula(cost), 'computed', '0.00'],
    ['Why above the label', work.reason, request.overLabelReason || null, 'input', '@'],
    ['Unread rows left out', work.leftOut, request.leaveOutUnread ? 'yes' : 'no', 'computed', '@'],
    ['Heaviest', work.heaviest, formula(heaviest(context)), 'computed', '0'],
  ];
  return rows.flatMap(([label, at, input, style, format]) => [
    place(at.row, at.column - 1, label, 'header'),
    place(at.row, at.column, input, style, format),
  ]);
};

/** Parts of the headline, of the line under it and of a caution. */
const words = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const { work, at, words: word, product, rig } = workingsOf(context);
  const percent = '\u0001';
  const told = (given: 'more' | 'less') =>
    quoted(countsApartText(percent, given)).replace(percent, `"&${word('percent')}&" %`);
  const texts: Record<WordRow, [label: string, text?: string]> = {
    held: ['Seconds at all plants', overSizes(context, layout.counts.seconds)],
    asked: ['Doses of all plants', overSizes(context, layout.counts.dose)],
    fills: [
      'Fills in words',
      `${at(work.fills)}&IF(${at(work.fills)}=1," fill, "," fills, ")&ROUND(${at(work.madeUp)},1)&" "&${rig('unit')}&" made up"`,
    ],
    lasts: ['Takes', `FEED.HOWLONG((${at(work.finish)}-${at(work.start)})*1440)`],
    percent: ['Counts are off by, %', `ROUND(ABS(${at(work.apart)})*100,1)`],
    more: ['Where they give more', told('more')],
    less: ['Where they give less', told('less')],
    unchecked: [
      'Not checked',
      request.products.map((_, index) => product(index, 'unchecked')).join('&') || '""',
    ],
    // What these two come to stands with the checks.
    first: ['First of the checks'],
    says: ['Said in place of measures'],
  };
  return Object.entries(texts).flatMap(([of, [label, text]]) => {
    const { row, column } = work.words(of as WordRow);
    const beside = text === undefined ? [] : [place(row, column, formula(text), 'computed')];
    return [place(row, column - 1, label, 'header'), ...beside];
  });
};

/** Beside the card and not printed: what can be changed on it, what its numbers come from, and what the log takes over. */
export const workingCells = (context: CardContext): PageCell[] => [
  ...pairs(context),
  ...productFigures(context),
  ...rigFigures(context.sources, workingsOf(context).work.rigLabels, quoted(context.request.weightUnit)),
  ...words(context),
  ...measureHeads(context),
  ...record(context),
];

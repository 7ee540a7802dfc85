import fc from 'fast-check';

import type { System } from '../../../addin/core';
import type { CellValue } from '../../../addin/workbook/change';
import { CARD_CELLS, LATER_CELLS } from '../../../addin/workbook/card/cardNames';
import type { Snapshot } from '../../../addin/workbook/port';
import { gardenSheets } from '../../../addin/workbook/sheets/gardenSheets';
import { areaNamed, cellAt } from '../../../addin/workbook/snapshot';
import { placesOf } from '../../../addin/workbook/tables/buildSheets';
import { RATE_UNITS } from './gardens';

/** A value typed into a cell. */
export interface Typed {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

/** What is typed, and what for. */
export interface CellEdit {
  readonly what: string;
  readonly typed: readonly Typed[];
}

/** Chance by which an edit is chosen and made: each share is from 0 up to 1. */
export interface Draw {
  readonly which: number;
  readonly row: number;
  readonly value: number;
  /** True where it is taken back before the next one. */
  readonly back: boolean;
}

const share = fc.integer({ min: 0, max: 9_999 }).map((n) => n / 10_000);
export const draws: fc.Arbitrary<Draw> = fc.record({
  which: share,
  row: share,
  value: share,
  back: fc.integer({ min: 0, max: 9 }).map((n) => n < 6),
});

const pick = <T>(list: readonly T[], at: number): T | undefined => list[Math.floor(at * list.length)];
const plainly = (value: number): number => Number(value.toPrecision(3));

/** What people type wrong into a cell of numbers. */
const WRONG: readonly CellValue[] = [null, '2', 'much', 0, -1, 1e9, 'n/a'];
const UNITS: readonly CellValue[] = ['gal', 'L', 'mL', 'imp gal', 'lb', 'gal/min', null, 'bucket'];
const RATES: readonly CellValue[] = [
  ...RATE_UNITS.US,
  ...RATE_UNITS.metric,
  ...RATE_UNITS.imperial,
  null,
  'a lot',
];

type Make = (draw: Draw) => CellEdit | undefined;

/** Every edit that is tried on the cells of a garden, by what it does; the numbers are how often. */
const makers = (snapshot: Snapshot, measures: System): readonly (readonly [often: number, make: Make])[] => {
  const places = placesOf(gardenSheets, snapshot)!;
  const valueAt = (sheet: string, row: number, column: number) => cellAt(snapshot, sheet, row, column).value;
  const columnOf = (table: string, key: string) => places.sites[table]!.columns[key]!;
  const inRow = (table: string, key: string, row: number): Omit<Typed, 'value'> => ({
    sheet: places.sites[table]!.sheet,
    row,
    column: columnOf(table, key),
  });
  const rowAt = (table: string, at: number) => pick(places.sites[table]!.rows, at);
  const edit = (what: string, ...typed: Typed[]): CellEdit => ({ what, typed });
  const beside = (name: string): Omit<Typed, 'value'> => {
    const { sheet, row, column } = areaNamed(snapshot, name)!;
    return { sheet, row, column };
  };

  /** A number of a table made greater or less. */
  const times =
    (table: string, key: string, least: number, most: number): Make =>
    ({ row: at, value }) => {
      const row = rowAt(table, at);
      if (row === undefined) return undefined;
      const cell = inRow(table, key, row);
      const now = valueAt(cell.sheet, cell.row, cell.column);
      if (typeof now !== 'number') return undefined;
      const next = plainly(now * least * (most / least) ** value);
      return edit(`${table}.${key} from ${now} to ${next}`, { ...cell, value: next });
    };
  const oneOf =
    (table: string, key: string, values: readonly CellValue[]): Make =>
    ({ row: at, value }) => {
      const row = rowAt(table, at);
      if (row === undefined) return undefined;
      const next = pick(values, value)!;
      return edit(`${table}.${key} to ${JSON.stringify(next)}`, { ...inRow(table, key, row), value: next });
    };
  /** A name written otherwise: as another row has it, in other letters, with spaces, as a pattern. */
  const respelt =
    (table: string, key: string): Make =>
    ({ row: at, value }) => {
      const row = rowAt(table, at);
      if (row === undefined) return undefined;
      const cell = inRow(table, key, row);
      const now = String(valueAt(cell.sheet, cell.row, cell.column) ?? '');
      const others = places.sites[table]!.rows.map((one) => valueAt(cell.sheet, one, cell.column));
      const all = [now.toUpperCase(), ` ${now} `, `${now} 2`, `${now.slice(0, 2)}*`, '?', ...others, null];
      const next = pick(all, value)!;
      return edit(`${table}.${key} from ${now} to ${JSON.stringify(next)}`, { ...cell, value: next });
    };
  const emptied =
    (table: string): Make =>
    ({ row: at }) => {
      const row = rowAt(table, at);
      const site = places.sites[table]!;
      if (row === undefined) return undefined;
      const cells = Object.entries(site.table.columns).flatMap(([key, column]) =>
        'formula' in column ? [] : [{ ...inRow(table, key, row), value: null }],
      );
      return edit(`${table}, row ${row + 1} emptied`, ...cells);
    };
  /** Two rows changed places, or one standing twice. */
  const moved =
    (table: string, twice: boolean): Make =>
    ({ row: at, value }) => {
      const site = places.sites[table]!;
      const [from, to] = [rowAt(table, at), twice ? site.end : rowAt(table, value)];
      if (from === undefined || to === undefined || from === to) return undefined;
      const inputs = Object.entries(site.table.columns).flatMap(([key, column]) =>
        'formula' in column ? [] : [columnOf(table, key)],
      );
      const take = (source: number, target: number) =>
        inputs.map((column) => ({
          sheet: site.sheet,
          row: target,
          column,
          value: valueAt(site.sheet, source, column),
        }));
      return edit(
        `${table}, row ${from + 1} ${twice ? 'twice' : `and row ${to + 1} in each other’s place`}`,
        ...take(from, to),
        ...(twice ? [] : take(to, from)),
      );
    };
  const named =
    (name: string, values: readonly CellValue[]): Make =>
    ({ value }) => {
      const next = pick(values, value)!;
      return edit(`${name} to ${JSON.stringify(next)}`, { ...beside(name), value: next });
    };
  const lines = ['barrel', 'heel', 'flow', 'tap_flow', 'hose_holds', 'empty_weight'];
  const numbers = ['fill_line', 'between_plants', 'count_step', 'premix_time', 'move_time'];
  const scaled =
    (names: readonly string[]): Make =>
    ({ row, value }) => {
      const name = `Rig_${pick(names, row)!}`;
      const cell = beside(name);
      const now = valueAt(cell.sheet, cell.row, cell.column);
      if (typeof now !== 'number') return undefined;
      const next = plainly(
        Math.min(now * 0.6 * (1.6 / 0.6) ** value, name === 'Rig_fill_line' ? 1 : Infinity),
      );
      return edit(`${name} from ${now} to ${next}`, { ...cell, value: next });
    };
  const ofTheRig =
    (names: readonly string[], unit: boolean, values: readonly CellValue[]): Make =>
    (draw) =>
      named(`Rig_${pick(names, draw.row)!}${unit ? '_unit' : ''}`, values)(draw);
  const added =
    (table: string, row: Readonly<Record<string, (draw: Draw) => CellValue>>): Make =>
    (draw) =>
      edit(
        `${table}, a row more`,
        ...Object.entries(row).map(([key, value]) => ({
          ...inRow(table, key, places.sites[table]!.end),
          value: value(draw),
        })),
      );
  const any = (table: string, key: string) => (draw: Draw) => {
    const cell = inRow(table, key, rowAt(table, draw.row) ?? 0);
    return valueAt(cell.sheet, cell.row, cell.column);
  };
  const spare = () =>
    valueAt(
      places.sites['products']!.sheet,
      places.sites['products']!.rows.at(-1)!,
      columnOf('products', 'name'),
    );

  return [
    [6, times('doses', 'dose', 0.5, 1.3)],
    [2, oneOf('doses', 'dose', WRONG)],
    [1, respelt('doses', 'sizeClass')],
    [1, named('Doses_unit', UNITS)],
    [1, moved('doses', true)],
    [8, times('mix', 'rate', 0.3, 2.5)],
    [3, oneOf('mix', 'rate', WRONG)],
    [2, oneOf('mix', 'rateUnit', RATES)],
    [1, oneOf('mix', 'rateUnit', RATE_UNITS[measures])],
    [2, respelt('mix', 'product')],
    [1, emptied('mix')],
    [2, moved('mix', false)],
    [1, moved('mix', true)],
    [1, added('mix', { product: spare, rate: () => 1, rateUnit: () => RATE_UNITS[measures][0]! })],
    [1, named('Mix_name', ['Another feed', null, 7])],
    [6, times('products', 'greatestRate', 0.4, 3)],
    [3, oneOf('products', 'greatestRate', WRONG)],
    [2, oneOf('products', 'greatestRateUnit', RATES)],
    [2, times('products', 'density', 0.7, 1.4)],
    [2, oneOf('products', 'density', [...WRONG, 1.1])],
    [1, oneOf('products', 'solubility', [...WRONG, 200])],
    [1, oneOf('products', 'form', ['powder', 'liquid', 'dry', 'Powder ', null, 'solid'])],
    [2, oneOf('products', 'price', [...WRONG, 12])],
    [1, oneOf('products', 'pack', [...WRONG, 4])],
    [1, oneOf('products', 'packUnit', ['lb', 'L', 'gal', null, 'sack'])],
    [2, respelt('products', 'name')],
    [1, emptied('products')],
    [2, moved('products', false)],
    [1, moved('products', true)],
    [9, scaled([...lines, ...numbers])],
    [3, ofTheRig([...lines, ...numbers], false, WRONG)],
    [2, ofTheRig(lines, true, UNITS)],
    [1, named('Rig_flow_unit', ['L/min', 'gal/min', 'gal/h', 'mL/s', 'gal'])],
    [1, named('Rig_wand_stays_open', ['yes', 'no', null, 'YES ', true, 'maybe', 1])],
    [1, added('timedBuckets', { seconds: () => 60 })],
    [5, times('plants', 'howMany', 0.4, 1.3)],
    [3, oneOf('plants', 'howMany', [1, 2, 5, 0])],
    [2, oneOf('plants', 'howMany', [...WRONG, 2.5])],
    [2, respelt('plants', 'bed')],
    [2, respelt('plants', 'sizeClass')],
    [1, emptied('plants')],
    [1, moved('plants', false)],
    [
      2,
      added('plants', { bed: any('plants', 'bed'), sizeClass: any('plants', 'sizeClass'), howMany: () => 2 }),
    ],
    [1, added('plants', { bed: () => 'New bed', sizeClass: any('plants', 'sizeClass'), howMany: () => 2 })],
    [1, respelt('beds', 'bed')],
    [1, respelt('beds', 'station')],
    [1, oneOf('beds', 'walk', [null, 1, 9, 'first', 0])],
    [1, emptied('beds')],
    [1, named('Settings_fills', ['equal', 'full'])],
    [1, named(CARD_CELLS.date, [46_200])],
    [2, named(CARD_CELLS.start, [0.25, 0.999, 0, 'early', -0.1, 1, 1.5, null, '7:00'])],
    [2, named(CARD_CELLS.style, ['equal', 'full', 'Equal ', 'ful', null, 1])],
    [2, named(LATER_CELLS.reason, [null, 'Another reason', '  '])],
  ];
};

/** The edit that a draw chooses; undefined where the garden has nothing for it. */
export const editOf = (snapshot: Snapshot, measures: System, draw: Draw): CellEdit | undefined => {
  const all = makers(snapshot, measures);
  let left = draw.which * all.reduce((sum, [often]) => sum + often, 0);
  const chosen = all.find(([often]) => (left -= often) < 0)!;
  return chosen[1](draw);
};

/** What brings the cells back. */
export const backOf = (snapshot: Snapshot, { what, typed }: CellEdit): CellEdit => ({
  what: `back: ${what}`,
  typed: typed.map((one) => {
    const { value, formula } = cellAt(snapshot, one.sheet, one.row, one.column);
    return { ...one, value, ...(formula === undefined ? {} : { formula }) };
  }),
});

import type { Style } from '@cj-tech-master/excelts';
import {
  BooleanNumber,
  BorderStyleTypes,
  CellValueType,
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  DrawingTypeEnum,
  HorizontalAlign,
  LocaleType,
  VerticalAlign,
  WrapStrategy,
} from '@univerjs/core';
import { expect, test } from 'vitest';

import { gridRule } from '../../../addin/hosts/workbench/files/gridRules';
import { fileStyle, gridStyle } from '../../../addin/hosts/workbench/files/cellStyles';
import * as kept from '../../../addin/hosts/workbench/grid/kept';

/* The page makes the grid's own data before it has the grid: their numbers are the grid's. */

test('what the page says by number means the same to the grid', () => {
  expect(kept).toMatchObject({
    STRING: CellValueType.STRING,
    NUMBER: CellValueType.NUMBER,
    BOOLEAN: CellValueType.BOOLEAN,
    FORCE_STRING: CellValueType.FORCE_STRING,
    ENGLISH: LocaleType.EN_US,
    NO: BooleanNumber.FALSE,
    YES: BooleanNumber.TRUE,
    WRAPPED: WrapStrategy.WRAP,
    OVER_CELLS: DrawingTypeEnum.DRAWING_DOM,
    ARROW: DataValidationRenderMode.ARROW,
    STRICTNESS: {
      information: DataValidationErrorStyle.INFO,
      stop: DataValidationErrorStyle.STOP,
      warning: DataValidationErrorStyle.WARNING,
    },
  });
});

const NAMES: Readonly<Record<string, string>> = { JUSTIFIED: 'justify' };
/** The words of files for what the grid calls DASH_DOT. */
const inFiles = (name: string): string =>
  NAMES[name] ?? name.toLowerCase().replace(/_(.)/g, (_, letter: string) => letter.toUpperCase());
const entriesOf = (numbers: object): [string, number][] =>
  Object.entries(numbers).filter(
    (entry): entry is [string, number] => typeof entry[1] === 'number' && entry[1] > 0,
  );

test.each(entriesOf(BorderStyleTypes))('a line %s is the same in files and in the grid', (name, number) => {
  const style = { border: { top: { style: inFiles(name) } } } as Partial<Style>;
  const look = gridStyle(style);
  expect(look?.bd?.t?.s).toBe(number);
  expect(fileStyle(look!).border?.top?.style).toBe(inFiles(name));
});

test.each([
  ...entriesOf(HorizontalAlign)
    .filter(([name]) => name !== 'BOTH' && name !== 'DISTRIBUTED')
    .map(([name, number]) => ['horizontal', name, number] as const),
  ...entriesOf(VerticalAlign).map(([name, number]) => ['vertical', name, number] as const),
])('%s %s is the same in files and in the grid', (way, name, number) => {
  const look = gridStyle({ alignment: { [way]: inFiles(name) } });
  expect(way === 'horizontal' ? look?.ht : look?.vt).toBe(number);
  expect(fileStyle(look!).alignment?.[way]).toBe(inFiles(name));
});

test.each(['list', 'whole', 'decimal', 'date', 'textLength', 'custom'] as const)(
  'a rule of the kind %s has the same name in files and in the grid',
  (type) => {
    const area = { sheet: 'Beds', row: 0, column: 0, rows: 1, columns: 1 };
    const rule = gridRule({ type, formulae: ['1'], areas: [area] });
    expect(Object.values(DataValidationType)).toContain(rule?.type);
  },
);

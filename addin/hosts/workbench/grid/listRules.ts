import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  type IDataValidationRule,
} from '@univerjs/core';
import {
  AddSheetDataValidationCommand,
  SheetDataValidationModel,
} from '@univerjs/preset-sheets-data-validation';

import { fixedReference } from '../../../workbook/address';
import type { Area } from '../../../workbook/change';
import { freshId } from './bookData';
import { inside, type Grid } from './openGrid';
import { rangeOf } from './ranges';
import { areaOfReference } from '../../../workbook/references';

export interface ListRule {
  readonly area: Area;
  readonly source: readonly string[] | Area;
  readonly message: string;
}

const isArea = (source: readonly string[] | Area): source is Area => 'sheet' in source;

/** Other programs name no sheet where the entries stand on the rule's own; `sheet` is then the one meant. */
export const listSource = (
  formula: string | undefined,
  sheet: string,
): readonly string[] | Area | undefined => {
  if (!formula) return undefined;
  if (formula.startsWith('=')) return areaOfReference(formula, sheet);
  try {
    const entries: unknown = JSON.parse(formula);
    if (Array.isArray(entries)) return entries.map(String);
  } catch {
    // Older books keep the entries with commas between them.
  }
  return formula.split(',');
};

/** The grid's own rule; the entries are offered in a list and anything else is refused with the message. */
export const gridListRule = ({ area, source, message }: ListRule): IDataValidationRule => ({
  uid: freshId('list'),
  type: DataValidationType.LIST,
  formula1: isArea(source) ? `=${fixedReference(source)}` : JSON.stringify(source),
  ranges: [rangeOf(area)],
  allowBlank: true,
  showDropDown: true,
  renderMode: DataValidationRenderMode.ARROW,
  errorStyle: DataValidationErrorStyle.STOP,
  showErrorMessage: true,
  error: message,
});

export const setListRule = (grid: Grid, unitId: string, subUnitId: string, rule: ListRule): boolean =>
  grid.commands.syncExecuteCommand(AddSheetDataValidationCommand.id, {
    unitId,
    subUnitId,
    rule: gridListRule(rule),
  });

/** The list rule that holds for a cell. */
export const listRuleAt = (
  grid: Grid,
  sheet: { readonly unitId: string; readonly id: string; readonly name: string },
  row: number,
  column: number,
): Omit<ListRule, 'area'> | undefined => {
  const rule = inside(grid)
    .get(SheetDataValidationModel)
    .getRuleByLocation(sheet.unitId, sheet.id, row, column);
  if (rule?.type !== DataValidationType.LIST) return undefined;
  const source = listSource(rule.formula1, sheet.name);
  return source && { source, message: rule.error ?? '' };
};

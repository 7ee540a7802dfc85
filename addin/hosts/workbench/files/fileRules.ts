import type { DataValidation, DataValidationOperator, Worksheet } from '@cj-tech-master/excelts';
import { DataValidationType, type IDataValidationRule, type IRange } from '@univerjs/core';

import { cellAddress, fixedReference } from '../../../workbook/address';
import { STRICTNESS } from '../grid/kept';
import { listSource } from '../grid/listRules';

const address = ({ startRow, startColumn, endRow, endColumn }: IRange): string =>
  startRow === endRow && startColumn === endColumn
    ? cellAddress(startRow, startColumn)
    : `${cellAddress(startRow, startColumn)}:${cellAddress(endRow, endColumn)}`;

const listFormulae = (formula: string | undefined, sheet: string): string[] => {
  const source = listSource(formula, sheet);
  if (!source) return formula ? [formula.replace(/^=/, '')] : [];
  return ['sheet' in source ? fixedReference(source) : `"${source.join(',').replaceAll('"', '""')}"`];
};

const KINDS = ['list', 'whole', 'decimal', 'date', 'textLength', 'custom'] as const;

const strictness = (kept: number | undefined): string =>
  Object.entries(STRICTNESS).find(([, number]) => number === kept)?.[0] ?? 'stop';

const fileRule = (rule: IDataValidationRule, sheet: string): DataValidation | undefined => {
  const type = KINDS.find((kind) => kind === rule.type);
  if (!type) return undefined;
  const formulae =
    rule.type === DataValidationType.LIST
      ? listFormulae(rule.formula1, sheet)
      : [rule.formula1, rule.formula2]
          .filter((one) => one !== undefined && one !== '')
          .map((one) => one!.replace(/^=/, ''));
  return {
    type,
    formulae,
    ...(rule.operator ? { operator: rule.operator as DataValidationOperator } : {}),
    allowBlank: rule.allowBlank ?? true,
    errorStyle: strictness(rule.errorStyle),
    showErrorMessage: rule.showErrorMessage ?? true,
    ...(rule.error ? { error: rule.error } : {}),
    ...(rule.errorTitle ? { errorTitle: rule.errorTitle } : {}),
    ...(rule.prompt ? { prompt: rule.prompt, showInputMessage: true } : {}),
    ...(rule.promptTitle ? { promptTitle: rule.promptTitle } : {}),
  };
};

/** Writes the rules of a sheet on what may be entered. */
export const addRules = (sheet: Worksheet, rules: readonly IDataValidationRule[]): void => {
  for (const rule of rules) {
    const kept = fileRule(rule, sheet.name);
    if (kept) for (const range of rule.ranges) sheet.dataValidations.add(address(range), kept);
  }
};

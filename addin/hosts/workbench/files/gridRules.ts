import {
  DataValidationErrorStyle,
  type DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  type IDataValidationRule,
} from '@univerjs/core';

import { serialDay } from '../../../files/days';
import type { FileRule } from '../../../files/fileBook';
import { freshId } from '../grid/bookData';
import { rangeOf } from '../grid/ranges';

const STRICTNESS: Readonly<Record<string, DataValidationErrorStyle>> = {
  stop: DataValidationErrorStyle.STOP,
  warning: DataValidationErrorStyle.WARNING,
  information: DataValidationErrorStyle.INFO,
};

const KINDS: Readonly<Record<string, DataValidationType>> = {
  list: DataValidationType.LIST,
  whole: DataValidationType.WHOLE,
  decimal: DataValidationType.DECIMAL,
  date: DataValidationType.DATE,
  textLength: DataValidationType.TEXT_LENGTH,
  custom: DataValidationType.CUSTOM,
};

/** Given entries stand in quotes with commas between them; anything else is a reference. */
const listFormula = (text: string): string => {
  const given = /^"(.*)"$/s.exec(text)?.[1];
  return given === undefined
    ? `=${text}`
    : JSON.stringify(
        given
          .replaceAll('""', '"')
          .split(',')
          .map((entry) => entry.trim()),
      );
};

const ruleFormula = (
  type: DataValidationType,
  formula: string | number | Date | undefined,
): string | undefined => {
  if (formula === undefined) return undefined;
  if (formula instanceof Date) return String(serialDay(formula));
  const text = String(formula);
  if (type === DataValidationType.LIST) return listFormula(text);
  return Number.isFinite(Number(text)) ? text : `=${text}`;
};

/** A file's rule on what may be entered, as the grid keeps it; undefined for one of a kind that it does not know. */
export const gridRule = (rule: FileRule): IDataValidationRule | undefined => {
  const type = KINDS[rule.type];
  if (!type || rule.areas.length === 0) return undefined;
  const formula1 = ruleFormula(type, rule.formulae[0]);
  const formula2 = ruleFormula(type, rule.formulae[1]);
  return {
    uid: freshId('rule'),
    type,
    ranges: rule.areas.map(rangeOf),
    ...(rule.operator ? { operator: rule.operator as DataValidationOperator } : {}),
    ...(formula1 === undefined ? {} : { formula1 }),
    ...(formula2 === undefined ? {} : { formula2 }),
    allowBlank: rule.allowBlank ?? false,
    showDropDown: true,
    renderMode: DataValidationRenderMode.ARROW,
    errorStyle: STRICTNESS[rule.errorStyle ?? 'stop'] ?? DataValidationErrorStyle.STOP,
    showErrorMessage: rule.showErrorMessage ?? true,
    error: rule.error ?? '',
    ...(rule.errorTitle ? { errorTitle: rule.errorTitle } : {}),
    showInputMessage: rule.showInputMessage ?? false,
    ...(rule.prompt ? { prompt: rule.prompt } : {}),
    ...(rule.promptTitle ? { promptTitle: rule.promptTitle } : {}),
  };
};

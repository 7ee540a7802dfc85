import type { DataValidationOperator, DataValidationType, IDataValidationRule } from '@univerjs/core';

import { serialDay } from '../../../files/days';
import type { FileRule } from '../../../files/fileBook';
import { freshId } from '../grid/bookData';
import { ARROW, STRICTNESS } from '../grid/kept';
import { rangeOf } from '../grid/ranges';

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
  type: FileRule['type'],
  formula: string | number | Date | undefined,
): string | undefined => {
  if (formula === undefined) return undefined;
  if (formula instanceof Date) return String(serialDay(formula));
  const text = String(formula);
  if (type === 'list') return listFormula(text);
  return Number.isFinite(Number(text)) ? text : `=${text}`;
};

const isStrictness = (word: string | undefined): word is keyof typeof STRICTNESS =>
  word !== undefined && word in STRICTNESS;

/** A file's rule on what may be entered, as the grid keeps it; both name its kind in the same words. */
export const gridRule = (rule: FileRule): IDataValidationRule | undefined => {
  if (rule.areas.length === 0) return undefined;
  const formula1 = ruleFormula(rule.type, rule.formulae[0]);
  const formula2 = ruleFormula(rule.type, rule.formulae[1]);
  return {
    uid: freshId('rule'),
    type: rule.type as DataValidationType,
    ranges: rule.areas.map(rangeOf),
    ...(rule.operator ? { operator: rule.operator as DataValidationOperator } : {}),
    ...(formula1 === undefined ? {} : { formula1 }),
    ...(formula2 === undefined ? {} : { formula2 }),
    allowBlank: rule.allowBlank ?? false,
    showDropDown: true,
    renderMode: ARROW,
    errorStyle: STRICTNESS[isStrictness(rule.errorStyle) ? rule.errorStyle : 'stop'],
    showErrorMessage: rule.showErrorMessage ?? true,
    error: rule.error ?? '',
    ...(rule.errorTitle ? { errorTitle: rule.errorTitle } : {}),
    showInputMessage: rule.showInputMessage ?? false,
    ...(rule.prompt ? { prompt: rule.prompt } : {}),
    ...(rule.promptTitle ? { promptTitle: rule.promptTitle } : {}),
  };
};

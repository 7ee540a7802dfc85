import type { DataValidation, Workbook, Worksheet } from '@cj-tech-master/excelts';
import {
  DataValidationErrorStyle,
  type DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  type IDataValidationRule,
} from '@univerjs/core';

import { freshId } from '../grid/bookData';
import type { KeptName, KeptNote } from '../grid/bookParts';
import { WHOLE_BOOK } from '../grid/names';
import { rangeOf } from '../grid/ranges';
import { serialDay } from './days';
import { fileAreas } from './fileAreas';

/** The library doubles an apostrophe in a sheet name that is doubled already. */
const requoted = (reference: string): string => reference.replaceAll("''''", "''");

/** The names of a file; those that programs keep for themselves, such as print areas, are left out. */
export const namesIn = (file: Workbook, idOf: (sheet: string) => string | undefined): KeptName[] =>
  file.definedNames.model.flatMap(({ name, ranges, formulaExpression, localSheetId }): KeptName[] => {
    const scope = localSheetId === undefined ? WHOLE_BOOK : idOf(file.worksheets[localSheetId]?.name ?? '');
    const formulaOrRefString =
      ranges.length > 0 ? ranges.map(requoted).join(',') : formulaExpression && `=${formulaExpression}`;
    return name.startsWith('_xlnm.') || !formulaOrRefString || scope === undefined
      ? []
      : [{ id: freshId('name'), name, formulaOrRefString, localSheetId: scope }];
  });

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

const ruleFormula = (type: DataValidationType, formula: unknown): string | undefined => {
  if (formula === undefined) return undefined;
  if (formula instanceof Date) return String(serialDay(formula));
  const text = String(formula);
  if (type === DataValidationType.LIST) return listFormula(text);
  return Number.isFinite(Number(text)) ? text : `=${text}`;
};

const ruleFor = (
  rule: DataValidation,
  areas: readonly { row: number; column: number; rows: number; columns: number }[],
): IDataValidationRule | undefined => {
  const type = KINDS[rule.type];
  if (!type || rule.type === 'any' || areas.length === 0) return undefined;
  const formula1 = ruleFormula(type, rule.formulae[0]);
  const formula2 = ruleFormula(type, rule.formulae[1]);
  return {
    uid: freshId('rule'),
    type,
    ranges: areas.map(rangeOf),
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

/** The rules of a sheet on what may be entered; the same rule on several areas is one. */
export const rulesIn = (sheet: Worksheet): IDataValidationRule[] => {
  const same = new Map<string, { rule: DataValidation; areas: ReturnType<typeof fileAreas> }>();
  for (const [address, rule] of Object.entries(sheet.dataValidations.model)) {
    if (!rule) continue;
    const key = JSON.stringify(rule);
    const areas = fileAreas(address.replace(/^range:/, ''), sheet.name);
    const known = same.get(key);
    if (known) known.areas.push(...areas);
    else same.set(key, { rule, areas });
  }
  return [...same.values()].flatMap(({ rule, areas }) => ruleFor(rule, areas) ?? []);
};

const noteText = (note: unknown): string => {
  if (typeof note === 'string') return note;
  const texts = (note as { texts?: readonly { text: string }[] } | undefined)?.texts ?? [];
  return texts.map(({ text }) => text).join('');
};

/** The notes on the cells of a sheet. */
export const notesIn = (sheet: Worksheet): KeptNote[] => {
  const notes: KeptNote[] = [];
  sheet.eachRow({ includeEmpty: false }, (row, number) =>
    row.eachCell({ includeEmpty: false }, (cell, column) => {
      const note = noteText(cell.note).trim();
      if (note)
        notes.push({
          id: freshId('note'),
          row: number - 1,
          col: column - 1,
          note,
          width: 240,
          height: 96,
          show: false,
        });
    }),
  );
  return notes;
};

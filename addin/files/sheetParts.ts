import type { Workbook, Worksheet } from '@cj-tech-master/excelts';

import type { Area } from '../workbook/change';
import { fileAreas } from './fileAreas';
import type { FileName, FileNote, FilePage, FileRule, FileSize } from './fileBook';

/** The library doubles an apostrophe in a sheet name that is doubled already. */
const requoted = (reference: string): string => reference.replaceAll("''''", "''");

/** The names of a file; those that programs keep for themselves, such as print areas, are left out. */
export const namesIn = (file: Workbook): FileName[] =>
  file.definedNames.model.flatMap(({ name, ranges, formulaExpression, localSheetId }): FileName[] => {
    const sheet = localSheetId === undefined ? undefined : file.worksheets[localSheetId]?.name;
    const refersTo =
      ranges.length > 0 ? ranges.map(requoted).join(',') : formulaExpression && `=${formulaExpression}`;
    if (name.startsWith('_xlnm.') || !refersTo || (localSheetId !== undefined && sheet === undefined))
      return [];
    return [{ name, refersTo, ...(sheet === undefined ? {} : { sheet }) }];
  });

/** The rules of a sheet on what may be entered; the same rule on several areas is one. */
export const rulesIn = (sheet: Worksheet): FileRule[] => {
  const same = new Map<string, FileRule & { areas: Area[] }>();
  for (const [address, rule] of Object.entries(sheet.dataValidations.model)) {
    if (!rule || rule.type === 'any') continue;
    const key = JSON.stringify(rule);
    const areas = fileAreas(address.replace(/^range:/, ''), sheet.name);
    const known = same.get(key);
    if (known) known.areas.push(...areas);
    else same.set(key, { ...rule, areas });
  }
  return [...same.values()];
};

const noteText = (note: unknown): string => {
  if (typeof note === 'string') return note;
  const texts = (note as { texts?: readonly { text: string }[] } | undefined)?.texts ?? [];
  return texts.map(({ text }) => text).join('');
};

/** The notes on the cells of a sheet. */
export const notesIn = (sheet: Worksheet): FileNote[] => {
  const notes: FileNote[] = [];
  sheet.eachRow({ includeEmpty: false }, (line, row) =>
    line.eachCell({ includeEmpty: false }, (cell, column) => {
      const text = noteText(cell.note).trim();
      if (text) notes.push({ row: row - 1, column: column - 1, text });
    }),
  );
  return notes;
};

/** Columns that somebody made wider or narrower, or hid. */
export const columnSizes = (sheet: Worksheet): FileSize[] =>
  (sheet.columns ?? []).flatMap(({ width, hidden }, at) =>
    width === undefined && !hidden
      ? []
      : [
          {
            at,
            ...(width === undefined ? {} : { size: width }),
            ...(hidden ? { hidden: true as const } : {}),
          },
        ],
  );

export const frozenIn = (sheet: Worksheet): { rows: number; columns: number } => {
  const view = sheet.views?.[0];
  return view?.state === 'frozen'
    ? { rows: view.ySplit ?? 0, columns: view.xSplit ?? 0 }
    : { rows: 0, columns: 0 };
};

/** How a sheet prints, where somebody has set that up. */
export const pageIn = (sheet: Worksheet): FilePage | undefined => {
  const { printArea, orientation, printTitlesRow, fitToPage, fitToWidth, fitToHeight } = sheet.pageSetup;
  const [area] = printArea ? fileAreas(printArea, sheet.name) : [];
  const repeatRows = /^\$?1:\$?(\d+)$/.exec(printTitlesRow ?? '')?.[1];
  if (!area && orientation !== 'landscape' && !repeatRows && fitToWidth !== 1) return undefined;
  return {
    ...(area ? { area } : {}),
    landscape: orientation === 'landscape',
    repeatRows: Number(repeatRows ?? 0),
    ...(fitToPage && fitToHeight ? { pagesHigh: fitToHeight } : {}),
  };
};

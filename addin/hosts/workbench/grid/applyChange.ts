import type { Worksheet } from '@univerjs/core';
import {
  AddWorksheetMergeMutation,
  InsertSheetCommand,
  RemoveWorksheetMergeMutation,
  SetColWidthCommand,
  SetDefinedNameCommand,
  SetFrozenCommand,
  SetRangeValuesCommand,
  SetWorksheetActiveOperation,
  SetWorksheetColumnCountCommand,
  SetWorksheetRowCountCommand,
} from '@univerjs/preset-sheets-core';
import { SheetUpdateNoteCommand } from '@univerjs/preset-sheets-note';

import { fixedReference, sameArea } from '../../../workbook/address';
import { only, type Area, type Edit, type EditOf } from '../../../workbook/change';
import { WorkbookError } from '../../../workbook/port';
import { FRESH_SHEET, freshId, freshSheet } from './bookData';
import { cellPatches } from './cellPatches';
import { placeChart } from './charts';
import { WHOLE_BOOK } from './kept';
import { setListRule } from './listRules';
import { formulasWith, nameOf } from './names';
import { openBook, type Grid } from './openGrid';
import { isLong, writeLong } from './longWriting';
import { setPage } from './pageSetup';
import { pixelsOf, rangeOf } from './ranges';
import { outlineOf, sheetNamed } from './readBook';

/** Room that a sheet needs for the edits, from A1. */
const reach = (edit: Edit): readonly Area[] => {
  switch (edit.kind) {
    case 'write':
      return [{ ...edit, rows: edit.cells.length, columns: edit.cells[0]?.length ?? 0 }];
    case 'format':
    case 'style':
    case 'wrap':
    case 'merge':
    case 'page':
    case 'name':
      return [edit.area];
    case 'list':
      return [edit.area, ...('sheet' in edit.source ? [edit.source] : [])];
    case 'note':
    case 'activate':
    case 'chart':
      return [{ ...edit, rows: 1, columns: 1 }];
    case 'width':
      return [{ sheet: edit.sheet, row: 0, column: edit.column, rows: 1, columns: edit.columns }];
    case 'freeze':
      return [{ sheet: edit.sheet, row: 0, column: 0, rows: edit.rows + 1, columns: edit.columns + 1 }];
    case 'addSheet':
      return [];
  }
};

const roomFor = (edits: readonly Edit[]): Map<string, { rows: number; columns: number }> => {
  const room = new Map<string, { rows: number; columns: number }>();
  for (const area of edits.flatMap(reach)) {
    const known = room.get(area.sheet) ?? { rows: 0, columns: 0 };
    room.set(area.sheet, {
      rows: Math.max(known.rows, area.row + area.rows),
      columns: Math.max(known.columns, area.column + area.columns),
    });
  }
  return room;
};

/** The command wants a range, and goes by the cells it is given. */
const FIRST_CELL = rangeOf({ row: 0, column: 0, rows: 1, columns: 1 });

/**
 * Writes a change that has been validated; every step goes on the undo, and throws where the grid refuses it. A short
 * one is written before this answers; what is typed during a long one has to wait.
 */
export const applyChange = async (grid: Grid, edits: readonly Edit[]): Promise<void> => {
  const unitId = openBook(grid).getId();
  const run = (command: string, params: object): void => {
    if (!grid.commands.syncExecuteCommand(command, params))
      throw new WorkbookError('The workbook did not take the change, and stays as it was.');
  };
  const on = (sheet: Worksheet): { unitId: string; subUnitId: string } => ({
    unitId,
    subUnitId: sheet.getSheetId(),
  });

  const addSheets = (): void => {
    for (const { sheet } of only(edits, 'addSheet'))
      run(InsertSheetCommand.id, { unitId, sheet: freshSheet(sheet) });
  };

  const grow = (): void => {
    for (const [name, room] of roomFor(edits)) {
      const sheet = sheetNamed(grid, name);
      if (room.rows > sheet.getRowCount())
        run(SetWorksheetRowCountCommand.id, { ...on(sheet), rowCount: room.rows + FRESH_SHEET.rowCount });
      if (room.columns > sheet.getColumnCount())
        run(SetWorksheetColumnCountCommand.id, {
          ...on(sheet),
          columnCount: room.columns + FRESH_SHEET.columnCount,
        });
    }
  };

  const names = (): void => {
    for (const { name, area } of only(edits, 'name')) {
      const known = nameOf(grid, name);
      const formulaOrRefString = fixedReference(area);
      if (known?.formulaOrRefString === formulaOrRefString) continue;
      const id = known?.id ?? freshId('name');
      run(SetDefinedNameCommand.id, { unitId, id, name, formulaOrRefString, localSheetId: WHOLE_BOOK });
      if (known) touchFormulas(name);
    }
  };

  // The grid leaves formulas as they were when a name they use points elsewhere, unless they are set anew.
  const touchFormulas = (name: string): void => {
    for (const [sheet, value] of formulasWith(grid, name))
      run(SetRangeValuesCommand.id, { ...on(sheet), range: FIRST_CELL, value });
  };

  const merge = ({ area }: EditOf<'merge'>): void => {
    const sheet = sheetNamed(grid, area.sheet);
    const merged = outlineOf(grid).sheets.find((one) => one.name === area.sheet)?.merges ?? [];
    if (merged.some((one) => sameArea(one, area))) return;
    const params = { ...on(sheet), ranges: [rangeOf(area)] };
    run(AddWorksheetMergeMutation.id, params);
    grid.undo.pushUndoRedo({
      unitID: unitId,
      undoMutations: [{ id: RemoveWorksheetMergeMutation.id, params }],
      redoMutations: [{ id: AddWorksheetMergeMutation.id, params }],
    });
  };

  const widen = (edit: EditOf<'width'>): void => {
    const sheet = sheetNamed(grid, edit.sheet);
    const ranges = [
      {
        startRow: 0,
        endRow: sheet.getRowCount() - 1,
        startColumn: edit.column,
        endColumn: edit.column + edit.columns - 1,
      },
    ];
    run(SetColWidthCommand.id, { ...on(sheet), ranges, value: pixelsOf(edit.characters) });
  };

  const setCells = async (): Promise<void> => {
    for (const [name, value] of cellPatches(edits)) {
      const place = on(sheetNamed(grid, name));
      if (isLong(value)) await writeLong(grid, place, value);
      else run(SetRangeValuesCommand.id, { ...place, range: FIRST_CELL, value });
    }
  };

  const freeze = ({ sheet, rows, columns }: EditOf<'freeze'>): void =>
    run(SetFrozenCommand.id, {
      ...on(sheetNamed(grid, sheet)),
      startRow: rows || -1,
      ySplit: rows,
      startColumn: columns || -1,
      xSplit: columns,
    });

  const list = ({ area, source, message }: EditOf<'list'>): void => {
    const { subUnitId } = on(sheetNamed(grid, area.sheet));
    if (!setListRule(grid, unitId, subUnitId, { area, source, message }))
      throw new WorkbookError('The grid did not take a list of allowed entries.');
  };

  const note = ({ sheet, row, column, text }: EditOf<'note'>): void => {
    const place = on(sheetNamed(grid, sheet));
    const id =
      openBook(grid).getSheetBySheetId(place.subUnitId)?.getRange(row, column).getNote()?.id ??
      freshId('note');
    run(SheetUpdateNoteCommand.id, {
      ...place,
      row,
      col: column,
      note: { id, row, col: column, note: text, width: 240, height: 96, show: false },
    });
  };

  const active = openBook(grid).getActiveSheet().getSheetId();
  addSheets();
  grow();
  names();
  only(edits, 'merge').forEach(merge);
  only(edits, 'width').forEach(widen);
  await setCells();
  only(edits, 'freeze').forEach(freeze);
  only(edits, 'list').forEach(list);
  only(edits, 'note').forEach(note);
  for (const { area, landscape, repeatRows, pagesHigh } of only(edits, 'page')) {
    const { row, column, rows, columns } = area;
    setPage(grid, sheetNamed(grid, area.sheet).getSheetId(), {
      area: { row, column, rows, columns },
      landscape,
      repeatRows,
      ...(pagesHigh === undefined ? {} : { pagesHigh }),
    });
  }
  for (const chart of only(edits, 'chart')) placeChart(grid, sheetNamed(grid, chart.sheet), chart);

  const last = only(edits, 'activate').at(-1);
  const book = openBook(grid);
  if (last) {
    const sheet = book.getSheetByName(last.sheet);
    if (sheet) {
      book.setActiveSheet(sheet);
      book.setActiveRange(sheet.getRange(last.row, last.column));
    }
  } else if (book.getActiveSheet().getSheetId() !== active) book.setActiveSheet(active);

  // The grid cannot draw a sheet that is taken away while it is shown: the one of before is shown first.
  if (edits.some(({ kind }) => kind === 'addSheet')) {
    const show = (subUnitId: string) => [
      { id: SetWorksheetActiveOperation.id, params: { unitId, subUnitId } },
    ];
    grid.undo.pushUndoRedo({
      unitID: unitId,
      undoMutations: show(active),
      redoMutations: show(book.getActiveSheet().getSheetId()),
    });
  }
};

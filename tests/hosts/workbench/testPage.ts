import { Lexer } from '@univerjs/preset-sheets-core';

import type { Change, Area } from '../../../addin/workbook/change';
import { WorkbookError, WorkbookMoved, type Snapshot } from '../../../addin/workbook/port';
import { emptyBook } from '../../../addin/hosts/workbench/grid/bookData';
import { chartNow, chartsOn } from '../../../addin/hosts/workbench/grid/charts';
import { sheetNamed } from '../../../addin/hosts/workbench/grid/readBook';
import { inside, openBook, openGrid } from '../../../addin/hosts/workbench/grid/openGrid';
import { gridWorkbook } from '../../../addin/hosts/workbench/gridWorkbook';
import { selectedCell } from '../../../addin/hosts/workbench/selectedCell';
import { explainCell } from '../../../taskpane/cell/explainCell';
import { openFile } from '../../../addin/hosts/workbench/files/openFile';
import { saveFile } from '../../../addin/hosts/workbench/files/saveFile';
import { registerFeedFunctions } from '../../../addin/hosts/workbench/grid/feedFunctions';
import { printSheet } from '../../../addin/hosts/workbench/print/printSheet';
import '../../../addin/hosts/workbench/print/print.css';
import { inspection } from './inspection';

/** The grid alone in a page, with its inside open to the tests. Not part of what is delivered. */
const container = document.createElement('div');
container.style.cssText = 'position: fixed; inset: 0';
document.body.replaceChildren(container);

const wait = new URLSearchParams(location.search).get('wait');
const grid = openGrid(container, { dark: false, ...(wait === null ? {} : { longestWait: Number(wait) }) });
const workbook = gridWorkbook(grid);
const sheet = (name: string) => {
  const found = openBook(grid).getSheetByName(name);
  if (!found) throw new Error(`no sheet ${name}`);
  return found;
};

/** As a user has it before rows are taken out: the grid moves references to the sheet that is shown, whichever it is. */
const shown = (name: string) => {
  openBook(grid).setActiveSheet(sheet(name));
  return sheet(name);
};

registerFeedFunctions(grid);
let calculations = 0;
grid.commands.onCommandExecuted(({ id }) => {
  if (id === 'formula.mutation.set-formula-calculation-start') calculations += 1;
});
let failing = '';
grid.commands.beforeCommandExecuted(({ id }) => {
  if (id === failing) throw new Error(`made to fail at ${id}`);
});

const calls: Record<string, (...args: never[]) => unknown> = {
  open: () => grid.open(emptyBook()),
  outline: () => workbook.outline(),
  /** How many formulas the calculation that follows a change takes apart. */
  takenApart: async (change: Change) => {
    const lexer = inside(grid).get(Lexer);
    const takeApart = lexer.treeBuilder.bind(lexer);
    let count = 0;
    lexer.treeBuilder = (...given) => {
      count += 1;
      return takeApart(...given);
    };
    await workbook.apply(change);
    await grid.settled();
    lexer.treeBuilder = takeApart;
    return count;
  },
  /** How many calculations have begun. */
  calculations: () => calculations,
  behind: () => grid.behind,
  caughtUp: () => new Promise<void>((resolve) => void (grid.behind ? grid.caughtUp(resolve) : resolve())),
  read: (areas: Area[]) => workbook.read(areas),
  apply: (change: Change, seen?: Snapshot) => workbook.apply(change, seen),
  undo: () => grid.back(),
  redo: () => grid.again(),
  failAt: (command: string) => {
    failing = command;
  },
  renameSheet: (from: string, to: string) => void sheet(from).setName(to),
  addSheet: (name: string) => void openBook(grid).insertSheet(name),
  moveSheet: (name: string, to: number) => void openBook(grid).moveSheet(sheet(name), to),
  type: (name: string, row: number, column: number, typed: string | number) =>
    void sheet(name)
      .getRange(row, column)
      .setValue(typeof typed === 'string' && typed.startsWith('=') ? { f: typed } : typed),
  insertRows: (name: string, at: number, count: number) => void shown(name).insertRows(at, count),
  deleteRows: (name: string, at: number, count: number) => void shown(name).deleteRows(at, count),
  insertColumns: (name: string, at: number, count: number) => void shown(name).insertColumns(at, count),
  openFile: async (name: string, base64: string) => {
    const { book, left } = await openFile(
      name,
      Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)),
    );
    await grid.open(book);
    return left;
  },
  chartNumbers: (name: string) =>
    chartsOn(grid, sheetNamed(grid, name)).map(({ chart }) =>
      chartNow(grid, chart).series.map(({ values }) => values),
    ),
  saveFile: async () => {
    await grid.settled();
    const bytes = await saveFile(grid);
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  },
  print: (name: string) => printSheet(grid, name),
  /** Milliseconds from a new number in a cell until every formula shows its result, and the engine's own part of them. */
  recalculated: async (name: string, row: number, column: number, value: number) => {
    let [begun, ended] = [0, 0];
    const watching = grid.commands.onCommandExecuted(({ id }) => {
      if (id === 'formula.mutation.set-formula-calculation-start') begun = performance.now();
      if (id === 'formula.mutation.set-formula-calculation-result') ended = performance.now();
    });
    const from = performance.now();
    sheet(name).getRange(row, column).setValue(value);
    await grid.settled();
    const whole = performance.now() - from;
    watching.dispose();
    return { whole, engine: ended - begun };
  },
  explain: async (name: string, row: number, column: number) => {
    const place = sheet(name);
    openBook(grid).setActiveSheet(place);
    openBook(grid).setActiveRange(place.getRange(row, column));
    const selected = await selectedCell(grid);
    return selected && explainCell(workbook, selected);
  },
  ...inspection(grid),
};

export type Answer =
  { readonly value: unknown } | { readonly error: string; readonly kind: 'moved' | 'refused' | 'failed' };

/** Answers a call from outside; errors cross as data, so that their kind is kept. */
const answer = async (name: string, args: unknown[]): Promise<Answer> => {
  try {
    const call = calls[name] as (...args: unknown[]) => unknown;
    return { value: await call(...args) };
  } catch (error) {
    return {
      error:
        error instanceof Error
          ? `${error.message}${error.cause ? ` (${String((error.cause as Error).stack)})` : ''}`
          : String(error),
      kind: error instanceof WorkbookMoved ? 'moved' : error instanceof WorkbookError ? 'refused' : 'failed',
    };
  }
};

Object.assign(window, { answer });

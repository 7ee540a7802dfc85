import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-drawing/lib/index.css';
import '@univerjs/preset-sheets-find-replace/lib/index.css';
import '@univerjs/preset-sheets-note/lib/index.css';
import '@univerjs/preset-sheets-sort/lib/index.css';
import {
  ICommandService,
  IUndoRedoService,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  mergeLocales,
  Univer,
  type Injector,
} from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import coreWords from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import dataValidationWords from '@univerjs/preset-sheets-data-validation/locales/en-US';
import { UniverSheetsDrawingPreset } from '@univerjs/preset-sheets-drawing';
import drawingWords from '@univerjs/preset-sheets-drawing/locales/en-US';
import { UniverSheetsFindReplacePreset } from '@univerjs/preset-sheets-find-replace';
import findWords from '@univerjs/preset-sheets-find-replace/locales/en-US';
import { UniverSheetsNotePreset } from '@univerjs/preset-sheets-note';
import noteWords from '@univerjs/preset-sheets-note/locales/en-US';
import { UniverSheetsSortPreset } from '@univerjs/preset-sheets-sort';
import sortWords from '@univerjs/preset-sheets-sort/locales/en-US';
import { defaultTheme } from '@univerjs/themes';

import { trackCalculation } from './calculation';
import { emptyBook, type BookData } from './bookData';
import { GroupedUndo } from './groupedUndo';
import { plainRowsApart } from './plainRows';
import { shareFormulas } from './sharedFormulas';

/** The page's one accent, from its wash to its darkest shade. */
const ACCENT = {
  50: '#faf6fb',
  100: '#f3ebf4',
  200: '#e5d3e8',
  300: '#d5a6dc',
  400: '#a566ad',
  500: '#834b8a',
  600: '#6a3470',
  700: '#572a5c',
  800: '#44204a',
  900: '#331738',
};

/** The spreadsheet grid in the page: its facade, its commands, and the undo that can join steps. */
export interface Grid {
  readonly api: FUniver;
  readonly commands: ICommandService;
  readonly undo: GroupedUndo;
  /** Resolves when every formula touched so far shows its result, or when that takes longer than a user waits. */
  settled(): Promise<void>;
  /** True while formulas are worked out that were no longer waited for; their cells may show what they showed before. */
  readonly behind: boolean;
  /** Calls the listener each time that such formulas are worked out, until the returned function is called. */
  caughtUp(listener: () => void): () => void;
  /** True while another workbook is put in place of the one that was open. */
  readonly opening: boolean;
  /** Puts another workbook in place of the one that is open; its undo starts anew. */
  open(data: BookData): Promise<void>;
  /** Takes the last step back, where there is one. */
  back(): Promise<void>;
  /** Brings the step that was taken back again. */
  again(): Promise<void>;
  /** Takes no keys and no steps back until it is unlocked; saving and opening wait as well. */
  lock(): void;
  /** Nothing where it is not locked. */
  unlock(): void;
  /** Everything that is open, as the grid itself keeps it. */
  save(): BookData;
  dark(on: boolean): void;
}

export type OpenBook = NonNullable<ReturnType<FUniver['getActiveWorkbook']>>;

const injectors = new WeakMap<Grid, Injector>();

/** The grid's own parts, for what its facade does not offer. */
export const inside = (grid: Grid): Injector => {
  const injector = injectors.get(grid);
  if (!injector) throw new Error('This grid was not opened here.');
  return injector;
};

/** The workbook that is open. */
export const openBook = (grid: Pick<Grid, 'api'>): OpenBook => {
  const book = grid.api.getActiveWorkbook();
  if (!book) throw new Error('The grid holds no workbook.');
  return book;
};

/** Brings a sheet to the top; nothing where there is none of that name. */
export const openSheet = (grid: Pick<Grid, 'api'>, name: string): void => {
  const sheet = openBook(grid).getSheetByName(name);
  if (sheet) openBook(grid).setActiveSheet(sheet);
};

/** Protection is not kept in files, so it is not offered. */
const HIDDEN_MENU = Object.fromEntries(
  [
    'sheet.contextMenu.permission',
    'sheet.command.add-range-protection-from-sheet-bar',
    'sheet.command.delete-worksheet-protection-from-sheet-bar',
    'sheet.command.change-sheet-protection-from-sheet-bar',
    'sheet.command.view-sheet-permission-from-sheet-bar',
  ].map((item) => [item, { hidden: true }]),
);

const presets = (container: HTMLElement) => [
  UniverSheetsCorePreset({
    container,
    header: true,
    toolbar: false,
    contextMenu: true,
    menu: HIDDEN_MENU,
    disableAutoFocus: true,
    formulaBar: true,
    footer: {
      menus: false,
      zoomSlider: false,
      statisticBar: true,
      addSheetButtonConfig: { show: true, defaultRowCount: 200, defaultColumnCount: 26 },
    },
    sheets: { autoHeightForMergedCells: true, disableForceStringAlert: true, disableForceStringMark: true },
    disableTextFormatAlert: true,
    disableTextFormatMark: true,
  }),
  // A search in the list would take the keys from the cell after the first letter, and Enter would not take the choice.
  UniverSheetsDataValidationPreset({ showEditOnDropdown: false, showSearchOnDropdown: false }),
  UniverSheetsDrawingPreset(),
  UniverSheetsFindReplacePreset(),
  UniverSheetsNotePreset(),
  UniverSheetsSortPreset(),
];

/**
 * Builds the grid in an element of the page, with an empty workbook in it.
 *
 * @param container an element with a size of its own
 * @param options dark: whether it begins dark; longestWait: how long results of formulas are waited for, ms
 */
export const openGrid = (
  container: HTMLElement,
  options: { readonly dark: boolean; readonly longestWait?: number },
): Grid => {
  const univer = new Univer({
    theme: { ...defaultTheme, primary: ACCENT },
    darkMode: options.dark,
    locale: LocaleType.EN_US,
    locales: {
      [LocaleType.EN_US]: mergeLocales(
        coreWords,
        dataValidationWords,
        drawingWords,
        findWords,
        noteWords,
        sortWords,
      ),
    },
    logLevel: LogLevel.ERROR,
    override: [[IUndoRedoService, { useClass: GroupedUndo }]],
  });
  for (const { plugins } of presets(container))
    for (const plugin of plugins)
      if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
      else univer.registerPlugin(plugin);

  const api = FUniver.newAPI(univer);
  api.createWorkbook(emptyBook());
  const injector = univer.__getInjector();
  shareFormulas(injector);
  const calculation = trackCalculation(
    injector,
    () => api.getFormula().executeCalculation(),
    options.longestWait,
  );
  // The grid counts the steps of the workbook that has its attention; a new one does not have it by itself.
  const focusBook = (): void => injector.get(IUniverInstanceService).focusUnit(openBook({ api }).getId());
  focusBook();
  let opening = false;
  let release = (): void => undefined;
  let free: Promise<void> = Promise.resolve();
  const grid: Grid = {
    get opening() {
      return opening;
    },
    api,
    commands: injector.get(ICommandService),
    undo: injector.get(IUndoRedoService) as GroupedUndo,
    settled: () => free.then(calculation.settled),
    get behind() {
      return calculation.behind;
    },
    caughtUp: calculation.caughtUp,
    open: async (data) => {
      await free;
      opening = true;
      const { rest, putIn } = await plainRowsApart(data);
      await calculation.settled();
      await calculation.stopped();
      // The grid checks list rules when it has time, and would look for the old book in vain.
      await new Promise((resolve) => requestIdleCallback(resolve));
      // The old book goes first: two at once leave conditional formats undrawn.
      api.disposeUnit(openBook({ api }).getId());
      api.createWorkbook(rest);
      putIn(openBook({ api }));
      focusBook();
      calculation.everything();
      await calculation.settled();
      opening = false;
    },
    lock: () => {
      if (container.inert) return;
      container.inert = true;
      free = new Promise((resolve) => (release = resolve));
    },
    unlock: () => {
      container.inert = false;
      release();
    },
    back: async () => {
      await free;
      openBook({ api }).undo();
      await calculation.settled();
    },
    again: async () => {
      await free;
      openBook({ api }).redo();
      await calculation.settled();
    },
    save: () => openBook({ api }).save(),
    dark: (on) => api.toggleDarkMode(on),
  };
  injectors.set(grid, injector);
  return grid;
};

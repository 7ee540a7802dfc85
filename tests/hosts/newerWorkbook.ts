import { expect } from 'vitest';

import type { Workbook } from '../../addin/workbook/port';
import { SHAPE } from '../../addin/workbook/shapes';
import { SHAPE_CELL } from '../../addin/workbook/sheets/settings';
import { createPane } from '../../taskpane/pane';
import { SECTION_IDS } from '../../taskpane/state';
import { drive, wordsOf } from '../taskpane/paneDriver';
import { cellsIn } from '../workbook/stillThere';

const at = { sheet: 'Settings', row: 30, column: 0 } as const;

/** Makes a garden what a newer program would leave: its number, and a function that this one does not know. */
export const makeNewer = (workbook: Workbook): Promise<void> =>
  workbook.apply({
    title: 'Work on it with a newer program',
    edits: [
      { kind: 'write', ...at, cells: [['Shape', SHAPE + 1]] },
      { kind: 'write', ...at, row: 31, cells: [[{ formula: '=FEED.LATER(\'Rig\'!$B$5,"gal")' }]] },
      { kind: 'name', name: SHAPE_CELL, area: { ...at, column: 1, rows: 1, columns: 1 } },
    ],
  });

/** Formulas by their places, in one spelling. */
export const formulasIn = async (workbook: Workbook): Promise<ReadonlyMap<string, string>> =>
  new Map(
    [...(await cellsIn(workbook))].flatMap(([place, { formula }]) =>
      formula === undefined ? [] : [[place, formula.toUpperCase().replaceAll("'", '')] as const],
    ),
  );

/** The pane says on every section that it only reads, works out what it knows, and writes nothing. */
export const expectOnlyRead = async (workbook: Workbook): Promise<void> => {
  const before = await cellsIn(workbook);
  const pane = createPane(workbook, { today: () => '2026-06-07', measures: 'US' });
  await pane.dispatch({ kind: 'workbookChanged' });
  const user = drive(pane);
  for (const section of SECTION_IDS) {
    await user.open(section);
    expect(wordsOf(pane.view()).filter((words) => words.startsWith('A newer program'))).toHaveLength(1);
  }
  expect(user.steps()).toMatchObject({ garden: 'ready', rig: 'ready', mix: 'ready', round: 'ready' });
  for (const [section, press] of [
    ['garden', 'Keep the doses'],
    ['round', 'Make the card'],
    ['log', 'Write the log line'],
  ] as const) {
    await user.open(section);
    if (section === 'garden') await user.type('Dose for one Bush', '0.5');
    await user.press(press);
    expect(user.says()).toMatch(/^A newer program .* writes nothing\.$/);
  }
  pane.close();
  expect(await cellsIn(workbook)).toEqual(before);
};

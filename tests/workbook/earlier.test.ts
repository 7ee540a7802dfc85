import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

import { createPane } from '../../taskpane/pane';
import { calculatingWorkbook } from '../taskpane/calculatingWorkbook';
import { stepsOn } from '../taskpane/goingOn';
import { growerAt } from '../taskpane/grower';
import { EARLIER, earlierFiles, keptIn, placeIn } from './earlierFiles';
import { savedBook } from './savedBook';
import { cellsIn, leftIn } from './stillThere';

/* What Calc saves as .ods it opens itself, in the test of that host. */
const files = earlierFiles(['xlsx']);

test('there are gardens of every earlier program, each told', () => {
  const shapes = readdirSync(EARLIER);
  expect(shapes).toEqual(expect.arrayContaining(['before-live-card', 'live-card']));
  expect(new Set(files.map(({ name }) => name.split('/')[0]))).toEqual(new Set(shapes));
});

describe.each(files)('$name', (file) => {
  const kept = keptIn(file);
  const open = () => savedBook(readFileSync(file.path));

  test('is read whole, by the values that were saved in it', async () => {
    const workbook = await open();
    const opened = await cellsIn(workbook);
    expect(await leftIn(workbook, opened, kept.own)).toEqual({ lost: [], unread: [], kept });
  });

  test('goes on to one more line of the log, and nothing of it is lost', async () => {
    const workbook = await open();
    const computed = calculatingWorkbook(workbook);
    const opened = await cellsIn(workbook);
    const pane = createPane(computed, { today: () => '2026-06-07', measures: 'US' });
    await pane.dispatch({ kind: 'workbookChanged' });
    const gardener = {
      ...growerAt(pane),
      type: async (place: string, typed: string | number) => {
        const { sheet, row, column } = placeIn(place);
        workbook.user.type(sheet, row, column, typed);
        await pane.dispatch({ kind: 'workbookChanged' });
      },
    };
    const steps = stepsOn(kept, keptIn({ ...file, garden: 'inventory' }));
    for (const step of steps) await step.does(gardener, opened);
    expect(await leftIn(computed, opened, kept.own)).toEqual({
      lost: steps.flatMap(({ changes }) => changes).map((end) => expect.stringMatching(end)),
      unread: [],
      kept: steps.at(-1)!.kept,
    });
  });
});

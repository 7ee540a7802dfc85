import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Workbook } from '../../../addin/workbook/port';
import { createPane } from '../../../taskpane/pane';
import { stepsOn } from '../../taskpane/goingOn';
import { growerAt } from '../../taskpane/grower';
import { EARLIER, earlierFiles, keptIn, placeIn } from '../../workbook/earlierFiles';
import { savedBook } from '../../workbook/savedBook';
import { cellsIn, leftIn } from '../../workbook/stillThere';
import { expectOnlyRead, formulasIn, makeNewer } from '../newerWorkbook';
import { openTestPage, workbookIn, type TestPage } from './openTestPage';

let bench: TestPage;
let grid: Workbook;

beforeAll(async () => {
  bench = await openTestPage();
  grid = workbookIn(bench);
});
afterAll(() => bench?.close());

describe.each(earlierFiles(['xlsx']))('$name, opened in the grid', (file) => {
  test('goes on to one more line of the log, and nothing of it is lost when it is saved', async () => {
    const bytes = readFileSync(file.path);
    const kept = keptIn(file);
    const opened = await cellsIn(await savedBook(bytes));
    expect(await bench.call('openFile', `${file.garden}.xlsx`, bytes.toString('base64'))).toEqual([]);
    expect(await leftIn(grid, opened, kept.own)).toEqual({ lost: [], unread: [], kept });

    const pane = createPane(grid, { today: () => '2026-06-07', measures: 'US' });
    await pane.dispatch({ kind: 'workbookChanged' });
    const gardener = {
      ...growerAt(pane),
      type: async (place: string, typed: string | number) => {
        const { sheet, row, column } = placeIn(place);
        await bench.call('type', sheet, row, column, typed);
        await pane.dispatch({ kind: 'workbookChanged' });
      },
    };
    const steps = stepsOn(kept, keptIn({ ...file, garden: 'inventory' }));
    for (const step of steps) await step.does(gardener, opened);
    const saved = await savedBook(Buffer.from((await bench.call('saveFile')) as string, 'base64'));
    expect(await leftIn(saved, opened, kept.own)).toEqual({
      lost: steps.flatMap(({ changes }) => changes).map((end) => expect.stringMatching(end)),
      unread: [],
      kept: steps.at(-1)!.kept,
    });
    expect(bench.troubles).toEqual([]);
  });
});

test('a workbook of a newer program is read, and saved with every formula that it came with', async () => {
  const bytes = readFileSync(join(EARLIER, 'live-card', 'whole-garden.workbench.xlsx'));
  await bench.call('openFile', 'garden.xlsx', bytes.toString('base64'));
  await makeNewer(grid);
  const saved = (await bench.call('saveFile')) as string;
  const formulas = await formulasIn(await savedBook(Buffer.from(saved, 'base64')));
  expect([...formulas.values()]).toContain('=FEED.LATER(RIG!$B$5,"GAL")');
  await bench.call('openFile', 'newer.xlsx', saved);
  await expectOnlyRead(grid);
  const again = Buffer.from((await bench.call('saveFile')) as string, 'base64');
  expect(await formulasIn(await savedBook(again))).toEqual(formulas);
});

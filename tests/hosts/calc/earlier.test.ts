import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { stepsOn } from '../../taskpane/goingOn';
import { earlierFiles, keptIn, placeIn } from '../../workbook/earlierFiles';
import { cellsIn, leftIn } from '../../workbook/stillThere';
import { workbookOf } from './books';
import { calcGrower } from './calcGrower';
import { startOffice, type Office } from './office';

let office: Office;

beforeAll(async () => {
  office = await startOffice();
});
afterAll(() => office?.end());

describe.each(earlierFiles(['ods', 'xlsx']))('$name, opened in Calc', (file) => {
  test('is read whole, goes on to one more line of the log, and nothing of it is lost', async () => {
    // A file of its own: the office puts a lock beside what it opens.
    const path = join(office.folder, file.name.replaceAll('/', '-'));
    copyFileSync(file.path, path);
    const doc = await office.ask<string>({ do: 'open_document', path });
    const workbook = workbookOf(office, doc);
    const kept = keptIn(file);
    const opened = await cellsIn(workbook);
    expect(await leftIn(workbook, opened, kept.own)).toEqual({ lost: [], unread: [], kept });

    const gardener = {
      ...calcGrower(office, doc),
      type: (place: string, typed: string | number) =>
        office.ask<void>({ do: 'type_in', doc, ...placeIn(place), typed }),
    };
    const steps = stepsOn(kept, keptIn({ ...file, garden: 'inventory' }));
    for (const step of steps) await step.does(gardener, opened);
    expect(await leftIn(workbook, opened, kept.own)).toEqual({
      lost: steps.flatMap(({ changes }) => changes).map((end) => expect.stringMatching(end)),
      unread: [],
      kept: steps.at(-1)!.kept,
    });
    await office.ask({ do: 'close', doc });
  });
});

import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { stepsOn } from '../../taskpane/goingOn';
import { EARLIER, earlierFiles, keptIn, placeIn } from '../../workbook/earlierFiles';
import { cellsIn, leftIn } from '../../workbook/stillThere';
import { workbookOf } from './books';
import { expectOnlyRead, formulasIn, makeNewer } from '../newerWorkbook';
import { calcGrower } from './calcGrower';
import { ODS, XLSX } from './files/book';
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

test.each([ODS, XLSX])(
  'a workbook of a newer program is read, and saved as .$ending with every formula that it came with',
  async ({ ending, filter }) => {
    const open = (path: string) => office.ask<string>({ do: 'open_document', path });
    const [earlier, newer] = ['earlier', 'newer'].map((name) =>
      join(office.folder, `${name}-shape.${ending}`),
    );
    copyFileSync(join(EARLIER, 'live-card', `whole-garden.calc.${ending}`), earlier!);
    let doc = await open(earlier!);
    await makeNewer(workbookOf(office, doc));
    const formulas = await formulasIn(workbookOf(office, doc));
    expect([...formulas.values()]).toContain('=FEED.LATER(RIG!$B$5,"GAL")');
    for (const step of ['by the newer program', 'by this one']) {
      await office.ask({ do: 'store', doc, path: newer!, filter });
      await office.ask({ do: 'close', doc });
      doc = await open(newer!);
      await expectOnlyRead(workbookOf(office, doc));
      expect(await formulasIn(workbookOf(office, doc)), step).toEqual(formulas);
    }
    await office.ask({ do: 'close', doc });
  },
);

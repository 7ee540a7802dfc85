import { copyFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

import { contentsOf, differences, workbookOf } from '../books';
import { sheetOf } from '../cells';
import { sample } from '../mainJob';
import { BOOK, built, column, openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** What one of the two saved, opened in the other. */
export const workbenchAndCalc = (programs: Programs): void => {
  describe('the workbench and Calc', () => {
    const benchBook = {
      outline: () => programs.bench.call('outline'),
      read: (areas: unknown) => programs.bench.call('read', areas),
      apply: (change: unknown) => programs.bench.call('apply', change),
    };

    test('what the workbench saved computes in Calc', async () => {
      await programs.bench.call('open');
      await programs.bench.call('apply', { title: 'Build', edits: BOOK });
      const wanted = await contentsOf(benchBook);
      const path = await programs.saveBench();
      const doc = await openIn(programs.office, path);
      const workbook = workbookOf(programs.office, doc);
      expect(differences(wanted, await contentsOf(workbook))).toEqual([]);
      await sheetOf(programs.office, doc, SHEET).values('A1', [[1.4]]);
      expect((await column(programs.office, doc))[0]!.value).toBeCloseTo(30, 9);
    });

    test.each(['garden.xlsx', 'tank-what-if.xlsx'])(
      '%s shows in Calc what it shows in the workbench',
      async (name) => {
        await programs.openInBench(sample(name));
        const wanted = await contentsOf(benchBook);
        expect(
          [...wanted.cells.values()].filter(({ formula }) => formula?.includes('FEED.')).length,
        ).toBeGreaterThan(100);
        const path = programs.file('xlsx');
        copyFileSync(sample(name), path);
        const doc = await openIn(programs.office, path);
        expect(differences(wanted, await contentsOf(workbookOf(programs.office, doc)))).toEqual([]);
        await programs.office.ask({ do: 'calculate', doc });
        expect(differences(wanted, await contentsOf(workbookOf(programs.office, doc)))).toEqual([]);
      },
    );

    test('what Calc saved as .xlsx computes in the workbench', async () => {
      const doc = await built(programs.office);
      const path = await programs.save(programs.office, doc, XLSX);
      await programs.openInBench(path);
      expect(
        differences(await contentsOf(workbookOf(programs.office, doc)), await contentsOf(benchBook)),
      ).toEqual([]);
      const area = { sheet: SHEET, row: 0, column: 0, rows: 1, columns: 2 };
      await programs.bench.call('apply', {
        title: 'Feed more',
        edits: [{ kind: 'write', ...area, cells: [[1.4]] }],
      });
      const { blocks } = (await programs.bench.call('read', [area])) as {
        blocks: { cells: { value: number }[][] }[];
      };
      expect(blocks[0]!.cells[0]![1]!.value).toBeCloseTo(30, 9);
    });
  });
};

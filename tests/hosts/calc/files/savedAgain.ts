import { copyFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';

import { contentsOf, differences, workbookOf } from '../books';
import { sheetOf } from '../cells';
import { built, column, ODS, openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** A workbook of Calc that is saved and opened again, here or elsewhere. */
export const savedAgain = (programs: Programs): void => {
  describe.each([XLSX, ODS])('a workbook saved as .$ending', (kind) => {
    let path: string;
    let doc: string;
    beforeAll(async () => {
      doc = await built(programs.office);
      path = await programs.save(programs.office, doc, kind);
    });

    test('opens again with the same values, formulas, names', async () => {
      const again = await openIn(programs.office, path);
      const [before, after] = [
        await contentsOf(workbookOf(programs.office, doc)),
        await contentsOf(workbookOf(programs.office, again)),
      ];
      expect(differences(before, after)).toEqual([]);
      expect(after.names).toEqual(before.names);
      expect(before.cells.size).toBe(18);
    });

    test('computes with other inputs', async () => {
      const again = await openIn(programs.office, path);
      await sheetOf(programs.office, again, SHEET).values('A1', [[1.4]]);
      const [seconds, , , , dose] = await column(programs.office, again);
      expect(seconds!.value).toBeCloseTo(30, 9);
      expect(dose!.value).toBeCloseTo(2.8, 9);
    });

    test('loses no formula and no input where it is opened and saved without the extension', async () => {
      // A file of its own: the office locks what it has open.
      const sent = programs.file(kind.ending);
      copyFileSync(path, sent);
      const elsewhere = await openIn(programs.plain, sent);
      const saved = await programs.save(programs.plain, elsewhere, kind);
      await programs.plain.ask({ do: 'close', doc: elsewhere });
      const back = await openIn(programs.office, saved);
      await programs.office.ask({ do: 'calculate', doc: back });
      const [before, after] = [
        await contentsOf(workbookOf(programs.office, doc)),
        await contentsOf(workbookOf(programs.office, back)),
      ];
      expect(differences(before, after)).toEqual([]);
    });
  });
};

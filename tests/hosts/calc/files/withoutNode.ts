import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { workbookOf } from '../books';
import { sheetOf } from '../cells';
import { startOffice, type Office } from '../office';
import { ODS, openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** Files of ours in an office that has the extension and no Node, and back again. */
export const withoutNode = (programs: Programs): void => {
  describe('where the extension is there and Node is missing', () => {
    const ABSENT = '#N/A';
    /** Below the one cell that an array without an answer has. */
    const BELOW = 'Err:502';
    /** One of ours, then what is made of it: passed on, told apart, caught, caught in the same cell. */
    const FORMULAS = [
      '=FEED.SECONDS(A1,"gal",2.8,"gal/min")',
      '=B1*2',
      '=IF(COUNT(B1)=1,"known","not known")',
      '=IFERROR(B1,"none")',
      '=IFERROR(FEED.SECONDS(A1,"gal",2.8,"gal/min"),"none")',
      '=FEED.MEASURE(60,"tbsp")',
      '=INDEX(FEED.FILLPLAN(200,60,"gal"),4,2)',
    ];
    const LAST = ['3 3/4 cups', '20'];
    const RIGHT = ['15', '30', 'known', '15', '15', ...LAST];
    const FAILED = [ABSENT, ABSENT, 'not known', 'none', 'none'];
    const OPENED: Readonly<Record<string, readonly string[]>> = {
      xlsx: RIGHT,
      ods: [...FAILED, ABSENT, BELOW],
    };
    const CHANGED: Readonly<Record<string, readonly string[]>> = {
      xlsx: [...FAILED, ...LAST],
      ods: [...FAILED, ABSENT, BELOW],
    };
    const RIGHT_AGAIN = ['30', '60', 'known', '30', '30', ...LAST];

    let nodeless: Office;
    beforeAll(async () => {
      nodeless = await startOffice({ env: { WANDCOUNT_NODE: '/nowhere/node' } });
    });
    afterAll(async () => nodeless?.end());

    const shown = async (program: Office, doc: string): Promise<string[]> =>
      (await sheetOf(program, doc, SHEET).cells(`B1:B${FORMULAS.length}`)).map(([cell]) => cell!.shows);

    test.each([XLSX, ODS])('an .$ending changed there comes right as soon as Node is back', async (kind) => {
      const doc = await programs.office.ask<string>({ do: 'open_document' });
      const cells = FORMULAS.map((formula, row) => [row === 0 ? 0.7 : 1, { formula }]);
      await workbookOf(programs.office, doc).apply({
        title: 'Build',
        edits: [
          { kind: 'addSheet', sheet: SHEET },
          { kind: 'write', sheet: SHEET, row: 0, column: 0, cells },
        ],
      });
      expect(await shown(programs.office, doc)).toEqual(RIGHT);
      const there = await openIn(nodeless, await programs.save(programs.office, doc, kind));
      expect(await shown(nodeless, there)).toEqual(OPENED[kind.ending]);
      await sheetOf(nodeless, there, SHEET).values('A1', [[1.4]]);
      expect(await shown(nodeless, there)).toEqual(CHANGED[kind.ending]);
      const back = await openIn(programs.office, await programs.save(nodeless, there, kind));
      expect(await shown(programs.office, back)).toEqual(RIGHT_AGAIN);
      expect(await programs.office.ask<boolean>({ do: 'is_modified', doc: back })).toBe(false);
      expect(await programs.office.ask<string[]>({ do: 'undo_titles', doc: back })).toEqual([]);
    });
  });
};

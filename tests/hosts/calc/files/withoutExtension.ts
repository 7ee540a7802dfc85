import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { sheetOf } from '../cells';
import type { Office } from '../office';
import { BOOK, built, ODS, openIn, SHEET, shown, XLSX } from './book';
import type { Programs } from './programs';

/** Files of ours in an office that does not know us, and back again. */
export const withoutExtension = (programs: Programs): void => {
  describe('where the extension is missing', () => {
    const UNKNOWN = '#NAME?';
    const RIGHT = ['15', '3 3/4 cups', '20', '#VALUE!', '1.4', '3.5', '30', '3 3/4 cups!', 'known'];
    /** What is shown there before anything is computed, by the ending of the file. */
    const KEPT: Readonly<Record<string, readonly string[]>> = {
      xlsx: ['15', '3 3/4 cups', '20', UNKNOWN, '1.4', '3.5', '30', '3 3/4 cups!', 'known'],
      ods: [UNKNOWN, '3 3/4 cups', UNKNOWN, UNKNOWN, UNKNOWN, '3.5', UNKNOWN, '3 3/4 cups!', 'known'],
    };
    const COMPUTED = [...Array<string>(5).fill(UNKNOWN), '3.5', UNKNOWN, UNKNOWN, 'not known'];
    /** After A1 is 1.4 there: what depends on it, and only that, is computed. */
    const CHANGED: Readonly<Record<string, readonly string[]>> = {
      xlsx: [UNKNOWN, '3 3/4 cups', '20', UNKNOWN, UNKNOWN, '4.2', UNKNOWN, '3 3/4 cups!', 'not known'],
      ods: [UNKNOWN, '3 3/4 cups', UNKNOWN, UNKNOWN, UNKNOWN, '4.2', UNKNOWN, '3 3/4 cups!', 'not known'],
    };
    /** A formula over several cells. */
    const FILLED = { cells: 'D1:F4', formula: '=FEED.FILLPLAN(200;60;"gal")' };
    const filled = async (program: Office, doc: string): Promise<unknown> =>
      (await sheetOf(program, doc, SHEET).cells(FILLED.cells)).map((line) => line.map(({ shows }) => shows));
    const RIGHT_AGAIN = ['30', '3 3/4 cups', '20', '#VALUE!', '2.8', '4.2', '60', '3 3/4 cups!', 'known'];

    describe.each([XLSX, ODS])('an .$ending', (kind) => {
      const { ending } = kind;
      let path: string;
      let elsewhere: string;
      const saved = () => programs.save(programs.plain, elsewhere, kind);
      beforeAll(async () => {
        const doc = await built(programs.office);
        expect(await shown(programs.office, doc)).toEqual(RIGHT);
        await programs.office.ask({ do: 'put_array', doc, sheet: SHEET, ...FILLED });
        path = await programs.save(programs.office, doc, kind);
      });
      beforeEach(async () => {
        elsewhere = await openIn(programs.plain, path);
      });
      afterEach(async () => programs.plain.ask({ do: 'close', doc: elsewhere }));

      test(`shows its last ${ending === 'xlsx' ? 'numbers and texts' : 'texts'}, also saved again`, async () => {
        expect(await shown(programs.plain, elsewhere)).toEqual(KEPT[ending]);
        const again = await openIn(programs.plain, await saved());
        expect(await shown(programs.plain, again)).toEqual(KEPT[ending]);
        await programs.plain.ask({ do: 'close', doc: again });
      });

      test('shows #NAME? once everything is computed', async () => {
        await programs.plain.ask({ do: 'calculate', doc: elsewhere });
        expect(await shown(programs.plain, elsewhere)).toEqual(COMPUTED);
      });

      test('shows #NAME? in cells that one formula fills, and their values as soon as it is back', async () => {
        const line = [UNKNOWN, UNKNOWN, UNKNOWN];
        expect(await filled(programs.plain, elsewhere)).toEqual([line, line, line, line]);
        const back = await openIn(programs.office, await saved());
        expect(await filled(programs.office, back)).toEqual([
          ['1', '60', '60'],
          ['2', '60', '60'],
          ['3', '60', '60'],
          ['4', '20', '20'],
        ]);
      });

      test('shows all its values as soon as it is back', async () => {
        expect(await shown(programs.office, await openIn(programs.office, await saved()))).toEqual(RIGHT);
      });

      test('takes an input there, and its values follow as soon as it is back', async () => {
        await sheetOf(programs.plain, elsewhere, SHEET).values('A1', [[1.4]]);
        expect(await shown(programs.plain, elsewhere)).toEqual(CHANGED[ending]);
        const back = await openIn(programs.office, await saved());
        expect(await shown(programs.office, back)).toEqual(RIGHT_AGAIN);
        expect(await programs.office.ask<boolean>({ do: 'is_modified', doc: back })).toBe(false);
        expect(await programs.office.ask<string[]>({ do: 'undo_titles', doc: back })).toEqual([]);
      });
    });

    test('an .xlsx of the workbench shows its last numbers and texts, and computes in the workbench again', async () => {
      await programs.bench.call('open');
      await programs.bench.call('apply', { title: 'Build', edits: BOOK });
      const path = await programs.saveBench();
      const elsewhere = await openIn(programs.plain, path);
      expect(await shown(programs.plain, elsewhere)).toEqual(KEPT.xlsx);
      await sheetOf(programs.plain, elsewhere, SHEET).values('A1', [[1.4]]);
      const back = await programs.save(programs.plain, elsewhere, XLSX);
      await programs.openInBench(back);
      const area = { sheet: SHEET, row: 0, column: 1, rows: 9, columns: 1 };
      const { blocks } = (await programs.bench.call('read', [area])) as {
        blocks: { cells: { value: unknown; error?: string }[][] }[];
      };
      expect(blocks[0]!.cells.map(([cell]) => cell!.error ?? String(cell!.value))).toEqual(RIGHT_AGAIN);
    });
  });
};

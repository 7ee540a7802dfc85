import { describe, expect, test } from 'vitest';

import type { Edit } from '../../../../addin/workbook/change';
import { workbookOf } from '../books';
import { sheetOf } from '../cells';
import { openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** A formula over several cells, from one of the two into the other. */
export const filledCells = (programs: Programs): void => {
  describe('a formula that fills several cells', () => {
    const FILLS = '=FEED.FILLPLAN(B1,60,"gal")';
    const plan = (need: number) => [
      [1, 60, 60],
      [2, 60, 60],
      [3, 60, 60],
      [4, need - 180, need - 180],
    ];
    const EDITS: readonly Edit[] = [
      { kind: 'addSheet', sheet: SHEET },
      { kind: 'write', sheet: SHEET, row: 0, column: 0, cells: [['Need', 200]] },
      { kind: 'write', sheet: SHEET, row: 2, column: 3, cells: [[{ formula: FILLS }]] },
    ];
    const benchPlan = async (): Promise<unknown> => {
      const area = { sheet: SHEET, row: 2, column: 3, rows: 4, columns: 3 };
      const { blocks } = (await programs.bench.call('read', [area])) as {
        blocks: { cells: { value: unknown; formula?: string }[][] }[];
      };
      expect(blocks[0]!.cells[0]![0]!.formula).toBe(FILLS);
      return blocks[0]!.cells.map((line) => line.map(({ value }) => value));
    };
    const needInBench = (need: number) =>
      programs.bench.call('apply', {
        title: 'Need',
        edits: [{ kind: 'write', sheet: SHEET, row: 0, column: 1, cells: [[need]] }],
      });
    const calcPlan = async (doc: string): Promise<unknown> =>
      (await sheetOf(programs.office, doc, SHEET).cells('D3:F6')).map((line) =>
        line.map(({ value }) => value),
      );

    test('of the workbench fills them in Calc, and again in the workbench', async () => {
      await programs.bench.call('open');
      await programs.bench.call('apply', { title: 'Build', edits: EDITS });
      expect(await benchPlan()).toEqual(plan(200));
      const path = await programs.saveBench();
      const doc = await openIn(programs.office, path);
      expect(await calcPlan(doc)).toEqual(plan(200));
      await sheetOf(programs.office, doc, SHEET).values('B1', [[230]]);
      expect(await calcPlan(doc)).toEqual(plan(230));
      await programs.openInBench(path);
      expect(await benchPlan()).toEqual(plan(200));
      await needInBench(230);
      expect(await benchPlan()).toEqual(plan(230));
    });

    test('of Calc fills them in the workbench', async () => {
      const doc = await programs.office.ask<string>({ do: 'open_document' });
      await workbookOf(programs.office, doc).apply({ title: 'Build', edits: EDITS.slice(0, 2) });
      const formula = FILLS.replaceAll(',', ';');
      await programs.office.ask({ do: 'put_array', doc, sheet: SHEET, cells: 'D3:F6', formula });
      expect(await calcPlan(doc)).toEqual(plan(200));
      const path = await programs.save(programs.office, doc, XLSX);
      await programs.openInBench(path);
      expect(await benchPlan()).toEqual(plan(200));
      await needInBench(230);
      expect(await benchPlan()).toEqual(plan(230));
    });
  });
};

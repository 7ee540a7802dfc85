import { expect, test } from 'vitest';
import { WorkbookError } from '../../../addin/workbook/port';
import { SHAPE } from '../../../addin/workbook/shapes';
import { SHAPE_CELL } from '../../../addin/workbook/sheets/settings';
import { area, SHEET, write, type Trial } from './trial';

/** A workbook of a newer program is read, and never written to. */
export const newer = (trial: Trial): void => {
  const { apply, everything, read } = trial;
  const FUTURE = '=FEED.LATER(1,"gal")';
  const told = (shape: number) => [
    write(0, 0, [
      ['Shape', shape],
      [{ formula: FUTURE }, 'mine'],
    ]),
    { kind: 'name', name: SHAPE_CELL, area: area(0, 1) } as const,
  ];

  test('a workbook of this program is written to', async () => {
    await apply(...told(SHAPE));
    await apply(write(1, 1, [['written']]));
    expect((await trial.cell(1, 1)).value).toBe('written');
  });

  test('nothing is written to one of a newer program, and its formulas keep their texts', async () => {
    await apply(...told(SHAPE + 1));
    const before = await everything();
    for (const edit of [
      write(1, 1, [['written']]),
      { kind: 'addSheet', sheet: 'Other' } as const,
      { kind: 'name', name: 'Contract_more', area: area(1, 1) } as const,
      { kind: 'style', area: area(1, 1), style: 'title' } as const,
    ]) {
      const why = `A newer program has worked on these sheets (${SHEET}, cell B1), so this one only reads them and writes nothing.`;
      await expect(apply(edit)).rejects.toThrow(new WorkbookError(why));
      await expect(
        trial.host.workbook.apply({ title: 'Try', edits: [edit] }, await read([area(0, 0, 2, 2)])),
      ).rejects.toThrow(WorkbookError);
    }
    expect(await everything()).toEqual(before);
    // Calc spells a function that it does not know in small letters.
    expect((await trial.cell(1, 0)).formula?.toUpperCase()).toBe(FUTURE.toUpperCase());
  });

  test('a sheet of it may be gone to', async () => {
    await apply(...told(SHAPE + 1));
    await apply({ kind: 'activate', sheet: SHEET, row: 0, column: 0 });
    expect((await trial.outline()).active).toBe(SHEET);
  });
};

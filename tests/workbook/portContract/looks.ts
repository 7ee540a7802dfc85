import { expect, test } from 'vitest';
import { STYLES, type Edit } from '../../../addin/workbook/change';
import { WorkbookError } from '../../../addin/workbook/port';
import { area, SHEET, told, write, type Trial } from './trial';

/** The looks of cells and the shape of a sheet. */
export const looks = (trial: Trial): void => {
  const { apply, outline } = trial;

  test('a number format stays on its cells', async (context) => {
    const format = told(context, 'number formats', trial.host.inspect?.format);
    await apply(write(0, 0, [[1], [2]]), { kind: 'format', area: area(0, 0, 2, 1), format: '0.00' });
    expect(await format(SHEET, 0, 0)).toBe('0.00');
    expect(await format(SHEET, 1, 0)).toBe('0.00');
    expect(await format(SHEET, 2, 0)).not.toBe('0.00');
  });

  test('a column is as wide as it was made', async (context) => {
    const width = told(context, 'column widths', trial.host.inspect?.width);
    await apply({ kind: 'width', sheet: SHEET, column: 1, columns: 2, characters: 30 });
    expect(Math.abs((await width(SHEET, 1)) - 30)).toBeLessThanOrEqual(1);
    expect(Math.abs((await width(SHEET, 2)) - 30)).toBeLessThanOrEqual(1);
    expect(Math.abs((await width(SHEET, 3)) - 30)).toBeGreaterThan(5);
  });

  test('each style looks unlike the others', async (context) => {
    const look = told(context, 'the look of a cell', trial.host.inspect?.look);
    await apply(
      write(
        0,
        0,
        STYLES.map((style) => [style]),
      ),
      ...STYLES.map((style, row): Edit => ({ kind: 'style', area: area(row, 0), style })),
    );
    const looks = await Promise.all(STYLES.map((_style, row) => look(SHEET, row, 0)));
    expect(new Set(looks).size).toBe(STYLES.length);
  });

  test('cells are wrapped where it was asked for', async (context) => {
    const wrapped = told(context, 'wrapping', trial.host.inspect?.wrapped);
    await apply(write(0, 0, [['long text', 'other']]), { kind: 'wrap', area: area(0, 0) });
    expect([await wrapped(SHEET, 0, 0), await wrapped(SHEET, 0, 1)]).toEqual([true, false]);
  });

  test('rows and columns are frozen', async (context) => {
    const frozen = told(context, 'frozen rows', trial.host.inspect?.frozen);
    await apply(write(0, 0, [['x']]), { kind: 'freeze', sheet: SHEET, rows: 4, columns: 1 });
    expect(await frozen(SHEET)).toEqual({ rows: 4, columns: 1 });
  });

  test('merged cells are told by the outline', async () => {
    await apply(write(0, 0, [['Title']]), { kind: 'merge', area: area(0, 0, 1, 3) });
    const sheet = (await outline()).sheets.find((one) => one.name === SHEET);
    expect(sheet?.merges).toEqual([area(0, 0, 1, 3)]);
  });

  test('merging the same cells again changes nothing, other cells over them is refused', async () => {
    await apply({ kind: 'merge', area: area(0, 0, 1, 3) });
    await apply({ kind: 'merge', area: area(0, 0, 1, 3) });
    await expect(apply({ kind: 'merge', area: area(0, 2, 2, 2) })).rejects.toThrow(WorkbookError);
    await expect(
      apply({ kind: 'merge', area: area(5, 0, 1, 3) }, { kind: 'merge', area: area(4, 2, 2, 2) }),
    ).rejects.toThrow('are merged already with others.');
    const sheet = (await outline()).sheets.find((one) => one.name === SHEET);
    expect(sheet?.merges).toEqual([area(0, 0, 1, 3)]);
  });
};

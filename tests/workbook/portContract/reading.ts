import { expect, test } from 'vitest';
import { WorkbookError } from '../../../addin/workbook/port';
import { area, SHEET, write, type Trial } from './trial';

/** What the outline and a reading tell. */
export const reading = ({ apply, outline, read, cells }: Trial): void => {
  test('a new sheet stands in the outline, last and empty', async () => {
    const { sheets } = await outline();
    expect(sheets.at(-1)).toEqual({ name: SHEET, rows: 0, columns: 0, merges: [] });
  });

  test('the outline tells the cells in use', async () => {
    await apply(write(4, 3, [['here', 2]]));
    const sheet = (await outline()).sheets.find((one) => one.name === SHEET);
    expect(sheet).toMatchObject({ rows: 5, columns: 5 });
  });

  test('an area may reach past the cells in use, and those are empty', async () => {
    await apply(write(0, 0, [['here']]));
    const states = await cells(0, 0, 3, 2);
    expect(states).toHaveLength(3);
    expect(states.flat().map((state) => state.value)).toEqual(['here', null, null, null, null, null]);
  });

  test('several areas are read at once, in the order they were asked for', async () => {
    await apply({ kind: 'addSheet', sheet: 'Other' }, write(0, 0, [[1]]), write(0, 0, [[2]], 'Other'));
    const snapshot = await read([area(0, 0, 1, 1, 'Other'), area(0, 0)]);
    expect(snapshot.blocks.map((block) => block.cells[0]![0]!.value)).toEqual([2, 1]);
    expect(snapshot.blocks.map((block) => block.area)).toEqual([area(0, 0, 1, 1, 'Other'), area(0, 0)]);
  });

  test('reading a sheet that is not there is refused in a plain sentence', async () => {
    await expect(read([area(0, 0, 1, 1, 'Nowhere')])).rejects.toThrow('There is no sheet “Nowhere”.');
  });

  test('reading an area past the edge of the sheet is refused', async () => {
    await expect(read([area(0, 16_383, 1, 2)])).rejects.toThrow(WorkbookError);
    await expect(read([area(0, 0, 0, 1)])).rejects.toThrow('does not fit on the sheet');
  });

  test('the sheet that a change activates is the active one', async () => {
    await apply(
      { kind: 'addSheet', sheet: 'Other' },
      { kind: 'activate', sheet: 'Other', row: 2, column: 1 },
    );
    expect((await outline()).active).toBe('Other');
    await apply({ kind: 'activate', sheet: SHEET, row: 0, column: 0 });
    expect((await outline()).active).toBe(SHEET);
  });
};

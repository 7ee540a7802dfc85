import { expect, test } from 'vitest';
import { WorkbookError } from '../../../addin/workbook/port';
import { area, SHEET, told, write, type Trial } from './trial';

/** One change is one step of the host’s undo, and what it takes back is as before. */
export const undo = (trial: Trial): void => {
  const { apply, everything } = trial;

  test('one change is one step of the undo', async (context) => {
    const undo = told(context, 'its undo', trial.host.undo);
    await apply(write(0, 0, [['kept', 1]]), { kind: 'name', name: 'Contract_undo', area: area(0, 0) });
    const before = await everything();
    await apply(
      write(0, 0, [
        ['gone', 2],
        [{ formula: '=B1*2' }, true],
      ]),
      { kind: 'format', area: area(0, 1), format: '0.00' },
      { kind: 'style', area: area(0, 0, 2, 2), style: 'computed' },
      { kind: 'width', sheet: SHEET, column: 0, columns: 2, characters: 20 },
      { kind: 'name', name: 'Contract_undo', area: area(0, 1) },
      { kind: 'name', name: 'Contract_new', area: area(1, 0) },
      { kind: 'list', area: area(3, 0), source: ['a', 'b'], message: 'a or b' },
      write(1, 1, [['again']]),
    );
    expect(await everything()).not.toEqual(before);
    await undo();
    expect(await everything()).toEqual(before);
  });

  test('a change with a new sheet is one step of the undo', async (context) => {
    const undo = told(context, 'its undo', trial.host.undo);
    if (trial.host.notUndone?.includes('addSheet'))
      context.skip('this host keeps new sheets out of its undo');
    const before = await everything();
    await apply({ kind: 'addSheet', sheet: 'Other' }, write(0, 0, [['x']], 'Other'), write(0, 0, [['y']]), {
      kind: 'name',
      name: 'Contract_new',
      area: area(0, 0, 1, 1, 'Other'),
    });
    await undo();
    expect(await everything()).toEqual(before);
  });

  test('a change that is refused leaves no step of the undo', async (context) => {
    const undo = told(context, 'its undo', trial.host.undo);
    const before = await everything();
    await apply(write(0, 0, [['gone']]));
    await expect(apply(write(0, 0, [['x']]), write(0, 0, [[1]], 'Nowhere'))).rejects.toThrow(WorkbookError);
    await undo();
    expect(await everything()).toEqual(before);
  });
};

import { expect, test } from 'vitest';
import { WorkbookMoved, type Snapshot } from '../../../addin/workbook/port';
import { usedArea } from '../../../addin/workbook/snapshot';
import { area, change, SHEET, told, write, type Trial } from './trial';

/** A reading is of one moment, and a change is not written over what was edited since the reading it was decided from. */
export const seen = (trial: Trial): void => {
  const { apply, cell, everything, read } = trial;
  const OTHER = 'Other';
  const decided = change(write(1, 1, [['decided']]));

  /** Two sheets with something on them; only the first is read. */
  const look = async (): Promise<Snapshot> => {
    await apply(
      { kind: 'addSheet', sheet: OTHER },
      write(0, 0, [['Head'], [{ formula: '=1+1' }], [5]]),
      write(0, 0, [['Elsewhere']], OTHER),
      { kind: 'name', name: 'Contract_head', area: area(0, 0) },
    );
    return read((outline) => [usedArea(outline, SHEET)!]);
  };

  test('the areas to read are told from the outline that is read with them', async () => {
    const snapshot = await look();
    expect(snapshot.blocks.map((block) => block.area)).toEqual([area(0, 0, 3, 1)]);
    expect(snapshot.blocks[0]!.cells[2]![0]!.value).toBe(5);
    expect(snapshot.names['Contract_head']).toEqual(area(0, 0));
  });

  test('what was seen and still stands may be written over', async () => {
    const snapshot = await look();
    await trial.host.workbook.apply(decided, snapshot);
    expect((await cell(1, 1)).value).toBe('decided');
  });

  test('an edit of a sheet that was not read, and what formulas come to by it, stand in nobody’s way', async () => {
    await look();
    await apply(write(3, 0, [[{ formula: `=${OTHER}!B1*2` }]]), write(0, 1, [[1]], OTHER));
    const snapshot = await read((outline) => [usedArea(outline, SHEET)!]);
    await apply(write(0, 1, [[2]], OTHER), write(9, 0, [['More']], OTHER));
    await trial.host.workbook.apply(decided, snapshot);
    expect((await cell(1, 1)).value).toBe('decided');
  });

  const EDITS = {
    'a value that was edited': [write(2, 0, [[6]])],
    'a number that became a text': [write(2, 0, [['5']])],
    'a formula that was edited': [write(1, 0, [[{ formula: '=1+2' }]])],
    'a formula that became its value': [write(1, 0, [[2]])],
    'a cell that was emptied': [write(0, 0, [[null]])],
    'a row that was typed below': [write(3, 0, [['more']])],
    'a name that went elsewhere': [{ kind: 'name', name: 'Contract_head', area: area(2, 0) }],
    'a sheet that was added': [{ kind: 'addSheet', sheet: 'Third' }],
  } as const;

  test.each(Object.entries(EDITS))('%s since is not written over', async (_what, edits) => {
    const snapshot = await look();
    await apply(...edits);
    const before = await everything();
    await expect(trial.host.workbook.apply(decided, snapshot)).rejects.toThrow(WorkbookMoved);
    expect(await everything()).toEqual(before);
  });

  test('rows that were inserted, or a sheet renamed, since are not written over', async (context) => {
    const insertRows = told(context, 'inserting rows', trial.host.user?.insertRows);
    const renameSheet = told(context, 'renaming sheets', trial.host.user?.renameSheet);
    const snapshot = await look();
    await insertRows(SHEET, 0, 1);
    await expect(trial.host.workbook.apply(decided, snapshot)).rejects.toThrow(WorkbookMoved);
    const again = await read((outline) => [usedArea(outline, SHEET)!]);
    await renameSheet(SHEET, 'Renamed');
    await expect(trial.host.workbook.apply(decided, again)).rejects.toThrow(WorkbookMoved);
    expect((await cell(1, 1, 'Renamed')).value).toBeNull();
  });
};

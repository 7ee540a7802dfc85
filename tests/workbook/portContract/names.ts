import { expect, test } from 'vitest';
import { area, SHEET, told, write, type Trial } from './trial';

/** Names, which follow the cells they were given to. */
export const names = (trial: Trial): void => {
  const { apply, outline, read, cell } = trial;

  test('a formula reads a named cell, and follows it when the name points elsewhere', async (context) => {
    if (trial.host.computes === false) context.skip('this host keeps formulas and does not compute them');
    await apply(
      write(0, 0, [[4, 9]]),
      { kind: 'name', name: 'Contract_flow', area: area(0, 0) },
      write(1, 0, [[{ formula: '=Contract_flow*2' }]]),
    );
    expect((await cell(1, 0)).value).toBe(8);
    await apply(write(0, 0, [[5]]));
    expect((await cell(1, 0)).value).toBe(10);
    await apply({ kind: 'name', name: 'Contract_flow', area: area(0, 1) });
    expect((await cell(1, 0)).value).toBe(18);
  });

  test('names are defined, defined again, and told by the outline', async () => {
    await apply(
      write(0, 0, [
        [1, 2],
        [3, 4],
      ]),
      { kind: 'name', name: 'Contract_block', area: area(0, 0, 2, 2) },
    );
    expect((await outline()).names['Contract_block']).toEqual(area(0, 0, 2, 2));
    await apply({ kind: 'name', name: 'Contract_block', area: area(1, 1) });
    expect((await outline()).names['Contract_block']).toEqual(area(1, 1));
  });

  test('a name may be defined before and used within one change', async () => {
    await apply(
      { kind: 'addSheet', sheet: 'Other' },
      { kind: 'name', name: 'Contract_other', area: area(0, 0, 1, 1, 'Other') },
      write(0, 0, [[12]], 'Other'),
    );
    const snapshot = await read([(await outline()).names['Contract_other']!]);
    expect(snapshot.blocks[0]!.cells[0]![0]!.value).toBe(12);
  });

  test('names and formulas follow a sheet that the user renames', async (context) => {
    const rename = told(context, 'renaming by the user', trial.host.user?.renameSheet);
    await apply(
      { kind: 'addSheet', sheet: 'Other' },
      write(0, 0, [[21]], 'Other'),
      { kind: 'name', name: 'Contract_other', area: area(0, 0, 1, 1, 'Other') },
      write(0, 0, [[{ formula: "='Other'!$A$1" }]]),
    );
    await rename('Other', "Gran's roses");
    expect((await outline()).names['Contract_other']).toEqual(area(0, 0, 1, 1, "Gran's roses"));
    expect((await cell(0, 0)).formula).toBe("='Gran''s roses'!$A$1");
    expect((await cell(0, 0, "Gran's roses")).value).toBe(21);
  });

  test('names and formulas follow rows and columns that the user puts in', async (context) => {
    const rows = told(context, 'inserting rows by the user', trial.host.user?.insertRows);
    const columns = told(context, 'inserting columns by the user', trial.host.user?.insertColumns);
    await apply(write(2, 1, [[7, { formula: '=B3*2' }]]), {
      kind: 'name',
      name: 'Contract_followed',
      area: area(2, 1, 3, 1),
    });
    await rows(SHEET, 1, 2);
    await columns(SHEET, 0, 1);
    expect((await outline()).names['Contract_followed']).toEqual(area(4, 2, 3, 1));
    expect((await cell(4, 3)).formula).toBe('=C5*2');
    expect((await cell(4, 2)).value).toBe(7);
  });
};

import { expect, test } from 'vitest';
import { SHEET, write, type Trial } from './trial';

/** Formulas, their words and their answers. */
export const formulas = (trial: Trial): void => {
  const { apply, cells, cell } = trial;

  test('a value takes the place of a formula, and a formula of a value', async () => {
    await apply(write(0, 0, [[{ formula: '=1+1' }, 5]]));
    await apply(write(0, 0, [[7, { formula: '=2+2' }]]));
    const row = (await cells(0, 0, 1, 2))[0]!;
    expect(row[0]).toMatchObject({ value: 7 });
    expect(row[0]!.formula).toBeUndefined();
    expect(row[1]!.formula).toBe('=2+2');
  });

  test.each([
    '=SUM(A2:B3)',
    '=IF($A2="","",A2*2)',
    `='${SHEET}'!$A$2&"; ""x"", y"`,
    '=IFERROR(INDEX(A2:A9,MATCH("b",B2:B9,0)),0)',
  ])('the formula %s comes back in the same words, at once in the same call', async (formula) => {
    await apply(write(0, 0, [[{ formula }]]));
    const wanted = (text: string) => text.replaceAll(`'${SHEET}'`, SHEET).replaceAll(' ', '');
    expect(wanted((await cell(0, 0)).formula ?? '')).toBe(wanted(formula));
  });

  test('a formula is computed, and follows its inputs', async (context) => {
    if (trial.host.computes === false) context.skip('this host keeps formulas and does not compute them');
    await apply(write(0, 0, [[2, 3, { formula: '=A1*B1' }, { formula: '=1/0' }]]));
    expect((await cell(0, 2)).value).toBe(6);
    const broken = await cell(0, 3);
    expect(broken).toMatchObject({ value: null, error: '#DIV/0!' });
    await apply(write(0, 0, [[10]]));
    expect((await cell(0, 2)).value).toBe(30);
  });
};

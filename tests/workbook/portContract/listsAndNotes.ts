import { expect, test } from 'vitest';
import { area, SHEET, told, write, type Trial } from './trial';

/** What lies on cells for the user who fills them in. */
export const listsAndNotes = (trial: Trial): void => {
  const { apply } = trial;

  test('a list rule allows its entries', async (context) => {
    const list = told(context, 'list rules', trial.host.inspect?.list);
    const message = 'Give pot or ground.';
    await apply({ kind: 'list', area: area(1, 0, 50, 1), source: ['pot', 'in the ground'], message });
    expect(await list(SHEET, 1, 0)).toEqual({ source: ['pot', 'in the ground'], message });
    expect(await list(SHEET, 50, 0)).toEqual({ source: ['pot', 'in the ground'], message });
    expect(await list(SHEET, 51, 0)).toBeUndefined();
  });

  test('a list rule may take its entries from cells', async (context) => {
    const list = told(context, 'list rules', trial.host.inspect?.list);
    await apply({ kind: 'addSheet', sheet: 'Other' }, write(0, 0, [['large'], ['small']], 'Other'), {
      kind: 'list',
      area: area(0, 0, 9, 1),
      source: area(0, 0, 20, 1, 'Other'),
      message: 'See Other.',
    });
    expect(await list(SHEET, 8, 0)).toEqual({ source: area(0, 0, 20, 1, 'Other'), message: 'See Other.' });
  });

  test('a note says what it was given, and a second takes its place', async (context) => {
    const note = told(context, 'notes', trial.host.inspect?.note);
    await apply(write(0, 0, [['x']]), { kind: 'note', sheet: SHEET, row: 0, column: 0, text: 'First' });
    expect(await note(SHEET, 0, 0)).toBe('First');
    await apply({ kind: 'note', sheet: SHEET, row: 0, column: 0, text: 'Second <i>&</i>' });
    expect(await note(SHEET, 0, 0)).toBe('Second <i>&</i>');
    expect(await note(SHEET, 1, 0)).toBeUndefined();
  });
};

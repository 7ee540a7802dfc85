import { describe, expect, test } from 'vitest';

import { readLog, logAreas } from '../../addin/workbook/log/logRound';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { createPane } from '../../taskpane/pane';
import type { HostServices } from '../../taskpane/services';

import { calculatingWorkbook } from './calculatingWorkbook';
import { drive, wordsOf } from './paneDriver';
import { UNTIDY } from './untidyList';

const services: HostServices = { today: () => '2026-05-03', measures: 'US' };

describe('from an untidy list to a log line, by the screen alone', { timeout: 60_000 }, () => {
  const memory = memoryWorkbook({ sheets: { 'Roses 2026': UNTIDY } });
  const workbook = calculatingWorkbook(memory);
  const pane = createPane(workbook, services);
  const user = drive(pane);

  test('the list is read at once and its inventory is the one thing to do', async () => {
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(user.answer()).toBe('348 roses in 3 beds, read from 5 of 9 rows; 1 row could not be read');
    expect(user.main()).toBe('Make the plant inventory');
    await user.unfold('1 row not read');
    expect(user.table('Rows not read')[0]?.[0]).toBe('9');
  });

  test('the inventory is made, the list stays as it was', async () => {
    await user.press('Make the plant inventory');
    expect(user.says()).toBe(
      'Made the plant inventory, 5 lines. 348 roses in 3 beds, read from 5 of 9 rows; 1 row could not be read.',
    );
    expect(user.answer()).toBe('348 roses in 3 beds');
    expect(user.table('Dose for one plant')).toEqual([
      ['Large bush', '160', '[0.75]'],
      ['Bush', '100', '[0.6]'],
      ['Potted miniature', '88', '[0.25]'],
    ]);
    expect(memory.cell('Roses 2026', 8, 4).value).toBe('a dozen or so?');
    expect(user.main()).toBe('Go on to Rig');
  });

  test('a rig without a barrel is refused, the reason stands at the field and nothing is written', async () => {
    await user.press('Go on to Rig');
    await user.press('Keep this rig');
    expect(user.says()).toBe('The barrel holds: nothing was given; use a number above 0.');
    expect(user.field('The barrel holds').error).toBe(user.says());
    expect(user.steps()['rig']).toBe('empty');
  });

  test('timed buckets give the flow, however the decimals are typed', async () => {
    await user.type('The barrel holds', '60');
    await user.type('Time 1', '46,1');
    await user.type('Time 2', '45.8');
    await user.type('Time 3', '46.6');
    expect(wordsOf(pane.view())).toContain(
      'Mean flow 2.6 gal/min, spread 0.9 %. 3 times are enough for ±5 %.',
    );
    await user.press('Keep this rig');
    expect(user.says()).toBe('Kept the rig: 2.6 gal/min at the wand.');
    expect(user.answer()).toBe('2.6 gal/min at the wand, 59 gal from each fill');
  });

  test('the first product is entered, and goes into the mix', async () => {
    await user.press('Go on to Mix');
    expect(user.answer()).toBe('Say what you measure into the barrel');
    await user.type('Name', 'Soluble powder 20-20-20');
    await user.type("Label's greatest rate", '1');
    await user.type('Nitrogen, N', '20');
    await user.press('Keep this product');
    expect(user.field('Product 1').value).toBe('Soluble powder 20-20-20');
    await user.type('Rate of product 1', '1');
    expect(user.answer()).toBe('60 gal takes 3 3/4 cups of Soluble powder 20-20-20');
    await user.press('Keep this mix');
    expect(user.steps()).toMatchObject({ garden: 'ready', rig: 'ready', mix: 'ready', round: 'ready' });
  });

  test('the round is planned before anything is pressed', async () => {
    await user.press('Go on to Round');
    expect(user.answer()).toBe(
      '3 fills to 60 gal and one to 26.8 gal, 3 3/4 cups of Soluble powder 20-20-20 in the first, about 3 h',
    );
    expect(user.field('Day').value).toBe('2026-05-03');
    expect(user.main()).toBe('Make the card');
    expect(user.table('Fills').map((row) => row[1])).toEqual(['60 gal', '59 gal', '59 gal', '25.8 gal']);
  });

  test('the card agrees with the plan', async () => {
    const planned = user.table('Fills').map((row) => String(row[2]).split('\n')[0]?.split(',')[0]);
    await user.press('Make the card');
    expect(user.says()).toMatch(/^Made the card: 3 fills to 60 gal/);
    const { blocks } = await workbook.read([
      { sheet: 'Round card', row: 0, column: 0, rows: 40, columns: 12 },
    ]);
    const written = blocks
      .flatMap(({ cells }) => cells.flat())
      .map(({ value }) => String(value).replace(/ \(.*/, ''));
    expect(planned).toHaveLength(4);
    expect(written).toEqual(expect.arrayContaining(planned));
    expect(pane.view().next?.section).toBe('log');
    await user.open('log');
    expect(user.answer()).toBe('3 May 2026, 4 fills, 204 gal made up');
    expect(user.field('Left over').value).toBe('1');
  });

  test('what really happened goes into the log, as text where it is text', async () => {
    await user.type('Left over', '5');
    await user.type('Notes', '=cool and cloudy');
    await user.press('Write the log line');
    expect(user.says()).toBe('Wrote the round of 3 May 2026 into the log, and what each product took.');
    expect(user.table('Last rounds')).toEqual([
      ['3 May 2026', 'Soluble powder 20-20-20', '199 gal, 98 % of the plan'],
    ]);
    const { rounds } = readLog(await workbook.read(logAreas(await workbook.outline())));
    expect(rounds).toMatchObject([
      { round: 1, plants: 348, fills: 4, leftOver: 5, notes: '=cool and cloudy' },
    ]);
    expect(pane.view().next).toBeUndefined();
  });

  test('barrels are compared, and the smallest within the limits is named', async () => {
    await user.open('tanks');
    expect(user.answer()).toBe(
      'From 30 gal (7 fills, about 3 h 30 min) to 100 gal (3 fills, about 2 h 50 min)',
    );
    await user.type('Fills, at most', '4');
    expect(user.answer()).toBe('60 gal is the smallest that meets your limits: 4 fills, about 3 h');
    await user.press('Write the what-if sheet');
    expect(user.says()).toMatch(/^Wrote the barrels side by side/);
    expect((await memory.outline()).sheets.map(({ name }) => name)).toContain('Tank what-if');
  });

  test('who comes back lands on the round', async () => {
    const again = createPane(workbook, services);
    await again.dispatch({ kind: 'workbookChanged' });
    expect(again.view().section.id).toBe('round');
  });
});

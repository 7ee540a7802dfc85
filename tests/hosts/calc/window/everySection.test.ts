import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { alive, engines } from '../engine/engines';
import { MAIN_JOB } from '../mainJob';
import { luminance } from '../../../contrast';
import { expectReadable } from './readable';
import { keyboardOf, type Keyboard } from './keyboard';
import { expectOrder, openSidebar, type Sidebar } from './sidebar';

describe.each(['gtk3', 'gen'])('the sidebar in a real window, drawn with %s', (toolkit) => {
  let sidebar: Sidebar;
  let keys: Keyboard;

  beforeAll(async () => {
    sidebar = await openSidebar(toolkit);
    keys = keyboardOf(sidebar);
  });
  afterAll(() => sidebar?.end());

  test('opens from the menu and reads the list', async () => {
    await sidebar.command('show');
    await sidebar.expectShown('350 roses in 14 beds');
    await sidebar.picture('garden');
  });

  test('lays its controls beside and under each other, none over another', async () => {
    expectOrder(await sidebar.told());
  });

  test('does the whole job, and shows each section', async () => {
    for (const event of MAIN_JOB) {
      await sidebar.happens(event);
      if (event.kind === 'open' || (event.kind === 'press' && event.action === 'garden.adopt')) {
        await sidebar.picture(event.kind === 'open' ? event.section : 'adopted');
        const panel = await sidebar.told();
        expectOrder(panel);
        expect(luminance(panel.ground)).toBeGreaterThan(0.4);
        expectReadable(panel);
      }
    }
    await sidebar.picture('written');
    expect(await sidebar.shown()).toContain('Wrote the barrels side by side');
  });

  test('takes its last step back with one press', async () => {
    expect(await sidebar.office.ask<string[]>({ do: 'sheet_names', doc: sidebar.doc })).toContain(
      'Tank what-if',
    );
    await sidebar.happens({ kind: 'press', action: 'undo' });
    expect(await sidebar.office.ask<string[]>({ do: 'sheet_names', doc: sidebar.doc })).not.toContain(
      'Tank what-if',
    );
  });

  test('takes what is typed into a field, letter by letter, and keeps it', async () => {
    await sidebar.command('open.rig');
    await sidebar.expectShown('The bucket holds');
    await sidebar.focus('The bucket holds');
    await keys.expectOn('The bucket holds');
    sidebar.display.act('key', 'ctrl+a');
    sidebar.display.act('type', '--delay', '40', '2.75');
    await sidebar.expectShown('3.59 gal/min');
    expect(await sidebar.fieldText('The bucket holds')).toBe('2.75');
    await sidebar.picture('typed');
  });

  test('goes from field to field with the Tab key, and scrolls there', async () => {
    await sidebar.focus('The bucket holds');
    const before = (await sidebar.controls())[0]!.area[1];
    for (let step = 0; step < 16; step += 1) sidebar.display.act('key', 'Tab');
    await expect.poll(async () => (await sidebar.controls())[0]!.area[1]).toBeLessThan(before);
    await sidebar.picture('tabbed');
  });

  test('shows the log and comes back', async () => {
    await sidebar.command('showLog');
    await sidebar.expectShown('What the extension did');
    expect(await sidebar.shown()).toMatch(/engine \d+ ready/);
    await sidebar.command('back');
    await sidebar.expectShown('The bucket holds');
  });

  test('explains the selected cell', async () => {
    const card = await sidebar.office.ask<string>({
      do: 'formula_cell',
      doc: sidebar.doc,
      sheet: 'Round card',
      holding: 'FEED.',
    });
    await sidebar.office.ask({ do: 'select', doc: sidebar.doc, sheet: 'Round card', cells: card });
    await sidebar.expectShown(`Round card, ${card}`);
    await sidebar.happens({ kind: 'fold', block: 'cell', open: true });
    expect(await sidebar.shown()).toContain('Source:');
    await sidebar.picture('this-cell');
  });

  test('takes no press on what an engine showed that has just ended, and says that it was started again', async () => {
    await sidebar.command('open.rig');
    await sidebar.expectShown('The bucket holds');
    await sidebar.focus('Keep this rig');
    await keys.expectOn('Keep this rig');
    for (const engine of engines(sidebar.office).filter(alive)) process.kill(engine, 'SIGKILL');
    sidebar.display.act('key', 'space');
    await sidebar.expectShown('stopped and was started again');
    await sidebar.settled();
    expect(await sidebar.shown()).toContain('stopped and was started again');
    expect(await sidebar.shown()).not.toContain('Kept the rig');
    await sidebar.picture('started-again');
  });
});

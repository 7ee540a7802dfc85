import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { NativeView } from '../../../../addin/hosts/calc/wire/pieces';
import { keyboardOf, type Keyboard } from './keyboard';
import { openSidebar, type Sidebar } from './sidebar';

/* The whole job by a user with no mouse. */

describe.each(['gtk3', 'gen'])('the sidebar by keyboard, drawn with %s', (toolkit) => {
  let sidebar: Sidebar;
  let keys: Keyboard;

  const sheets = () => sidebar.office.ask<string[]>({ do: 'sheet_names', doc: sidebar.doc });
  const selected = () => sidebar.office.ask<string>({ do: 'selection', doc: sidebar.doc });
  const picture = (name: string) => sidebar.picture(`keys-${name}`);
  /** What the pane knows once all that was typed has reached it. */
  const view = () => sidebar.office.ask<NativeView>({ do: 'job', doc: sidebar.doc, request: {} });
  const ticked = async (label: string): Promise<boolean | undefined> => {
    const boxes = (await view()).pieces.flatMap((piece) => (piece.kind === 'toggle' ? [piece] : []));
    return boxes.find((box) => box.label === label)?.on;
  };
  const chosen = async (spoken: string): Promise<string | undefined> => {
    const lists = (await view()).pieces.flatMap((piece) => (piece.kind === 'choice' ? [piece] : []));
    return lists.find((list) => list.spoken === spoken)?.value;
  };
  /** Every field, list and tick box has a name that no other of the section has. */
  const expectNames = async (): Promise<void> => {
    const named = (await keys.told()).filter(({ kind }) => !['text', 'line', 'button'].includes(kind));
    const all = named.map(({ name }) => name);
    expect(all).not.toContain('');
    expect(all.filter((name, at) => all.indexOf(name) !== at)).toEqual([]);
  };

  beforeAll(async () => {
    sidebar = await openSidebar(toolkit);
    keys = keyboardOf(sidebar);
  });
  afterAll(() => sidebar?.end());

  test('opens from the menu, with the keyboard in it', async () => {
    await keys.press('F10', 'r', 'p');
    await sidebar.expectShown('350 roses in 14 beds');
    await keys.expectOn('Garden');
    await expectNames();
    await picture('open');
  });

  test('opens and closes a fold with Space and with Enter', async () => {
    await keys.goTo('▸ How it was read: 1 remark');
    await keys.press('space');
    await sidebar.expectShown('The total in row 203');
    await keys.expectOn('▾ How it was read: 1 remark');
    await keys.press('Return');
    await keys.expectOn('▸ How it was read: 1 remark');
    expect(await sidebar.shown()).not.toContain('The total in row 203');
  });

  test('chooses from a list with the arrow keys, closed or open', async () => {
    await keys.goTo('Notes holds');
    expect(await chosen('Notes holds')).toBe('notes');
    await keys.press('Down');
    expect(await keys.value('Notes holds')).toBe('Leave out');
    expect(await chosen('Notes holds')).toBe('leftOut');
    // A menu of GTK opens with nothing marked, and the key goes to its last line first.
    await keys.press('alt+Down', 'Up', ...(toolkit === 'gtk3' ? ['Up'] : []));
    await picture('list');
    await keys.press('Return');
    expect(await keys.value('Notes holds')).toBe('Notes');
    expect(await chosen('Notes holds')).toBe('notes');
    await keys.expectOn('Notes holds');
  });

  test('ticks a box with Space, and goes back with Shift and Tab', async () => {
    const label = 'A blank bed means the bed above it';
    await keys.goTo(label);
    const before = await ticked(label);
    await keys.press('space');
    expect(await ticked(label)).toBe(!before);
    expect(await keys.value(label)).toBe(before ? '' : 'yes');
    await picture('ticked');
    await keys.press('space');
    expect(await ticked(label)).toBe(before);
    await keys.press('shift+Tab');
    await keys.expectOn('Notes holds');
  });

  test('makes the inventory, and leaves the keyboard in the sidebar', async () => {
    await keys.goTo('Make the plant inventory');
    await keys.press('space');
    await sidebar.expectShown('Made the plant inventory');
    expect(await sheets()).toContain('Plants');
    await keys.expectOn('Garden ✓');
    await expectNames();
    await picture('adopted');
  });

  test('goes to the sheet with F6, and comes back with F6 and Tab', async () => {
    await keys.press('F6');
    expect(await keys.focused()).toBeUndefined();
    const before = await selected();
    await keys.press('Down');
    expect(await selected()).not.toBe(before);
    for (let areas = 0; areas < 8 && (await keys.focused()) === undefined; areas += 1) {
      await keys.press('F6', 'Tab');
      if ((await keys.focused()) === undefined) await keys.press('shift+Tab');
    }
    await keys.expectOn('Garden ✓');
    await keys.press('Escape', 'Escape', 'Down');
    expect(await keys.focused()).toBeUndefined();
  });

  test('describes the rig, reached through the menu', async () => {
    await keys.press('alt+r', 'i', 'r');
    await sidebar.expectShown('The bucket holds');
    await keys.expectOn('Garden ✓');
    for (const [name, text] of [
      ['Time 1, s', '45'],
      ['Time 2, s', '47'],
      ['Time 3, s', '46'],
      ['The barrel holds', '60'],
    ] as const)
      await keys.fill(name, text);
    await expectNames();
    await keys.goTo('Keep this rig');
    await keys.press('Return');
    await sidebar.expectShown('Kept the rig');
    await picture('rig');
  });

  test('describes a product and the mix', async () => {
    await keys.goTo('Mix');
    await keys.press('space');
    await sidebar.expectShown('Nitrogen, N');
    for (const [name, text] of [
      ['Name', 'Soluble powder 20-20-20'],
      ["Label's greatest rate", '1'],
      ['Nitrogen, N, %', '20'],
      ['Phosphate, P2O5, %', '20'],
      ['Potash, K2O, %', '20'],
      ['One millilitre weighs, g', '0.9'],
      ['Dissolves in your hot water, g/L', '450'],
    ] as const)
      await keys.fill(name, text);
    await keys.goTo('Keep this product');
    await keys.press('space');
    await sidebar.expectShown('This mix is called');
    await keys.fill('Rate of product 1', '1');
    await expectNames();
    await keys.goTo('Keep this mix');
    await keys.press('space');
    await sidebar.expectShown('Kept the mix');
    await picture('mix');
  });

  test('makes the card and writes the log line', async () => {
    await keys.press('alt+r', 'o', 'r');
    await sidebar.expectShown('Make the card');
    await keys.fill('Day', '2026-05-03');
    await keys.fill('Start', '07:00');
    await keys.goTo('Make the card');
    await keys.press('Return');
    await sidebar.expectShown('Made the card');
    expect(await sheets()).toContain('Round card');
    await expectNames();
    await picture('card');
    await keys.press('alt+r', 'l', 'l');
    await sidebar.expectShown('Write the log line');
    await keys.goTo('Write the log line');
    await expectNames();
    await keys.press('space');
    await sidebar.expectShown('Wrote');
    const [line] = await sidebar.office.ask<(string | number)[][]>({
      do: 'values',
      doc: sidebar.doc,
      sheet: 'Feed log',
      cells: 'A5:E5',
    });
    // 3 May 2026 in days from the end of 1899.
    expect(line).toEqual([1, 46_145, 'Soluble powder 20-20-20', 350, 4]);
    await picture('log');
  });
});

import { spawnSync } from 'node:child_process';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';

import { findProgram } from '../../../../addin/build/programs.mjs';
import { WINDOWS } from './display';
import { keyboardOf, type Keyboard } from './keyboard';
import { openSidebar, type Sidebar } from './sidebar';

/*
 * Where a list opens. With GTK only, where the office itself opens it at the window's left edge: with gen it opens it
 * at its field.
 */

const LIST_FIELD = 'Your list is on the sheet';

let sidebar: Sidebar;
let keys: Keyboard;

beforeAll(async () => {
  sidebar = await openSidebar('gtk3');
  keys = keyboardOf(sidebar);
  await keys.press('F10', 'r', 'p');
  await sidebar.expectShown('350 roses in 14 beds');
});
afterAll(() => sidebar?.end());

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Every window that is seen on the screen, by its number. */
const windows = (): ReadonlyMap<string, Place> => {
  const words = ['search', '--onlyvisible', '--name', '', 'getwindowgeometry', '--shell', '%@'];
  const { stdout } = spawnSync(findProgram('xdotool') ?? 'xdotool', words, {
    encoding: 'utf8',
    env: { ...process.env, ...sidebar.display.env },
  });
  const told = /WINDOW=(\d+)\nX=(-?\d+)\nY=(-?\d+)\nWIDTH=(\d+)\nHEIGHT=(\d+)/g;
  return new Map(
    [...stdout.matchAll(told)].map(([, id = '', ...numbers]) => {
      const [x = 0, y = 0, width = 0, height = 0] = numbers.map(Number);
      return [id, { x, y, width, height }];
    }),
  );
};

/** The window that opens when something is done. */
const opened = async (act: () => Promise<void> | void): Promise<Place> => {
  const before = windows();
  await act();
  return vi.waitUntil(() => {
    const [fresh] = [...windows()].filter(([id, { width }]) => !before.has(id) && width > 20);
    return fresh?.[1];
  }, WINDOWS);
};

/** The list that shows a choice, in the panel. */
const field = async (chosen: string) => {
  const { controls } = await sidebar.told();
  const [x = 0, y = 0, width = 0, height = 0] = controls.find((one) => one.chosen === chosen)?.area ?? [];
  return { x, y, width, height };
};

test('a list opens at its field, by keyboard and by mouse', async () => {
  const { width } = await sidebar.told();
  await keys.goTo(LIST_FIELD);
  const first = await opened(() => keys.press('alt+Down'));
  await sidebar.picture('list-keyboard');
  await keys.press('Escape');
  await keys.expectOn(LIST_FIELD);
  // Of the window's 1,270 pixels the panel has the last but for the column of buttons.
  const at = await field('My roses (203 rows)');
  expect(first.x).toBeGreaterThan(1_270 - width - 100 + at.x - 20);

  // From there the panel's own place follows, and with it where every other field is.
  const panel = { x: first.x - at.x, y: first.y - at.y - at.height };
  const other = await field('Plant');
  const middle = { x: panel.x + other.x + other.width / 2, y: panel.y + other.y + other.height / 2 };
  const move = (by: number) =>
    sidebar.display.act('mousemove', String(Math.round(middle.x) + by), String(Math.round(middle.y)));
  move(-5);
  await sidebar.settled();
  move(5);
  await sidebar.settled();
  const second = await opened(() => sidebar.display.act('click', '1'));
  await sidebar.picture('list-mouse');
  expect(Math.abs(second.x - panel.x - other.x)).toBeLessThan(5);
  const under = Math.abs(second.y - panel.y - other.y - other.height);
  const over = Math.abs(second.y + second.height - panel.y - other.y);
  expect(Math.min(under, over)).toBeLessThan(5);

  await keys.press('Down', 'Down', 'Return');
  await expect.poll(() => keys.value('Rose holds')).not.toBe('Plant');
  await keys.expectOn('Rose holds');
});

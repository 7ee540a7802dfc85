import { afterAll, beforeAll, expect, test } from 'vitest';

import { openSidebar, type Sidebar } from './sidebar';

/* The office shows no sidebar beside the print preview, so the menu must say by itself why it does nothing. */

let sidebar: Sidebar;
beforeAll(async () => {
  sidebar = await openSidebar('gtk3');
});
afterAll(() => sidebar?.end());

test('a button of the menu says to close the preview, and works once it is closed', async () => {
  const { office, doc } = sidebar;
  await office.ask({ do: 'dispatch', doc, command: '.uno:PrintPreview' });
  await sidebar.command('press.garden.new');
  await sidebar.display.expectWindow('^Wandcount$');
  sidebar.display.picture('gtk3-print-preview');
  sidebar.display.act('key', 'Return');
  await sidebar.display.expectNoWindow('^Wandcount$');
  await office.ask({ do: 'dispatch', doc, command: '.uno:ClosePreview' });
  expect(await office.ask<string[]>({ do: 'sheet_names', doc })).toEqual(['My roses']);
  await sidebar.command('press.garden.new');
  await sidebar.expectShown('Made the sheets of an empty garden');
});

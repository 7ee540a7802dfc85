import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { openDisplay, type Display } from './display';
import { keyboardOf, type Keyboard } from './keyboard';
import { openList } from './mainJob';
import { startOffice, type Office } from './office';

/* A computer without Node, whose user says by keyboard where one is. */

const WITHOUT_NODE = join(root, 'tests', 'hosts', 'calc', 'withoutNode');
const CHOOSE = 'Choose the node program…';

describe.each(['gtk3', 'gen'])('where Node is, chosen in a dialog of %s', (toolkit) => {
  let display: Display;
  let office: Office;
  let keys: Keyboard;

  const words = async (): Promise<string> => (await keys.told()).map(({ name }) => name).join('\n');
  const expectShown = (text: string) => expect.poll(words, { timeout: 10_000 }).toContain(text);
  const settings = (): string => join(office.userFolder, 'wandcount.json');
  const picture = (name: string): string => display.picture(`${toolkit}-node-${name}`);
  const openDialog = async (): Promise<void> => {
    await keys.goTo(CHOOSE);
    await keys.press('space');
    await pause(1_500);
  };
  /** Types the whole path; GTK has no field for it until it is asked for one. */
  const choose = async (path: string): Promise<void> => {
    await openDialog();
    if (toolkit === 'gtk3') await keys.press('ctrl+l');
    await keys.press('ctrl+a');
    await keys.type(path);
    picture('dialog');
    await keys.press('Return');
  };
  /** A file that the user may choose. */
  const file = (name: string, text: string, mode: number): string => {
    const path = join(office.folder, name);
    writeFileSync(path, text);
    chmodSync(path, mode);
    return path;
  };

  beforeAll(async () => {
    display = await openDisplay();
    const env = { SAL_USE_VCLPLUGIN: toolkit, PYTHONPATH: WITHOUT_NODE, WANDCOUNT_NODE: undefined };
    office = await startOffice({ window: true, env: { ...display.env, ...env } });
    const doc = await openList(office);
    keys = keyboardOf({ display, office, doc });
    await pause(1_000);
    await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  });
  afterAll(async () => {
    await office?.end();
    display?.end();
  });

  test('is asked for where none is found', async () => {
    await keys.press('alt+r', 'p');
    await expect.poll(() => keys.told().catch(() => []), { timeout: 10_000 }).not.toEqual([]);
    await expectShown('found none on this computer');
    await keys.expectOn('Try again');
  });

  test('is left as it was where the dialog is cancelled', async () => {
    await openDialog();
    picture('open');
    await keys.press('Escape');
    await keys.expectOn(CHOOSE);
    await expectShown('found none on this computer');
    expect(existsSync(settings())).toBe(false);
  });

  test('is no file that cannot be started, and the pane names it', async () => {
    const letter = file('letter.txt', 'Dear Rose,\n', 0o644);
    await choose(letter);
    await expectShown(`The node program at ${letter} cannot be started.`);
    expect(existsSync(settings())).toBe(false);
    picture('letter');
  });

  test('is no program that is not Node', async () => {
    const greeter = file('greeter', '#!/bin/sh\necho good morning\n', 0o755);
    await choose(greeter);
    await expectShown(`The node program at ${greeter} cannot be started.`);
  });

  test('is the program that computes: the pane comes alive', async () => {
    const engine = file('engine', `#!/bin/sh\nexec '${process.execPath}' "$@"\n`, 0o755);
    await choose(engine);
    await expectShown('350 roses in 14 beds');
    expect(await words()).not.toContain('was started again');
    expect(JSON.parse(readFileSync(settings(), 'utf8'))).toEqual({ node: engine });
    await keys.expectOn('Garden');
    picture('alive');
  });
});

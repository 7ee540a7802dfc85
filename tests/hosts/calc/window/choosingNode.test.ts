import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { root } from '../../../../addin/build/paths.mjs';
import { sheetOf } from '../cells';
import { openDisplay, type Display } from './display';
import { alive, engines, logOf, NODE, saysOnly, until } from '../engine/engines';
import { keyboardOf, type Keyboard } from './keyboard';
import { openList } from '../mainJob';
import { startOffice, type Office } from '../office';

/* A computer without Node, whose user says by keyboard where one is. */

const WITHOUT_NODE = join(root, 'tests', 'hosts', 'calc', 'engine', 'withoutNode');
const CHOOSE = 'Choose the node program…';

describe.each(['gtk3', 'gen'])('where Node is, chosen in a dialog of %s', (toolkit) => {
  let display: Display;
  let office: Office;
  let doc: string;
  let keys: Keyboard;

  const words = async (): Promise<string> => (await keys.told()).map(({ name }) => name).join('\n');
  const expectShown = (text: string) => expect.poll(words, { timeout: 10_000 }).toContain(text);
  const settings = (): string => join(office.userFolder, 'wandcount.json');
  const picture = (name: string): string => display.picture(`${toolkit}-node-${name}`);
  const openDialog = async (): Promise<void> => {
    await keys.goTo(CHOOSE);
    await display.opens(() => keys.press('space'));
  };
  const openFromMenu = (): Promise<void> =>
    display.opens(() => office.ask({ do: 'dispatch', doc, command: 'vnd.wandcount:chooseNode' }));
  /** Types the whole path; GTK has no field for it until it is asked for one. */
  const choose = async (path: string, open = openDialog): Promise<void> => {
    await open();
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
    doc = await openList(office);
    keys = keyboardOf({ display, office, doc });
    await display.expectKeysTo(/LibreOffice Calc/);
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
    await expectShown(`The node program at ${letter} does not run the feeding engine.`);
    expect(existsSync(settings())).toBe(false);
    picture('letter');
  });

  test('is no program that is not Node', async () => {
    const greeter = file('greeter', '#!/bin/sh\necho good morning\n', 0o755);
    await choose(greeter);
    await expectShown(`The node program at ${greeter} does not run the feeding engine.`);
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

  test('is another program: those that ran end, and cells and pane go on with it', async () => {
    const [list = ''] = await office.ask<string[]>({ do: 'sheet_names', doc });
    const sheet = sheetOf(office, doc, list);
    await sheet.put('Z1', ['=FEED.SECONDS(0.7;"gal";2.8;"gal/min")']);
    expect((await sheet.cell('Z1')).value).toBeCloseTo(15, 9);
    const before = engines(office).filter(alive);
    expect(before).toHaveLength(2);
    const slow = file('slow', `#!/bin/sh\nsleep 5\nexec ${NODE} "$@"\n`, 0o755);
    await choose(slow, openFromMenu);
    await expectShown('still starting');
    picture('starting');
    expect(before.filter(alive)).toEqual([]);
    await expectShown('The feeding engine stopped and was started again.');
    await expectShown('350 roses in 14 beds');
    expect(await until(async () => (await sheet.cell('Z1')).value === 15, 10_000)).toBe(true);
    expect(engines(office).filter(alive)).toHaveLength(2);
    expect(logOf(office).split(`started with ${slow}`)).toHaveLength(3);
  });

  test('is none that is too old, though one that served ran before', async () => {
    const old = file('old', `#!/bin/sh\n${saysOnly('18.20.8')}\n`, 0o755);
    await choose(old, openFromMenu);
    await expectShown(`Wandcount needs Node.js 20 or newer; the one at ${old} is 18.20.8.`);
    await until(() => !engines(office).some(alive), 5_000);
    expect(engines(office).filter(alive)).toEqual([]);
    picture('old');
  });
});

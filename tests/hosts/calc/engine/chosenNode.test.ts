import { mkdirSync, mkdtempSync, rmSync, writeFileSync, chmodSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { root } from '../../../../addin/build/paths.mjs';
import { NOT_AVAILABLE, sheetOf, type Sheet } from '../cells';
import { NODE, paneOf, program, saysOnly, SECONDS, words } from './engines';
import { startOffice, type Office } from '../office';

/* A node program that the user pointed at and that is of no use; files of the component's own that are not either. */

let folder: string;
let office: Office;
let sheet: Sheet;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
});
afterEach(async () => {
  await office?.end();
  rmSync(folder, { recursive: true });
});

const runs = () => program(join(folder, 'path', 'node'), `exec ${NODE} "$@"`);
const settings = () => join(office.userFolder, 'wandcount.json');
const log = () => join(office.userFolder, 'wandcount.log');

/** Opens a document in an office whose PATH leads to a Node that serves. */
const open = async (before: () => void): Promise<void> => {
  runs();
  office = await startOffice({ env: { PATH: `${join(folder, 'path')}:/usr/bin:/bin` } });
  before();
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  await sheet.values('B1', [[0.7]]);
};
const shown = async (): Promise<string> => words(await paneOf(office, sheet.doc));

/** The cells and the pane work as ever. */
const works = async (): Promise<string> => {
  expect((await sheet.shows(SECONDS)).value).toBeCloseTo(15, 9);
  const told = await shown();
  expect(told).toContain('Garden');
  return told;
};

test.each<[string, () => string, (path: string) => string]>([
  ['is not there', () => join(folder, 'gone'), (path) => `${path}, does not run the feeding engine.`],
  [
    'is too old',
    () => program(join(folder, 'old'), saysOnly('18.20.8')),
    (path) => `${path}, is Node.js 18.20.8; Wandcount needs 20 or newer.`,
  ],
  [
    'is no program',
    () => {
      const path = join(folder, 'letter');
      writeFileSync(path, 'Dear Ada');
      chmodSync(path, 0o755);
      return path;
    },
    (path) => `${path}, does not run the feeding engine.`,
  ],
])('a chosen one that %s is told of, and which one is used instead', async (_, make, sentence) => {
  const chosen = make();
  await open(() => writeFileSync(settings(), JSON.stringify({ node: chosen })));
  const told = await works();
  expect(told).toContain(`The node program you chose, ${sentence(chosen)}`);
  const { node } = process.versions;
  expect(told).toContain(`Wandcount uses Node.js ${node} at ${join(folder, 'path', 'node')} instead.`);
  expect(told).toContain('Choose the node program…');
});

test('a chosen one that does not run, where there is no other, is what the pane names', async () => {
  const withoutNode = join(root, 'tests', 'hosts', 'calc', 'engine', 'withoutNode');
  const chosen = program(join(folder, 'chosen'), 'exit 3');
  office = await startOffice({ env: { PYTHONPATH: withoutNode } });
  writeFileSync(settings(), JSON.stringify({ node: chosen }));
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  await sheet.values('B1', [[0.7]]);
  expect((await sheet.shows(SECONDS)).error).toBe(NOT_AVAILABLE);
  expect(await shown()).toContain(`The node program at ${chosen} does not run the feeding engine.`);
});

test.each<[string, () => void]>([
  ['settings that are a list', () => writeFileSync(settings(), '[]')],
  ['settings that are a folder', () => mkdirSync(settings())],
  ['settings that are no text', () => writeFileSync(settings(), Buffer.from([0xff, 0xfe, 0]))],
  [
    'a log that cannot be opened',
    () => {
      rmSync(log(), { force: true });
      mkdirSync(log());
    },
  ],
])('%s: passed over, and all else works', async (_, spoil) => {
  await open(spoil);
  await works();
});

import { join } from 'node:path';
import { ESLint } from 'eslint';
import { expect, test } from 'vitest';

import { root } from '../../addin/build/paths.mjs';

const lint = new ESLint({ cwd: root, overrideConfigFile: 'addin/build/eslint.config.mjs' });

/** What lint says of a file of the tree if it held this text. */
const said = async (file: string, text: string): Promise<readonly string[]> => {
  const [result] = await lint.lintText(text, { filePath: join(root, file) });
  return result!.messages.map(({ ruleId, message }) => `${ruleId}: ${message}`);
};

const PROMISE = 'export const later = async (): Promise<void> => {};\n';

test.each([
  ['that nobody waits for', `${PROMISE}later();`, 'no-floating-promises'],
  ['where none is taken', `${PROMISE}[1].forEach(later);`, 'no-misused-promises'],
])('a promise %s is refused', async (_what, text, rule) => {
  expect(await said('taskpane/mount.ts', text)).toEqual([expect.stringContaining(rule)]);
});

test('waiting for what is no promise is refused', async () => {
  expect(await said('taskpane/mount.ts', 'export const three = async () => await 3;')).toEqual([
    expect.stringContaining('await-thenable'),
  ]);
});

test.each([
  ['one host from another', 'addin/hosts/office/say.ts', '../workbench/drafts'],
  ['a host from below', 'taskpane/mount.ts', '../addin/hosts/office/say'],
  ['a file of the core from outside', 'taskpane/mount.ts', '../addin/core/round/mix'],
  ['a file of the functions from outside', 'addin/hosts/office/say.ts', '../../../functions/catalogue'],
])('importing %s is refused', async (_what, file, from) => {
  expect(await said(file, `export * as all from '${from}';`)).toEqual([
    expect.stringContaining('no-restricted-paths'),
  ]);
});

test('importing what a room gives, and files of one’s own room, is not refused', async () => {
  expect(await said('taskpane/mount.ts', "export * as core from '../addin/core';")).toEqual([]);
  expect(await said('addin/core/cost.ts', "export * as mix from './round/inWords';")).toEqual([]);
});

test('two files that import each other are refused', async () => {
  const text = "import { planRound } from './planRound';\nexport const plan = planRound;";
  expect(await said('addin/core/round/mix.ts', text)).toEqual([expect.stringContaining('no-cycle')]);
});

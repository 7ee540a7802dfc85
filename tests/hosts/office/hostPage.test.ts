import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { BASELINE } from '../../../addin/hosts/office/baseline';
import packageJson from '../../../package.json';

const page = readFileSync(join(root, 'addin/hosts/office/README.md'), 'utf8');
const guide = readFileSync(join(root, 'README.md'), 'utf8');
const commands = (text: string): string[] => [...text.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name!);

describe("the host's page", () => {
  test('names only files and commands that exist', () => {
    const paths = [...page.matchAll(/`((?:addin|tests)\/[\w./-]+)`/g)].map(([, path]) => path!);
    expect(paths.length).toBeGreaterThan(0);
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    expect(commands(page).filter((name) => !Object.keys(packageJson.scripts).includes(name))).toEqual([]);
  });

  test('names the sets that the manifest declares', () => {
    for (const [set, version] of Object.entries(BASELINE)) expect(page).toContain(`${set} ${version}`);
  });
});

describe("the guide's part on Office.js", () => {
  const part = /\*\*Office\.js\*\*[^]*?(?=\nThe work on|\n## )/.exec(guide)?.[0] ?? '';
  const [proven = '', unseen = ''] = part.split('Not yet seen inside Excel:');
  const claims = (text: string): string[] => text.split(/\n- /).slice(1);
  const testsIn = (text: string): string[] =>
    [...text.matchAll(/`([\w/]+\.test\.ts)`/g)].map(([, name]) => name!);

  test('names a test for every claim, or lists it as not yet seen', () => {
    expect(claims(proven).length).toBeGreaterThan(8);
    expect(claims(proven).filter((claim) => testsIn(claim).length === 0)).toEqual([]);
    expect(claims(unseen).length).toBeGreaterThan(3);
  });

  test('names only tests that exist, and every one of this host but this one', () => {
    const there = readdirSync(import.meta.dirname).filter((file) => file.endsWith('.test.ts'));
    const others = there.filter((file) => file !== 'hostPage.test.ts');
    expect([...new Set(testsIn(proven))].sort()).toEqual(others.sort());
  });
});

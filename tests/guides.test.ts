import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';

import names from '../addin/hosts/calc/names.json';

const root = join(import.meta.dirname, '..');
const guides = ['README.md', 'DEVELOPERS.md'];
const read = (name: string): string => readFileSync(join(root, name), 'utf8');
const scripts = Object.keys(
  (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts,
);

/** Paths that exist only once something was built or run, or that a guide invents for an example. */
const notInTheRepository = /^(dist|node_modules|tests\/output)\b/;

const found = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map((match) => match[1] ?? '');

const tests = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' }).map((path) =>
  basename(path),
);

test('a claim is followed by a test that exists', () => {
  const named = found(read('README.md'), /`(\w+\.test\.ts)`/g);
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((name) => !tests.includes(name))).toEqual([]);
});

test('the guide names the oldest Node that runs the engine in Calc', () => {
  expect(read('README.md')).toContain(`It computes with Node ${names.leastNode} or newer`);
});

describe.each(guides)('%s', (guide) => {
  const text = read(guide);

  test('names only paths that exist', () => {
    const inCode = found(text, /`([\w.-]+(?:\/[\w.*-]+)+\/?)`/g);
    const linked = found(text, /\]\((?!https?:|#)([^)]+)\)/g);
    const paths = [...inCode, ...linked].filter(
      (path) => !path.includes('*') && !path.startsWith('@') && !notInTheRepository.test(path),
    );
    expect(paths.length).toBeGreaterThan(0);
    expect(paths.filter((path) => !existsSync(join(root, path.replace(/#.*$/, ''))))).toEqual([]);
  });

  test('names only commands that package.json has', () => {
    const named = [...found(text, /npm run ([\w:-]+)/g), ...found(text, /npm (start|test)\b/g)];
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => !scripts.includes(script))).toEqual([]);
  });
});

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { root } from '../../addin/build/paths.mjs';
import { READ, reachedBy } from '../../addin/build/reach.mjs';

const hosts = ['calc', 'office', 'pane', 'workbench'];
/** Rooms, and hosts by their names, in which a change reaches a test. */
const roomsReachedBy = async (path: string): Promise<string[]> => {
  const rooms = (await reachedBy([path])).map((test) => test.split('/').slice(1, -1));
  return [...new Set(rooms.map(([room = 'guides', host]) => (room === 'hosts' ? host! : room)))].sort();
};
const ALWAYS = ['functions', 'guides'];

describe('a change of', () => {
  test.each([
    ['one host', 'addin/hosts/office/officeWorkbook.ts', ['office']],
    ['one host’s program in another language', 'addin/hosts/calc/python/wandcount.py', ['calc']],
    ['the workbench, which others’ tests open', 'addin/hosts/workbench/page/page.css', hosts],
    ['the driver of the tests', 'tests/hosts/calc/driver.py', ['calc']],
    ['what stands in for a program', 'tests/hosts/office/fake/hostBook.ts', ['office']],
    ['a document', 'functions/REFERENCE.md', []],
  ])('%s reaches what is made of it, and no more', async (_what, path, rooms) => {
    expect(await roomsReachedBy(path)).toEqual([...ALWAYS, ...rooms].sort());
  });

  test('the core reaches its own tests, those above it and every host', async () => {
    const reached = await reachedBy(['addin/core/round/cardMeasure.ts']);
    expect(reached).toContain('tests/core/round/cardMeasure.test.ts');
    expect(reached).toContain('tests/properties/round.test.ts');
    expect(reached).toContain('tests/taskpane/mainJob.test.ts');
    expect(reached).toContain('tests/core/forbidden.test.ts');
    for (const host of hosts) expect(reached).toContainEqual(expect.stringMatching(`^tests/hosts/${host}/`));
    expect(reached).not.toContain('tests/build/programs.test.ts');
  });

  test('a test reaches itself, and one that is gone reaches nothing', async () => {
    const [own, gone] = ['tests/core/flow/counts.test.ts', 'tests/core/flow/gone.test.ts'];
    const always = await reachedBy(['README.md']);
    expect(await reachedBy([own, gone])).toEqual([...always, own].sort());
  });

  test.each(['package.json', 'addin/build/bundle.mjs', 'tests/setUp.ts', 'something/new.txt'])(
    '%s reaches everything',
    async (path) => {
      expect((await roomsReachedBy(path)).length).toBeGreaterThan(10);
    },
  );
});

test('what tests read is where it is said to be, and no host is left out', () => {
  const named = [...Object.keys(READ), ...Object.values(READ).flat()];
  expect(named.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  const folders = readdirSync(join(root, 'tests', 'hosts'), { withFileTypes: true });
  for (const { name } of folders.filter((entry) => entry.isDirectory() && entry.name !== 'workbench'))
    expect(Object.keys(READ)).toContain(`tests/hosts/${name}/`);
});

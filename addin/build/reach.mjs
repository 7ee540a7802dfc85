import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

import { root } from './paths.mjs';

/** What decides over everything: packages, the build, the set-up of the tests. */
const EVERYTHING = ['package.json', 'package-lock.json', 'tsconfig.json', 'addin/build/', 'tests/setUp.ts'];

/** What every host is built from; the tests of other hosts open the workbench's page, too. */
const HOSTS_ARE_OF = [
  'addin/core/',
  'addin/files/',
  'addin/workbook/',
  'addin/hosts/workbench/',
  'functions/',
  'sample-workbooks/',
  'taskpane/',
  'tests/hosts/workbench/',
];

/** What tests build, start or read without importing it, by the beginnings of paths. */
export const READ = {
  'tests/core/adopt/examples.test.ts': ['addin/core/'],
  'tests/core/examples.test.ts': ['addin/core/'],
  'tests/core/forbidden.test.ts': ['addin/core/', 'tests/core/forbidden.ts'],
  'tests/functions/': ['functions/'],
  'tests/hosts/': HOSTS_ARE_OF,
  'tests/hosts/calc/': ['addin/hosts/calc/', 'tests/hosts/calc/'],
  'tests/hosts/office/': ['addin/hosts/office/', 'tests/hosts/office/'],
  'tests/hosts/pane/': ['tests/hosts/pane/'],
  'tests/hosts/earlier/': ['tests/hosts/earlier/'],
  'tests/sample-workbooks/': ['sample-workbooks/'],
  'tests/taskpane/contrast.test.ts': ['taskpane/'],
};
/** They read documents, and look whether the paths that are named there exist. */
const OF_DOCUMENTS = ['tests/guides.test.ts', 'tests/functions/reference.test.ts'];

const git = (...words) => {
  const { status, stdout, stderr } = spawnSync('git', words, { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`git could not tell what was changed: ${stderr}`);
  return stdout.split('\0').filter(Boolean);
};

/** Paths that differ from a commit, new files and those that are gone among them. */
export const changedSince = (commit) => [
  ...git('diff', '--name-only', '--no-renames', '-z', commit, '--'),
  ...git('ls-files', '--others', '--exclude-standard', '-z'),
];

const isTest = (path) => path.endsWith('.test.ts');
const tests = () =>
  readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter(isTest)
    .map((path) => `tests/${path.replaceAll('\\', '/')}`)
    .sort();

/** For every file the files that import it, the tests' own and all that they lead to. */
const importers = async (all) => {
  const { build } = await import('esbuild');
  const { metafile } = await build({
    absWorkingDir: root,
    stdin: { contents: all.map((test) => `import './${test}';`).join('\n'), resolveDir: root },
    bundle: true,
    write: false,
    metafile: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    loader: { '.css': 'empty' },
    logLevel: 'error',
  });
  const found = new Map();
  for (const [importer, { imports }] of Object.entries(metafile.inputs))
    for (const { path } of imports) found.set(path, [...(found.get(path) ?? []), importer]);
  return found;
};

/** A file, those that import it, those that import these, and so on. */
const upwards = (path, importedBy, seen = new Set()) => {
  if (!seen.has(path)) {
    seen.add(path);
    for (const importer of importedBy.get(path) ?? []) upwards(importer, importedBy, seen);
  }
  return seen;
};

const startsWithOne = (path, beginnings) => beginnings.some((beginning) => path.startsWith(beginning));

/** Whether a test builds, starts or reads a file. */
const reads = (test, path) =>
  Object.entries(READ).some(
    ([where, beginnings]) => test.startsWith(where) && startsWithOne(path, beginnings),
  );

/**
 * The tests that a change can reach: those that import what was changed, and those that build, start or read it.
 * Documents are looked at whatever is changed; a change that no test is known to look at reaches all.
 *
 * @param changed paths from the project's folder
 */
export const reachedBy = async (changed) => {
  const all = tests();
  const importedBy = await importers(all);
  const reach = (path) => {
    if (path.endsWith('.md')) return OF_DOCUMENTS;
    if (isTest(path)) return existsSync(join(root, path)) ? [path] : [];
    if (startsWithOne(path, EVERYTHING)) return all;
    const above = upwards(path, importedBy);
    const found = all.filter((test) => above.has(test) || reads(test, path));
    return found.length === 0 ? all : found;
  };
  if (changed.length === 0) return [];
  return [...new Set([...OF_DOCUMENTS, ...changed.flatMap(reach)])].sort();
};

import { mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';

import { Instrumenter } from '@stryker-mutator/instrumenter';

import { root } from '../paths.mjs';

const listed = (path) =>
  statSync(path).isDirectory()
    ? readdirSync(path).flatMap((name) => listed(join(path, name)))
    : path.endsWith('.ts')
      ? [path]
      : [];

const quiet = {
  isDebugEnabled: () => false,
  debug: () => {},
  info: () => {},
  trace: () => {},
  warn: console.warn,
  error: console.error,
};

/**
 * Writes every source with all its mutants in it, each asleep until its id is the active one, into `folder`.
 *
 * @param texts whether texts are mutated too
 * @returns `sources`: path of each source → path of its instrumented copy; `mutants`: id, file, line, before, after
 */
export const instrument = async (paths, folder, texts) => {
  const files = paths
    .flatMap((path) => listed(join(root, path)))
    .map((name) => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
  const made = await new Instrumenter(quiet).instrument(files, {
    plugins: null,
    ignorers: [],
    excludedMutations: texts ? [] : ['StringLiteral'],
  });
  const sources = new Map();
  for (const { name, content } of made.files) {
    const copy = join(folder, relative(root, name));
    mkdirSync(dirname(copy), { recursive: true });
    writeFileSync(copy, content);
    sources.set(name, copy);
  }
  const lines = new Map(files.map(({ name, content }) => [name, content.split('\n')]));
  // Those of an excluded kind are told as well, and stand in no copy.
  const asleep = made.mutants.filter(({ status }) => status !== 'Ignored');
  const mutants = asleep.map(({ id, fileName, location: { start, end }, replacement }) => {
    const [first, ...others] = lines.get(fileName).slice(start.line, end.line + 1);
    const before =
      others.length === 0 ? first.slice(start.column, end.column) : `${first.slice(start.column)} …`;
    const file = relative(root, fileName).split(sep).join('/');
    return { id, file, line: start.line + 1, column: start.column + 1, before, after: replacement };
  });
  return { sources, mutants };
};

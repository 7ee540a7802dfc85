import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { alone } from './alone.mjs';
import { dist, root } from './paths.mjs';

const SOURCES = ['addin', 'functions', 'taskpane', 'sample-workbooks'];
const FILES = ['package.json', 'package-lock.json', 'tsconfig.json'];

const listed = (folder) =>
  readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? listed(path) : [path];
    });

/** One text that changes when any source does. */
const fingerprint = () => {
  const hash = createHash('sha256');
  for (const path of [
    ...SOURCES.flatMap((name) => listed(join(root, name))),
    ...FILES.map((name) => join(root, name)),
  ]) {
    hash.update(path.slice(root.length)).update('\0').update(readFileSync(path)).update('\0');
  }
  return hash.digest('hex');
};

/** Runs `make` unless `name` was made from the very same sources, with the same settings; once where many ask. */
export const unlessFresh = (name, make, settings = '') =>
  alone(name, async () => {
    const mark = join(dist, 'made', name);
    const now = fingerprint() + settings;
    if (existsSync(mark) && readFileSync(mark, 'utf8') === now) return;
    rmSync(mark, { force: true });
    await make();
    writeFileSync(mark, now);
  });

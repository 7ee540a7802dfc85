import { mkdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';

import { dist, root } from './paths.mjs';

/** Imports a TypeScript module of the project into a Node script; packages are left to Node. */
export const importTypeScript = async (path) => {
  const { build } = await import('esbuild');
  const folder = join(dist, 'scripts');
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `${basename(path, '.ts')}-${process.pid}.mjs`);
  await build({
    entryPoints: [join(root, path)],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    logLevel: 'warning',
  });
  return import(pathToFileURL(outfile).href);
};

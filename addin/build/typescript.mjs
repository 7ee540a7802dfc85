import { mkdirSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

import { dist, root } from './paths.mjs';

/** Scripts that Node can read as they are stay where they are: they find files by their own place. */
const scriptsStay = {
  name: 'scripts-stay',
  setup(build) {
    build.onResolve({ filter: /^\..*\.mjs$/ }, ({ path, importer }) => ({
      path: pathToFileURL(resolve(dirname(importer), path)).href,
      external: true,
    }));
  },
};

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
    plugins: [scriptsStay],
  });
  return import(pathToFileURL(outfile).href);
};

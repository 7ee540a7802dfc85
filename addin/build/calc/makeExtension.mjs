import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { bundle } from '../bundle.mjs';
import { dist, root } from '../paths.mjs';
import { importTypeScript } from '../typescript.mjs';
import engine from '../webpack.calc.mjs';

/** Where the extension goes. */
export const extension = join(dist, 'wandcount.oxt');

/**
 * The extension's bytes; the same sources give the same.
 *
 * @param folder where the engine is put on the way
 */
export const extensionBytes = async (folder = join(dist, 'calc')) => {
  await bundle(engine({ mode: 'production', folder }));
  const { packageFiles, zipped } = await importTypeScript('addin/build/calc/index.ts');
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return zipped({ ...packageFiles(root, version), 'engine.cjs': readFileSync(join(folder, 'engine.cjs')) });
};

/** Makes dist/wandcount.oxt. */
export const makeExtension = async () => {
  const bytes = await extensionBytes();
  mkdirSync(dist, { recursive: true });
  writeFileSync(extension, bytes);
};

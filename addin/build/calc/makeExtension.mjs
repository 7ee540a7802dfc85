import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { bundle } from '../bundle.mjs';
import { unlessFresh } from '../freshness.mjs';
import { LICENCES } from '../licences.mjs';
import { dist, root } from '../paths.mjs';
import { importTypeScript } from '../typescript.mjs';
import engine from '../webpack.calc.mjs';

import { carriedNode } from './carriedNode.mjs';

/** Where the extension goes. */
export const extension = join(dist, 'wandcount.oxt');

/**
 * The extension's bytes; the same sources give the same.
 *
 * @param folder where the engine is put on the way
 * @param node   the program that runs the engine, for those who have none; left out in the ordinary extension
 */
export const extensionBytes = async (folder = join(dist, 'calc'), node = undefined) => {
  await bundle(engine({ mode: 'production', folder }));
  const { packageFiles, zipped } = await importTypeScript('addin/build/calc/index.ts');
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const made = ['engine.cjs', LICENCES].map((file) => [file, readFileSync(join(folder, file))]);
  const files = { ...packageFiles(root, version), ...Object.fromEntries(made) };
  if (node === undefined) return zipped(files);
  return zipped({ ...files, [node.path]: node.bytes, 'engine/LICENSE': node.licence }, [node.path]);
};

/** dist/wandcount.oxt. */
export const buildExtension = () =>
  unlessFresh('calc', async () => writeFileSync(extension, await extensionBytes()));

/** Makes dist/wandcount-<platform>.oxt, which brings the program that runs the engine; returns its path. */
export const makeCarryingExtension = async (platform) => {
  const bytes = await extensionBytes(undefined, carriedNode(platform));
  const path = join(dist, `wandcount-${platform}.oxt`);
  writeFileSync(path, bytes);
  return path;
};

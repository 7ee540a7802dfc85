import { join } from 'node:path';

import { Licences } from './licences.mjs';
import { dist, root } from './paths.mjs';
import { resolve, typeScriptRule } from './webpackTypeScript.mjs';

/**
 * dist/functions.cjs: the worksheet functions in one file that any Node script requires; it exports `call`, `explain`
 * and `catalogue`.
 *
 * @param options mode; `folder` for another place than dist
 */
export default ({ mode, folder = dist }) => ({
  mode,
  context: root,
  target: 'node20',
  entry: { functions: join(root, 'functions', 'index.ts') },
  output: { path: folder, filename: '[name].cjs', library: { type: 'commonjs2' } },
  devtool: false,
  resolve,
  module: {
    rules: [typeScriptRule],
  },
  // Read by people who debug a script that calls it, and quick to build.
  optimization: { minimize: false },
  performance: { hints: false },
  plugins: [new Licences('functions.LICENSES.txt')],
});

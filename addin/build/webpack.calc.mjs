import { join } from 'node:path';

import names from '../hosts/calc/names.json' with { type: 'json' };
import { Licences } from './licences.mjs';
import { dist, root } from './paths.mjs';
import { minimizer } from './webpackPage.mjs';
import { resolve, typeScriptRule } from './webpackTypeScript.mjs';

/**
 * dist/calc/engine.cjs: the engine that the Calc component starts, in one file.
 *
 * @param options mode; `folder` for another place than dist/calc
 */
export default ({ mode, folder = join(dist, 'calc') }) => ({
  mode,
  context: root,
  target: `node${names.leastNode}`,
  entry: { engine: join(root, 'addin', 'hosts', 'calc', 'engine.ts') },
  output: { path: folder, filename: '[name].cjs' },
  devtool: false,
  resolve,
  module: {
    rules: [typeScriptRule],
  },
  optimization: { minimizer: minimizer() },
  performance: { hints: false },
  plugins: [new Licences()],
});

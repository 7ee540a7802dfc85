import { join } from 'node:path';

import { Licences } from './licences.mjs';
import { dist, root } from './paths.mjs';
import { minimizer, styleFiles, styleRule } from './webpackPage.mjs';
import { resolve, typeScriptRule } from './webpackTypeScript.mjs';

const host = join(root, 'addin', 'hosts', 'office');

/**
 * The scripts of dist/office: functions.js, which alone makes the worksheet functions, the pane that it fetches when
 * there is a page to show it on, and what the pane fetches when it needs it.
 *
 * The page has one entry, so that the functions and the pane share one copy of everything.
 *
 * @param options mode; `folder` for another place than dist/office
 */
export default ({ mode, folder = join(dist, 'office') }) => ({
  mode,
  context: root,
  entry: { functions: join(host, 'main.ts'), message: join(host, 'message.ts') },
  // Beside the page; where there is none, nothing is fetched.
  output: { path: folder, filename: '[name].js', chunkFilename: '[name].js', publicPath: '', clean: true },
  devtool: false,
  resolve,
  module: {
    rules: [
      // What the functions do not use of the core is left to the pane.
      { ...typeScriptRule, sideEffects: false },
      styleRule,
    ],
  },
  optimization: { minimizer: minimizer() },
  performance: { hints: false },
  plugins: [styleFiles(), new Licences()],
});

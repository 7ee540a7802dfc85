import { createRequire } from 'node:module';
import { join } from 'node:path';

import { dist, root } from './paths.mjs';

const require = createRequire(import.meta.url);

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
  resolve: { extensions: ['.ts', '.mjs', '.js'] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        use: {
          loader: require.resolve('ts-loader'),
          options: { transpileOnly: true, configFile: join(root, 'tsconfig.json') },
        },
      },
    ],
  },
  // Read by people who debug a script that calls it, and quick to build.
  optimization: { minimize: false },
  performance: { hints: false },
});

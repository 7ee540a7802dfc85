import { createRequire } from 'node:module';
import { join } from 'node:path';

import { dist, root } from './paths.mjs';

const require = createRequire(import.meta.url);

/**
 * dist/calc/engine.cjs: the program that the Calc component starts, in one file.
 *
 * @param options mode; `folder` for another place than dist/calc
 */
export default ({ mode, folder = join(dist, 'calc') }) => ({
  mode,
  context: root,
  target: 'node20',
  entry: { engine: join(root, 'addin', 'hosts', 'calc', 'engine.ts') },
  output: { path: folder, filename: '[name].cjs' },
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
  performance: { hints: false },
});

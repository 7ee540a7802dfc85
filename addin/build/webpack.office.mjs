import { createRequire } from 'node:module';
import { join } from 'node:path';

import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import TerserPlugin from 'terser-webpack-plugin';

import { dist, root } from './paths.mjs';

const require = createRequire(import.meta.url);
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
  resolve: { extensions: ['.ts', '.mjs', '.js'] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        // What the functions do not use of the core is left to the pane.
        sideEffects: false,
        use: {
          loader: require.resolve('ts-loader'),
          options: { transpileOnly: true, configFile: join(root, 'tsconfig.json') },
        },
      },
      {
        test: /\.css$/,
        use: [
          MiniCssExtractPlugin.loader,
          { loader: require.resolve('css-loader'), options: { sourceMap: false } },
        ],
      },
    ],
  },
  optimization: {
    minimizer: [new TerserPlugin({ minify: TerserPlugin.esbuildMinify, extractComments: false })],
  },
  performance: { hints: false },
  plugins: [new MiniCssExtractPlugin({ filename: '[name].css', chunkFilename: '[name].css' })],
});

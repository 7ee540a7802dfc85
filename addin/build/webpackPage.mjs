import { createRequire } from 'node:module';

import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import TerserPlugin from 'terser-webpack-plugin';

const require = createRequire(import.meta.url);

/** What every page makes of its styles: files of their own beside the scripts. */
export const styleRule = {
  test: /\.css$/,
  use: [
    MiniCssExtractPlugin.loader,
    { loader: require.resolve('css-loader'), options: { sourceMap: false } },
  ],
};

export const styleFiles = () =>
  new MiniCssExtractPlugin({ filename: '[name].css', chunkFilename: '[name].css' });

/** esbuild is quick by itself; workers would start the program again that called for the build. */
export const minimizer = () => [
  new TerserPlugin({ minify: TerserPlugin.esbuildMinify, extractComments: false, parallel: false }),
];

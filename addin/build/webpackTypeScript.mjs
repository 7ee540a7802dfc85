import { createRequire } from 'node:module';
import { join } from 'node:path';

import { root } from './paths.mjs';

const require = createRequire(import.meta.url);

/** What every bundle makes of TypeScript; types are checked by `npm run check`, not here. */
export const typeScriptRule = {
  test: /\.ts$/,
  exclude: /node_modules/,
  use: {
    loader: require.resolve('ts-loader'),
    options: { transpileOnly: true, configFile: join(root, 'tsconfig.json') },
  },
};

/** Where an import without an ending may lead. */
export const resolve = { extensions: ['.ts', '.mjs', '.js'] };

import { cpSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';

import { bundle } from './bundle.mjs';
import { compressTexts } from './compress.mjs';
import { unlessFresh } from './freshness.mjs';
import { dist, root } from './paths.mjs';

const production = { mode: 'production' };

/** dist/functions.cjs: the worksheet functions for any Node script. */
export const buildFunctions = () =>
  unlessFresh('functions', async () => {
    const { default: configuration } = await import('./webpack.functions.mjs');
    await bundle(configuration(production));
  });

/** dist/workbench: the browser page, with the sample workbooks beside it. */
export const buildWorkbench = () =>
  unlessFresh('workbench', async () => {
    const { default: configuration } = await import('./webpack.workbench.mjs');
    await bundle(configuration(production));
    compressTexts(join(dist, 'workbench'));
    const samples = join(dist, 'workbench', 'samples');
    mkdirSync(samples, { recursive: true });
    cpSync(join(root, 'sample-workbooks'), samples, {
      recursive: true,
      filter: (path) => !path.endsWith('.ts'),
    });
  });

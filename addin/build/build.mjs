import { ensurePackages } from './dependencies.mjs';

/** `npm run build`: the functions for any Node script, and the workbench with its samples. */
ensurePackages();
const { buildFunctions, buildWorkbench } = await import('./targets.mjs');
await buildFunctions();
await buildWorkbench();
console.log('Built dist/functions.cjs and dist/workbench.');

import { ensurePackages } from './dependencies.mjs';

/** `npm run samples`: builds sample-workbooks/*.xlsx from the invented garden, in the workbench's own grid. */
ensurePackages();
const { ensurePrograms } = await import('./programs.mjs');
ensurePrograms(['chromium']);
const { importTypeScript } = await import('./typescript.mjs');
const { buildSamples } = await importTypeScript('sample-workbooks/buildSamples.ts');
await buildSamples((line) => console.log(line));

import { ensurePackages } from './dependencies.mjs';

/** `npm run samples`: builds the sample workbooks from the invented garden, in the workbench's own grid and in Calc. */
ensurePackages();
const { ensurePrograms } = await import('./programs.mjs');
ensurePrograms(['chromium']);
const { importTypeScript } = await import('./typescript.mjs');
const { buildSamples } = await importTypeScript('sample-workbooks/buildSamples.ts');
await buildSamples((line) => console.log(line));
// The browser that tests share ends with the program.
process.exit();

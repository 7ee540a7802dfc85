import { relative } from 'node:path';

import { ensurePackages } from '../dependencies.mjs';

/**
 * `npm run build:calc`: dist/wandcount.oxt, the extension for LibreOffice. With `-- --with-engine linux-x64` it is
 * dist/wandcount-linux-x64.oxt, which brings Node for those who have none.
 */

ensurePackages();
const { extension, makeCarryingExtension, makeExtension } = await import('./makeExtension.mjs');
const asked = process.argv.indexOf('--with-engine');
const made = async () => {
  if (asked >= 0) return makeCarryingExtension(process.argv[asked + 1]);
  await makeExtension();
  return extension;
};
console.log(
  `Built ${relative(process.cwd(), await made())}. Install it with LibreOffice’s extension manager.`,
);

import { relative } from 'node:path';

import { ensurePackages } from '../dependencies.mjs';

/**
 * `npm run build:calc`: dist/wandcount.oxt, the extension for LibreOffice. With `-- --with-engine linux-x64` it is
 * dist/wandcount-linux-x64.oxt, which brings Node for those who have none.
 */

const asked = process.argv.indexOf('--with-engine');
const made = async () => {
  ensurePackages();
  const { buildExtension, extension, makeCarryingExtension } = await import('./makeExtension.mjs');
  if (asked >= 0) return makeCarryingExtension(process.argv[asked + 1]);
  await buildExtension();
  return extension;
};
try {
  console.log(
    `Built ${relative(process.cwd(), await made())}. Install it with LibreOffice’s extension manager.`,
  );
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}

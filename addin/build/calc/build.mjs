import { ensurePackages } from '../dependencies.mjs';

/** `npm run build:calc`: dist/wandcount.oxt, the extension for LibreOffice. */

ensurePackages();
const { makeExtension } = await import('./makeExtension.mjs');
await makeExtension();
console.log('Built dist/wandcount.oxt. Install it with LibreOffice’s extension manager.');

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { bundle } from '../bundle.mjs';
import { ensurePackages } from '../dependencies.mjs';
import { dist, root } from '../paths.mjs';
import { importTypeScript } from '../typescript.mjs';
import engine from '../webpack.calc.mjs';

/** `npm run build:calc`: dist/wandcount.oxt, the extension for LibreOffice. */

ensurePackages();
await bundle(engine({ mode: 'production' }));

const { packageFiles } = await importTypeScript('addin/build/calc/packageFiles.ts');
const { zipped } = await importTypeScript('addin/build/calc/oxt.ts');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

const files = {
  ...packageFiles(root, version),
  'engine.cjs': readFileSync(join(dist, 'calc', 'engine.cjs')),
};
mkdirSync(dist, { recursive: true });
writeFileSync(join(dist, 'wandcount.oxt'), zipped(files));
console.log('Built dist/wandcount.oxt. Install it with LibreOffice’s extension manager.');

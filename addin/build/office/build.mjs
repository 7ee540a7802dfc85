import { parseArgs } from 'node:util';

import { ensurePackages } from '../dependencies.mjs';

/** `npm run build:office -- --base https://roses.example/feed`: dist/office, to be served from that address. */
try {
  const { values } = parseArgs({ options: { base: { type: 'string' } } });
  ensurePackages();
  const { buildOffice } = await import('./buildOffice.mjs');
  const base = await buildOffice(values.base);
  console.log(`Built dist/office, to be served from ${base}. Its manifest is dist/office/manifest.xml.`);
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}

import { readdirSync } from 'node:fs';
import { join } from 'node:path';

import { ensurePackages } from './dependencies.mjs';
import { root } from './paths.mjs';

/** `npm run bench [name …]`: measures and prints; it judges nothing. Every file in bench/ is one bench. */
ensurePackages();
const { importTypeScript } = await import('./typescript.mjs');
const wanted = process.argv.slice(2);
const names = readdirSync(join(root, 'addin/build/bench'))
  .map((file) => file.replace(/\.(ts|mjs)$/, ''))
  .filter((name) => wanted.length === 0 || wanted.includes(name));
for (const name of names) {
  const file = readdirSync(join(root, 'addin/build/bench')).find((entry) => entry.startsWith(`${name}.`));
  const { run } = file.endsWith('.mjs')
    ? await import(`./bench/${file}`)
    : await importTypeScript(`addin/build/bench/${file}`);
  console.log(`\n${name}`);
  await run((line) => console.log(`  ${line}`));
}

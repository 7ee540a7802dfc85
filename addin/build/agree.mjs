import { spawnSync } from 'node:child_process';

import { ensurePackages } from './dependencies.mjs';
import { root } from './paths.mjs';
import { VITEST } from './steps.mjs';

/** `npm run agree [gardens] [seed]`: the live card against the planner, on so many random gardens. */
const GARDENS = 200;

const [gardens = GARDENS, seed = Date.now() % 1_000_000] = process.argv.slice(2).map(Number);
if (![gardens, seed].every((one) => Number.isInteger(one) && one > 0)) {
  console.error('Give how many gardens, and if you like a seed: whole numbers above 0.');
  process.exit(1);
}
ensurePackages();
console.log(`${gardens} gardens of seed ${seed}`);
const [node, ...words] = [...VITEST, 'tests/properties/liveCard.test.ts', '--reporter=verbose'];
const env = { ...process.env, WANDCOUNT_GARDENS: String(gardens), WANDCOUNT_SEED: String(seed) };
process.exitCode = spawnSync(node, words, { cwd: root, stdio: 'inherit', env }).status ?? 1;

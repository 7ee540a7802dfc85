import { ensurePackages } from './dependencies.mjs';

/** `npm run agree [gardens] [seed]`: the live card against the planner, on so many random gardens. */
const GARDENS = 200;

const [gardens = GARDENS, seed = Date.now() % 1_000_000] = process.argv.slice(2).map(Number);
if (![gardens, seed].every((one) => Number.isInteger(one) && one > 0)) {
  console.error('Give how many gardens, and if you like a seed: whole numbers above 0.');
  process.exit(1);
}
ensurePackages();
console.log(`${gardens} gardens of seed ${seed}`);
Object.assign(process.env, { WANDCOUNT_GARDENS: String(gardens), WANDCOUNT_SEED: String(seed) });
const { runTests } = await import('./runTests.mjs');
const { failed, passed } = await runTests(['tests/properties/liveCard.test.ts', '--reporter=verbose']);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;

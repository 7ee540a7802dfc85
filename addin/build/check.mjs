import { ensurePackages } from './dependencies.mjs';
import { CHECKS, failures } from './steps.mjs';

/** `npm run check`: format, lint, types, without running a test. */
ensurePackages();
const failed = await failures(CHECKS);
console.log(failed.length === 0 ? '\nAll checks hold.' : `\nNot in order: ${failed.join(', ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;

import fc from 'fast-check';

/** Before the tests of each file: random inputs begin with the run's seed, which `vitest.config.mjs` prints. */
fc.configureGlobal({ seed: Number(process.env.WANDCOUNT_SEED) });

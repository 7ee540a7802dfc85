import { catalogue } from '../../../functions';

const LEAST_MILLISECONDS = 100;

/** Calls a second of every function, with the arguments of its first example. */
export const run = (print: (line: string) => void): void => {
  for (const { name, examples, evaluate } of catalogue) {
    const args = examples[0]!.args;
    for (let warm = 0; warm < 1000; warm += 1) evaluate(args);
    const from = performance.now();
    let calls = 0;
    let passed = 0;
    while (passed < LEAST_MILLISECONDS) {
      for (let batch = 0; batch < 500; batch += 1) evaluate(args);
      calls += 500;
      passed = performance.now() - from;
    }
    print(`${name.padEnd(14)} ${Math.round((calls / passed) * 1000).toLocaleString('en')} calls/s`);
  }
};

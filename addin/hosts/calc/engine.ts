import { createInterface } from 'node:readline';

import { answerCall } from './functionCalls';
import type { FunctionCall } from './wire';

/** The program that the Calc component starts: it ends when its stdin does. */

const say = (message: object): void => {
  process.stdout.write(`${JSON.stringify(message)}\n`);
};

createInterface({ input: process.stdin, terminal: false }).on('line', (line) => {
  say(answerCall(JSON.parse(line) as FunctionCall));
});

say({ ready: process.versions.node });

import { createInterface } from 'node:readline';

import { questions } from './asking';
import { endWithParent } from './endWithParent';
import { codeOfError } from './errorCodes';
import { answerCall } from './functionCalls';
import { panes } from './panes';
import { toEngine, type PaneHappening, type ToEngine } from './wire/messages';

/** The program that the Calc component starts: it ends when its stdin does, or its parent. */

const say = (message: object): void => {
  process.stdout.write(`${JSON.stringify(message)}\n`);
};

const asked = questions(say);
const open = panes(say, asked.about);

const follow = async ({ id, doc, event }: PaneHappening): Promise<void> => {
  try {
    await open.happened(doc, event);
  } catch (error) {
    console.error(error);
  }
  if (id !== undefined) setImmediate(() => say({ id, done: true }));
};

const take = (message: ToEngine): void => {
  if ('call' in message) say(answerCall(message));
  else if ('answer' in message) asked.answered(message);
  else if ('event' in message) void follow(message);
  else if ('open' in message) open.open(message.doc, message.open.locale);
  else open.close(message.doc);
};

/** What nobody says goes into the log; who waits for an answer gets one. */
const refuse = (told: { readonly id?: unknown; readonly call?: unknown }, why: Error): void => {
  console.error(why);
  if (told.id !== undefined)
    say({ id: told.id, ...(told.call === undefined ? { done: true } : { code: codeOfError('#VALUE!') }) });
};

createInterface({ input: process.stdin, terminal: false }).on('line', (line) => {
  const told: unknown = JSON.parse(line);
  const { data, error } = toEngine.safeParse(told);
  if (error) refuse(told as object, error);
  else take(data);
});

say({ ready: process.versions.node });
endWithParent();

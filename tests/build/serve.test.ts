import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { compressTexts } from '../../addin/build/compress.mjs';
import { serve } from '../../addin/build/serve.mjs';

const SCRIPT = 'say("rose");\n'.repeat(500);

let folder: string;
let server: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-served-'));
  writeFileSync(join(folder, 'page.js'), SCRIPT);
  writeFileSync(join(folder, 'list.xlsx'), 'PK');
  compressTexts(folder);
  server = await serve(folder, 0);
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

/** As they come, not unpacked. */
const fetched = async (path: string, accept: string): Promise<{ answer: IncomingMessage; body: Buffer }> => {
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    get(new URL(path, server.address), { headers: { 'accept-encoding': accept } }, resolve).on(
      'error',
      reject,
    );
  });
  const parts: Buffer[] = [];
  for await (const part of answer) parts.push(part as Buffer);
  return { answer, body: Buffer.concat(parts) };
};

test('a text comes compressed, with its own type and length, to whoever takes that', async () => {
  const { answer, body } = await fetched('page.js', 'gzip, br');
  expect(answer.headers).toMatchObject({
    'content-encoding': 'gzip',
    'content-length': String(body.length),
    'content-type': 'text/javascript',
    vary: 'Accept-Encoding',
  });
  expect(body.length).toBeLessThan(SCRIPT.length / 10);
  expect(gunzipSync(body).toString()).toBe(SCRIPT);
});

test('it comes as it is to whoever does not, and what is packed already comes as it is to all', async () => {
  const plain = await fetched('page.js', 'identity');
  expect(plain.answer.headers['content-encoding']).toBeUndefined();
  expect(plain.body.toString()).toBe(SCRIPT);
  const { answer, body } = await fetched('list.xlsx', 'gzip');
  expect(answer.headers['content-encoding']).toBeUndefined();
  expect(body.toString()).toBe('PK');
});

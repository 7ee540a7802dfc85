import { spawn, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { get } from 'node:https';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { DEFAULT_BASE } from '../../../addin/build/office/package';
import { root } from '../../../addin/build/paths.mjs';

const listens = (port: number): Promise<number | undefined> =>
  new Promise((resolve) => {
    const server = createServer();
    server.once('error', () => resolve(undefined));
    server.listen(port, '127.0.0.1', () => {
      const { port: taken } = server.address() as { port: number };
      server.close(() => resolve(taken));
    });
  });

let started: ChildProcess;
let port: number;
let said = '';

beforeAll(async () => {
  // The usual port, for which the package is built already, where nothing else is there.
  port = (await listens(Number(new URL(DEFAULT_BASE).port))) ?? (await listens(0))!;
  started = spawn(process.execPath, ['addin/build/office/start.mjs', '--port', String(port)], { cwd: root });
  await new Promise<void>((resolve, reject) => {
    const hear = (part: Buffer): void => {
      said += part.toString();
      if (said.includes('Stop with Ctrl+C')) resolve();
    };
    started.stdout?.on('data', hear);
    started.stderr?.on('data', hear);
    started.once('exit', () => reject(new Error(`It did not start: ${said}`)));
  });
});
afterAll(() => void started.kill());

const body = (path: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const ca = readFileSync(join(root, '.certificates', 'ca.crt'));
    get({ host: 'localhost', port, path, ca, agent: false }, (response) => {
      let text = '';
      response.on('data', (part: Buffer) => (text += part.toString()));
      response.on('end', () => resolve(text));
    }).on('error', reject);
  });

describe('npm run start:office', () => {
  test('serves the package over https with its own certificates, built for that address', async () => {
    expect(said).toContain(`Wandcount is served at https://localhost:${port}/`);
    expect(await body('/pane.html')).toContain('<title>Wandcount</title>');
    expect(await body('/manifest.xml')).toContain(`DefaultValue="https://localhost:${port}/pane.html"`);
  });

  test.each([
    ['Windows', /Windows {3}certutil -user -addstore Root \.certificates.ca\.crt/],
    ['macOS', /macOS {5}security add-trusted-cert .* \.certificates.ca\.crt/],
    ['Linux', /Linux {5}certutil -d sql:\S+ -A .* -i \.certificates.ca\.crt/],
  ])('tells how to trust the certificates on %s', (_system, words) => {
    expect(said).toMatch(words);
  });

  test.each([
    ['in a browser', /in a browser {3}.*Upload My Add-in, and choose dist.office.manifest\.xml/],
    ['on Windows', /on Windows {5}share the folder of that file, .*Trusted Add-in Catalogs/],
    ['on macOS', /on macOS {7}copy that file to .*com\.microsoft\.Excel.*wef/],
  ])('tells how to load the add-in %s', (_where, words) => {
    expect(said).toMatch(words);
  });
});

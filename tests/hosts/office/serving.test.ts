import { X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { get, type RequestOptions } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { ensureCertificates, renewWhileServing } from '../../../addin/build/office/certificates.mjs';
import { serveOffice } from '../../../addin/build/office/serveOffice.mjs';

interface Answer {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: string;
}

const ask = (options: RequestOptions): Promise<Answer> =>
  new Promise((resolve, reject) => {
    get(options, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => (body += part.toString()));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    }).on('error', reject);
  });

const DAY = 24 * 60 * 60 * 1000;
let folder: string;
let certificates: string;
let pages: string;
let files: { ca: string; cert: string; key: string };
interface Server {
  readonly port: number;
  readonly address: string;
  show(files: object): void;
  close(): Promise<void>;
}
let server: Server;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-https-'));
  certificates = join(folder, 'certificates');
  pages = join(folder, 'pages');
  mkdirSync(pages);
  writeFileSync(join(pages, 'pane.html'), '<!doctype html><title>Wandcount</title>');
  writeFileSync(join(folder, 'secret.txt'), 'not served');
  ({ files } = (await ensureCertificates(certificates)) as { files: typeof files });
  server = (await serveOffice(pages, 0, files)) as Server;
});
afterAll(async () => {
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});

const place = (path: string, host = 'localhost') => ({ host, port: server.port, path, agent: false });
const ca = () => readFileSync(files.ca);

describe('the certificates', () => {
  test('are made for this machine, for a year, with a key that others cannot read', () => {
    const certificate = new X509Certificate(readFileSync(files.cert));
    expect(certificate.subjectAltName).toBe('IP Address:127.0.0.1, DNS:localhost');
    expect(certificate.checkIssued(new X509Certificate(ca()))).toBe(true);
    expect(Date.parse(certificate.validTo) - Date.now()).toBeGreaterThan(360 * DAY);
    if (process.platform !== 'win32') expect(statSync(files.key).mode & 0o077).toBe(0);
  });

  test('stay while they are good', async () => {
    const before = ca();
    expect((await ensureCertificates(certificates)).isNew).toBe(false);
    expect(ca()).toEqual(before);
  });

  test('are renewed before they run out', async () => {
    const other = join(folder, 'soon');
    await ensureCertificates(other, { days: 30 });
    const first = readFileSync(join(other, 'localhost.crt'));
    const later = (days: number) => ensureCertificates(other, { days: 30, now: Date.now() + days * DAY });
    expect((await later(10)).isNew).toBe(false);
    expect((await later(20)).isNew).toBe(true);
    expect(readFileSync(join(other, 'localhost.crt'))).not.toEqual(first);
  });

  test('are made anew where something else stands in their place', async () => {
    const other = join(folder, 'spoilt');
    await ensureCertificates(other);
    writeFileSync(join(other, 'localhost.crt'), 'not a certificate');
    expect((await ensureCertificates(other)).isNew).toBe(true);
    expect(new X509Certificate(readFileSync(join(other, 'localhost.crt'))).subjectAltName).toContain(
      'localhost',
    );
  });
});

describe('a server that runs longer than its certificates last', () => {
  interface Clock {
    every: number;
    now: () => number;
    /** Called once others are shown. */
    onShow?: () => void;
  }
  const serving = async (name: string, { onShow, ...clock }: Clock) => {
    const own = join(folder, name);
    const made = (await ensureCertificates(own, { days: 30 })) as { files: typeof files };
    const long = (await serveOffice(pages, 0, made.files)) as Server;
    const troubles: string[] = [];
    const shown: object[] = [];
    const show = (renewed: object): void => {
      long.show(renewed);
      shown.push(renewed);
      onShow?.();
    };
    const end = renewWhileServing(show, (error: Error) => troubles.push(error.message), {
      folder: own,
      days: 30,
      ...clock,
    });
    const authority = () => readFileSync(made.files.ca);
    const page = (ca: Buffer) =>
      ask({ host: 'localhost', port: long.port, path: '/pane.html', agent: false, ca });
    return {
      shown,
      authority,
      page,
      troubles,
      close: () => (end(), long.close()),
    };
  };

  test('shows renewed ones before they run out, without a pause', async () => {
    let days = 10;
    let looks = 0;
    const now = (): number => {
      looks += 1;
      return Date.now() + days * DAY;
    };
    const onShow = (): void => void (days = 0);
    const { shown, authority, page, troubles, close } = await serving('long', { every: 20, now, onShow });
    const old = authority();
    await expect.poll(() => looks).toBeGreaterThan(5);
    expect(shown).toEqual([]);
    days = 20;
    await expect.poll(() => shown.length, { timeout: 60_000 }).toBe(1);
    expect(authority()).not.toEqual(old);
    expect((await page(authority())).status).toBe(200);
    await expect(page(old)).rejects.toThrow(/certificate/i);
    expect(troubles).toEqual([]);
    await close();
  });

  test('says why they could not be renewed, and goes on with those it has', async () => {
    const now = (): number => {
      throw new Error('The clock stands still.');
    };
    const { authority, page, troubles, close } = await serving('stuck', { every: 20, now });
    await expect.poll(() => troubles.length, { timeout: 20_000 }).toBeGreaterThan(1);
    expect(troubles[0]).toBe('The clock stands still.');
    expect((await page(authority())).status).toBe(200);
    await close();
  });
});

describe('a page', () => {
  test.each(['localhost', '127.0.0.1'])(
    'comes over https from %s to those who trust the certificate',
    async (host) => {
      const answer = await ask({ ...place('/pane.html', host), ca: ca() });
      expect(answer.status).toBe(200);
      expect(answer.body).toContain('<title>Wandcount</title>');
      expect(answer.headers['access-control-allow-origin']).toBe('*');
      expect(answer.headers['cache-control']).not.toMatch(/no-cache|no-store/);
    },
  );

  test('comes to nobody else', async () => {
    await expect(ask(place('/pane.html'))).rejects.toThrow(/self.signed certificate/i);
  });

  test('comes under no other name', async () => {
    const answer = await ask({
      ...place('/pane.html'),
      ca: ca(),
      servername: 'localhost',
      headers: { host: 'roses.example' },
    });
    expect(answer.status).toBe(403);
  });

  test('that is not there, or outside of the folder, is refused', async () => {
    expect((await ask({ ...place('/nothing.html'), ca: ca() })).status).toBe(404);
    const outside = await ask({ ...place('/../secret.txt'), ca: ca() });
    expect(outside.status).toBe(404);
    expect(outside.body).not.toContain('not served');
  });

  test('is not served where something else serves', async () => {
    await expect(serveOffice(pages, server.port, files)).rejects.toThrow(`Port ${server.port} is in use.`);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';

import { buildOffice, officeFolder } from '../../../addin/build/office/buildOffice.mjs';
import { FILES } from '../../../addin/build/office/package';
import { packageFaults } from '../../../addin/build/office/packageFaults';
import { catalogue } from '../../../functions';

const PLATFORM = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

let base: string;
beforeAll(async () => {
  base = (await buildOffice()) as string;
});

const file = (path: string): Uint8Array | undefined => {
  try {
    return readFileSync(join(officeFolder, path));
  } catch {
    return undefined;
  }
};
const text = (path: string): string => new TextDecoder().decode(file(path));
const scripts = (): string[] => readdirSync(officeFolder).filter((name) => name.endsWith('.js'));
const compressed = (path: string): number => gzipSync(file(path)!, { level: 9 }).length;

describe('the built package', () => {
  test('keeps the rules of the platform, every address a file of it', () => {
    expect(packageFaults(base, file)).toEqual([]);
  });

  test('is refused where a file is missing', () => {
    const without = (path: string) => (path === FILES.script ? undefined : file(path));
    expect(packageFaults(base, without)).toEqual([
      `${FILES.script} is missing.`,
      'The address of Script.Url names no built file.',
    ]);
  });

  test('asks for nothing elsewhere but the platform itself', () => {
    const addresses = [FILES.pane, FILES.message, FILES.support, 'pane.css', ...scripts()].flatMap(
      (path) => text(path).match(/(?:src|href)=\\?["']https?:[^"']+|url\(https?:[^)]+/g) ?? [],
    );
    expect(addresses).toEqual([`src="${PLATFORM}`]);
  });

  test('never opens the pane by code, which programs may ignore', () => {
    for (const path of scripts()) expect(text(path), path).not.toMatch(/showAsTaskpane/);
  });

  test('runs one instance of everything: one script starts, the others only add to it', () => {
    const starting = scripts().filter((path) => !/^"use strict";\(self\.webpackChunk/.test(text(path)));
    expect(starting.sort()).toEqual([FILES.script, 'message.js'].sort());
    expect(text(FILES.pane).match(/<script[^>]*src="([^"]+)"/g)).toEqual([
      `<script src="${PLATFORM}"`,
      `<script src="${FILES.script}"`,
    ]);
  });

  test('has functions of less than 60 kB and a pane of less than 150 kB, compressed, before charts', () => {
    expect(compressed(FILES.script)).toBeLessThan(60_000);
    // The pane fetches its own script and the one of the libraries that it needs at once.
    const [, needed = ''] =
      /Promise\.all\(\[((?:[\w$]+\.e\((?:\d+|"\w+")\),?)+)\]\)/.exec(text(FILES.script)) ?? [];
    const ids = [...needed.matchAll(/\.e\((\d+|"\w+")\)/g)].map(([, id]) => id!.replaceAll('"', ''));
    expect(ids.length).toBeGreaterThan(0);
    const fetched = scripts().filter((path) => path === 'pane.js' || ids.some((id) => path === `${id}.js`));
    expect(fetched).toContain('pane.js');
    expect([...fetched, 'pane.css'].reduce((sum, path) => sum + compressed(path), 0)).toBeLessThan(150_000);
    const charts = scripts().filter((path) => text(path).includes('Chart.js') || compressed(path) > 60_000);
    expect(charts.some((path) => !fetched.includes(path))).toBe(true);
  });

  test('makes the functions in a runtime without a page', () => {
    const associated: Record<string, (...given: unknown[]) => unknown> = {};
    const noCode = { codeGeneration: { strings: false, wasm: false } };
    const runtime = createContext(
      {
        CustomFunctions: { associate: (map: object) => Object.assign(associated, map) },
        performance,
        console,
      },
      noCode,
    );
    runInContext('var self = globalThis;', runtime);
    runInContext(text(FILES.script), runtime);
    expect(Object.keys(associated).sort()).toEqual(catalogue.map(({ name }) => name).sort());
    expect(associated['SECONDS']!(0.7, 'gal', 2.8, 'gal/min', null, {})).toBeCloseTo(15, 9);
  });
});

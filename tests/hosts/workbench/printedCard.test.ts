import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { planRound, type RoundPlan } from '../../../addin/core';
import { root } from '../../../addin/build/paths.mjs';
import { findProgram } from '../../../addin/build/programs.mjs';
import { makeCard } from '../../../addin/workbook/card/makeCard';
import type { Edit } from '../../../addin/workbook/change';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../../addin/workbook/readGarden';
import { roundInput } from '../../../addin/workbook/roundInput';
import { openTestPage, type TestPage } from './openTestPage';

type Paper = 'Letter' | 'A4';
const PAPERS: readonly Paper[] = ['Letter', 'A4'];
const EIGHT_POINTS = (8 * 96) / 72;
const START = 7 * 3600;
const output = join(root, 'tests', 'output', 'workbench');

let bench: TestPage;

beforeAll(async () => {
  mkdirSync(output, { recursive: true });
  bench = await openTestPage();
  // The system's dialog would wait for a user; the page is printed to a file while it is laid out.
  await bench.page.evaluate(() => Object.assign(window, { print: () => undefined }));
});
afterAll(() => bench?.close());

/** The words on each page of a printed sheet, and its smallest print in pixels. */
const printed = async (sheet: string, format: Paper, name: string) => {
  await bench.call('print', sheet);
  const smallest = await bench.page.evaluate(() =>
    Math.min(
      ...[...document.querySelectorAll('#print-view td')]
        .filter(({ textContent }) => textContent !== '')
        .map((cell) => parseFloat(getComputedStyle(cell).fontSize)),
    ),
  );
  const path = join(output, `${name}-${format}.pdf`);
  await bench.page.pdf({ format, preferCSSPageSize: true, path });
  const reader = join(dirname(findProgram('pdftoppm')!), 'pdftotext');
  const text = execFileSync(reader, ['-layout', path, '-'], { encoding: 'utf8' });
  const pages = text.split('\f').slice(0, -1);
  execFileSync(findProgram('pdftoppm')!, ['-r', '90', '-png', path, path.replace(/\.pdf$/, '')]);
  return { pages: pages.map((words) => words.replace(/\s+/g, ' ')), smallest };
};

describe('the card of the sample garden', () => {
  let plan: RoundPlan;
  let sheet: string;

  beforeAll(async () => {
    const sample = readFileSync(join(root, 'sample-workbooks', 'garden.xlsx')).toString('base64');
    await bench.call('openFile', 'garden.xlsx', sample);
    const outline: Outline = await bench.call('outline');
    const now: Snapshot = await bench.call('read', gardenAreas(outline));
    const input = roundInput(readGarden(now), { start: START });
    if (Array.isArray(input)) throw new Error(JSON.stringify(input));
    const planned = planRound(input);
    if ('refused' in planned) throw new Error(planned.refused);
    plan = planned;
    const change = makeCard(
      now,
      readGarden(now),
      { input, plan },
      { date: 46_152, start: START, style: 'full' },
    );
    sheet = (change.edits.find(({ kind }) => kind === 'page') as Extract<Edit, { kind: 'page' }>).area.sheet;
    await bench.call('apply', change);
  });

  test.each(PAPERS)(
    'is one page of %s, with every bed, every fill and every caution on it',
    async (paper) => {
      const { pages, smallest } = await printed(sheet, paper, 'card');
      expect(pages).toHaveLength(1);
      expect(smallest).toBeGreaterThanOrEqual(EIGHT_POINTS - 0.01);
      expect(plan.cautions.length).toBeGreaterThan(8);
      for (const { text } of plan.cautions) expect(pages[0]).toContain(text);
      const fills = plan.stations.flatMap((station) => station.fills);
      fills.forEach((_, index) => expect(pages[0]).toContain(`Fill ${index + 1} `));
      for (const bed of plan.stations.flatMap(({ beds }) => beds)) expect(pages[0]).toContain(bed);
    },
  );

  test('sets numbers right, a dash for none of a size too, and breaks no word', async () => {
    await bench.call('print', sheet);
    const cells = await bench.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('#print-view td')].map((cell) => {
        return {
          text: cell.textContent ?? '',
          aligned: getComputedStyle(cell).textAlign,
          over: cell.scrollWidth > cell.clientWidth + 1,
        };
      }),
    );
    const dashes = cells.filter(({ text }) => text === '–');
    expect(dashes.length).toBeGreaterThan(20);
    expect(new Set(dashes.map(({ aligned }) => aligned))).toEqual(new Set(['right']));
    const aligned = (words: string) => cells.find(({ text }) => text === words)?.aligned;
    expect([aligned('Large bush'), aligned('Front walk')]).toEqual(['right', 'left']);
    expect(cells.map(({ text }) => text)).toContain('231.7\u00a0\u00a0\u00a0\u00a0');
    expect(cells.filter(({ over }) => over)).toEqual([]);
  });
});

describe('a sheet that is longer than a page', () => {
  const SHEET = 'Long';
  const ROWS = 150;
  const setUp = (pagesHigh: { pagesHigh?: number }): Promise<never> =>
    bench.call('apply', {
      title: 'Page',
      edits: [
        {
          kind: 'page',
          area: { sheet: SHEET, row: 0, column: 0, rows: ROWS, columns: 3 },
          landscape: false,
          repeatRows: 1,
          ...pagesHigh,
        },
      ],
    });

  beforeAll(async () => {
    await bench.call('open');
    const cells = Array.from({ length: ROWS }, (_, row) =>
      row === 0 ? ['Bed', 'Rose', 'How many'] : [`Bed ${row}`, `Rose ${row}`, row],
    );
    await bench.call('apply', {
      title: 'Rows',
      edits: [
        { kind: 'addSheet', sheet: SHEET },
        { kind: 'write', sheet: SHEET, row: 0, column: 0, cells },
      ],
    });
  });

  test.each([
    ['as many pages as it takes', {}],
    ['one page, on which nobody could read it', { pagesHigh: 1 }],
  ])('asked for %s, repeats its heads and keeps its print readable', async (_, pagesHigh) => {
    await setUp(pagesHigh);
    const { pages, smallest } = await printed(SHEET, 'Letter', 'long');
    expect(pages.length).toBeGreaterThan(1);
    for (const words of pages) expect(words).toMatch(/Bed Rose How many/);
    expect(pages.at(-1)).toContain(`Rose ${ROWS - 1} `);
    expect(smallest).toBeGreaterThanOrEqual(EIGHT_POINTS - 0.01);
  });

  test('asked for three pages, is made smaller until it has them', async () => {
    await setUp({});
    const free = await printed(SHEET, 'Letter', 'long');
    await setUp({ pagesHigh: 3 });
    const fitted = await printed(SHEET, 'Letter', 'long');
    expect(free.pages.length).toBeGreaterThan(3);
    expect(fitted.pages).toHaveLength(3);
    expect(fitted.smallest).toBeLessThan(free.smallest);
  });
});

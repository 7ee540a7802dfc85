import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import { dist } from '../paths.mjs';
import { ensurePrograms, findProgram } from '../programs.mjs';
import { serve } from '../serve.mjs';
import { buildFunctions, buildWorkbench } from '../targets.mjs';
import { bundle } from '../bundle.mjs';
import webpackWorkbench from '../webpack.workbench.mjs';

const STARTS = 5;
const CELLS = 10_000;
const ROUNDS = 9;
/** The same count, by a function of ours and by the grid's own: whole seconds for a dose at a flow, never none. */
const FORMULAS = {
  FEED: (row) => `=FEED.SECONDS($B${row},"gal",$A$1,"gal/min",1)`,
  native: (row) => `=MAX(1,ROUND($B${row}/$A$1*60,0))`,
};

const median = (times) => [...times].sort((a, b) => a - b)[times.length >> 1];
const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

const launch = async () => {
  const { chromium } = await import('playwright-core');
  return chromium.launch({
    executablePath: findProgram('chromium'),
    headless: true,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic'],
  });
};

const printSizes = (print) => {
  const folder = join(dist, 'workbench');
  const files = readdirSync(folder).filter((name) => /\.(js|css)$/.test(name));
  for (const path of [...files.map((name) => join(folder, name)), join(dist, 'functions.cjs')]) {
    const bytes = readFileSync(path);
    const compressed = gzipSync(bytes, { level: 9 }).length;
    print(
      `${path.slice(dist.length + 1).padEnd(24)} ${kilobytes(bytes.length).padStart(10)}, gzip ${kilobytes(compressed).padStart(9)}`,
    );
  }
};

/** Milliseconds from the start of a page until its grid is drawn and its pane tells of the sample list. */
const started = (page) =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        const look = () =>
          document.querySelector('#pane .answer') && document.querySelector('#grid canvas')
            ? requestAnimationFrame(() => resolve(performance.now()))
            : requestAnimationFrame(look);
        look();
      }),
  );

const printStarts = async (print, browser) => {
  const server = await serve(join(dist, 'workbench'), 0);
  const times = { 'with nothing kept': [], 'loaded again': [] };
  for (let run = 0; run < STARTS; run += 1) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const page = await context.newPage();
    await page.goto(server.address);
    times['with nothing kept'].push(await started(page));
    await page.reload();
    times['loaded again'].push(await started(page));
    await context.close();
  }
  server.close();
  for (const [how, all] of Object.entries(times))
    print(
      `usable ${how} after ${median(all).toFixed(0)} ms (median of ${STARTS}, ${Math.min(...all).toFixed(0)} to ${Math.max(...all).toFixed(0)})`,
    );
};

/** The grid as it is delivered, with its inside open. */
const openBenchPage = async (browser) => {
  const folder = join(dist, 'workbench-bench');
  await bundle(webpackWorkbench({ mode: 'production', entry: 'tests/hosts/workbench/testPage.ts', folder }));
  const server = await serve(folder, 0);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(server.address);
  await page.waitForFunction(() => 'answer' in window);
  const call = async (name, ...args) => {
    const answer = await page.evaluate(([of, given]) => window.answer(of, given), [name, args]);
    if (!('value' in answer)) throw new Error(answer.error);
    return answer.value;
  };
  return { call, close: () => server.close() };
};

const printRecalculation = async (print, browser) => {
  const { call, close } = await openBenchPage(browser);
  await call('open');
  for (const [sheet, formula] of Object.entries(FORMULAS)) {
    const rows = Array.from({ length: CELLS }, (_, row) => [
      row === 0 ? 2.6 : null,
      0.05 + (row % 97) / 60,
      { formula: formula(row + 1) },
    ]);
    await call('apply', {
      title: sheet,
      edits: [
        { kind: 'addSheet', sheet },
        { kind: 'write', sheet, row: 0, column: 0, cells: rows },
      ],
    });
  }
  const results = async (sheet) => {
    const { blocks } = await call('read', [{ sheet, row: 0, column: 2, rows: CELLS, columns: 1 }]);
    return blocks[0].cells.map(([{ value }]) => value);
  };
  const times = { FEED: { whole: [], engine: [] }, native: { whole: [], engine: [] } };
  for (let round = 0; round < ROUNDS; round += 1)
    for (const sheet of Object.keys(FORMULAS)) {
      const { whole, engine } = await call('recalculated', sheet, 0, 0, 2.6 + 0.1 * round);
      times[sheet].whole.push(whole);
      times[sheet].engine.push(engine);
    }
  const [ours, theirs] = [await results('FEED'), await results('native')];
  const apart = ours.findIndex((value, row) => typeof value !== 'number' || value !== theirs[row]);
  if (apart >= 0) throw new Error(`Row ${apart + 1} gives ${ours[apart]} and ${theirs[apart]}.`);
  for (const part of ['engine', 'whole']) {
    const [feed, native] = [median(times.FEED[part]), median(times.native[part])];
    print(
      `${CELLS.toLocaleString('en')} cells of FEED.SECONDS, ${part === 'engine' ? 'the calculation alone' : 'until they are shown'}: ` +
        `${feed.toFixed(0)} ms, native ${native.toFixed(0)} ms, ${(feed / native).toFixed(2)} times (medians of ${ROUNDS})`,
    );
  }
  close();
};

/** Sizes of what is delivered, how soon the grid can be used, and what a function costs in it. */
export const run = async (print) => {
  ensurePrograms(['chromium']);
  await buildFunctions();
  await buildWorkbench();
  printSizes(print);
  const browser = await launch();
  await printStarts(print, browser);
  await printRecalculation(print, browser);
  await browser.close();
};

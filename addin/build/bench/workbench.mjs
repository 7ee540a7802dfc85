import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import { CHROMIUM } from '../chromium.mjs';
import { dist } from '../paths.mjs';
import { ensurePrograms, findProgram } from '../programs.mjs';
import { serve } from '../serve.mjs';
import { buildFunctions, buildWorkbench } from '../targets.mjs';
import { bundle } from '../bundle.mjs';
import { openPlain } from '../plainBrowser.mjs';
import webpackWorkbench from '../webpack.workbench.mjs';

const STARTS = 5;
/** Rows of the lists that are opened. */
const LISTS = [350, 5_000, 50_000];
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
    args: CHROMIUM,
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

const STAGES = {
  bytes: (bytes) => kilobytes(bytes),
  paint: (time) => `${time.toFixed(0)} ms`,
  pane: (time) => `${time.toFixed(0)} ms`,
  grid: (time) => `${time.toFixed(0)} ms`,
  longest: (time) => `${time.toFixed(0)} ms`,
};
const TITLES = {
  bytes: 'fetched',
  paint: 'first paint',
  pane: 'pane answers',
  grid: 'grid drawn',
  longest: 'longest task',
};

/** Medians by stage of several loads. */
const printStages = (print, title, loads) => {
  const told = Object.entries(STAGES).map(
    ([stage, words]) => `${TITLES[stage]} ${words(median(loads.map((load) => load[stage])))}`,
  );
  print(`${title}: ${told.join(', ')}`);
};

const loadsOf = async (times, files, open) => {
  const loads = [];
  for (let run = 0; run < times; run += 1) loads.push(await openPlain(join(dist, 'workbench'), files, open));
  return loads;
};

const printStarts = async (print) => {
  const loads = await loadsOf(STARTS);
  printStages(
    print,
    `start with nothing kept (median of ${STARTS})`,
    loads.map(({ cold }) => cold),
  );
  printStages(
    print,
    'loaded again',
    loads.map(({ warm }) => warm),
  );
};

/** An invented list of so many rows, as the bytes of an .xlsx file. */
const listOf = async (rows) => {
  const { Workbook } = await import('@cj-tech-master/excelts');
  const file = new Workbook();
  const sheet = file.addWorksheet('My roses');
  sheet.addRow(['Bed', 'Rose', 'Class', 'Size', 'How many', 'Planted', 'From', 'Notes']);
  for (let row = 0; row < rows; row += 1)
    sheet.addRow([`Bed ${row % 40}`, `Rose ${row % 500}`, 'Floribunda', 'bush', 1, 2020, 'a cutting', '']);
  return new Uint8Array(await file.xlsx.writeBuffer());
};

const printOpening = async (print) => {
  for (const rows of LISTS) {
    const [{ cold }] = await loadsOf(1, { 'list.xlsx': await listOf(rows) }, 'list.xlsx');
    printStages(print, `a list of ${rows.toLocaleString('en')} rows, with nothing kept`, [cold]);
  }
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
  await printStarts(print);
  await printOpening(print);
  const browser = await launch();
  await printRecalculation(print, browser);
  await browser.close();
};

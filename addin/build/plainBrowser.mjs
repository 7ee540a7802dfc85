import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { CHROMIUM } from './chromium.mjs';
import { compressTexts } from './compress.mjs';
import { findProgram } from './programs.mjs';
import { serve } from './serve.mjs';

/**
 * Runs in the page before anything of it, and asks for `times?…` when the sheets are there: once for the first load,
 * and once for the second, which finds what the browser kept of the first.
 */
const timing = () => {
  const first = {};
  let longest = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  }).observe({ type: 'longtask', buffered: true });
  const tell = () => {
    const paint = performance.getEntriesByName('first-contentful-paint')[0]?.startTime;
    const bytes = performance
      .getEntriesByType('resource')
      .reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0);
    const again = sessionStorage.getItem('again') === 'yes';
    const times = { again, ...first, paint, bytes, longest };
    sessionStorage.setItem('again', 'yes');
    void fetch(`times?${encodeURIComponent(JSON.stringify(times))}`).finally(() => {
      if (!again) location.reload();
    });
  };
  const look = () => {
    if (document.querySelector('#pane .answer')) first.pane ??= performance.now();
    const there = document.querySelector('#grid canvas') && !document.querySelector('#grid[aria-busy]');
    if (!there || first.pane === undefined) return void requestAnimationFrame(look);
    first.grid = performance.now();
    // Tasks that follow the first grid belong to the start.
    setTimeout(tell, 1_000);
  };
  requestAnimationFrame(look);
};

const ended = (child) => new Promise((resolve) => child.once('exit', resolve));

/**
 * Loads the delivered page in a browser that no driver is attached to, with nothing kept and once more, and answers
 * with what the page timed by itself: milliseconds since the start of the load, bytes, the longest task.
 *
 * @param folder where the page is built
 * @param files what to put beside it, by path
 * @param open which file the page is to open, by its address; its own first one where none is named
 */
export const openPlain = async (folder, files = {}, open) => {
  const copy = mkdtempSync(join(tmpdir(), 'wandcount-bench-'));
  const profile = mkdtempSync(join(tmpdir(), 'wandcount-profile-'));
  cpSync(folder, copy, { recursive: true });
  const page = join(copy, 'index.html');
  const text = readFileSync(page, 'utf8').replace('<head>', '<head><script src="timing.js"></script>');
  writeFileSync(page, text);
  writeFileSync(join(copy, 'timing.js'), `(${timing})();`);
  for (const [path, bytes] of Object.entries(files)) writeFileSync(join(copy, path), bytes);
  compressTexts(copy);
  const times = [];
  let told;
  const done = new Promise((resolve) => (told = resolve));
  const server = await serve(copy, 0, ({ url }) => {
    if (!url.startsWith('/times?')) return;
    times.push(JSON.parse(decodeURIComponent(url.slice('/times?'.length))));
    if (times.length === 2) told();
  });
  const browser = spawn(
    findProgram('chromium'),
    [
      '--headless=new',
      ...CHROMIUM,
      '--window-size=1280,800',
      `--user-data-dir=${profile}`,
      `${server.address}${open === undefined ? '' : `?open=${open}`}`,
    ],
    { stdio: 'ignore' },
  );
  const gone = ended(browser);
  const broken = gone.then((code) => {
    if (times.length < 2) throw new Error(`The browser ended by itself (${code}).`);
  });
  await Promise.race([done, broken]);
  browser.kill();
  await gone;
  server.close();
  for (const one of [copy, profile]) rmSync(one, { recursive: true, force: true, maxRetries: 5 });
  const [cold, warm] = times;
  return { cold, warm };
};

import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { Workbook as FileBook } from '@cj-tech-master/excelts';
import type { AxeResults } from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { goToCell, serveWorkbench, smallList, started, typeInCell, type Workbenches } from './openPage';

/** What the grid's package does by itself: two areas for messages of one name, a button within a button. */
const GRID_OWN: Readonly<Record<string, RegExp>> = {
  'landmark-unique': /aria-label="Notifications/,
  'nested-interactive': /data-slot="dropdown-menu-trigger"/,
};

let benches: Workbenches;
let context: BrowserContext;
let page: Page;
let troubles: readonly string[];

beforeAll(async () => {
  benches = await serveWorkbench();
});
afterAll(() => benches?.close());
beforeEach(async () => {
  context = await benches.browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-US' });
  // A browser without file dialogs saves into its downloads, which a test can look at.
  await context.addInitScript(() => {
    delete (window as { showSaveFilePicker?: unknown }).showSaveFilePicker;
    window.print = () => undefined;
  });
  ({ page, troubles } = await benches.open(context));
});
afterEach(() => context.close());

const press = async (label: string): Promise<void> => {
  await page.locator('#pane button', { hasText: label }).first().click();
  await page.locator('#pane .message').waitFor();
};
const unsaved = () => page.locator('#file-state').isVisible();
const saved = async (): Promise<FileBook> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
  const file = new FileBook();
  await file.xlsx.load(readFileSync(await download.path()) as never);
  return file;
};
const openList = async (name: string, text: string): Promise<void> => {
  await page.setInputFiles('#file', { name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.locator('#file-name', { hasText: name }).waitFor();
};

test('the page opens the sample list, asks nothing outside its own origin and keeps to its policy', async () => {
  expect(await page.locator('#file-name').innerText()).toBe('untidy-list.xlsx');
  expect(await page.locator('#pane .answer').innerText()).toContain('10 roses in 2 beds');
  expect(await unsaved()).toBe(false);
  const policy = (await page.locator('meta[http-equiv]').getAttribute('content')) ?? '';
  expect(policy).toContain("script-src 'self';");
  expect(policy).not.toMatch(/unsafe-eval|https?:/);
  await page.waitForLoadState('networkidle');
  expect(troubles).toEqual([]);
  await page.evaluate(() => {
    addEventListener(
      'securitypolicyviolation',
      ({ effectiveDirective }) => (document.title = effectiveDirective),
    );
    setTimeout('document.title = "a text was run as a program"', 0);
  });
  await expect.poll(() => page.title()).toBe('script-src');
});

test('a long file says that it is being opened while it is read, and no longer', async () => {
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    new MutationObserver(() => {
      const text = document.querySelector('#notices')?.textContent ?? '';
      const name = document.querySelector('#file-name')?.textContent ?? '';
      said.push(`${name}: ${text}`);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  const rows = Array.from({ length: 20_000 }, (_, row) => `East,Rose ${row % 50},large`);
  await openList('long.csv', ['Bed,Rose,Size', ...rows].join('\n'));
  await page.locator('#pane .answer', { hasText: '20,000 roses' }).waitFor();
  const said = await page.evaluate(() => (window as unknown as { said: string[] }).said);
  expect(said).toContainEqual(
    expect.stringContaining('untidy-list.xlsx: Opening “long.csv”. A long list takes a while.'),
  );
  expect(await page.locator('#notices').innerText()).toBe('');
  expect(troubles).toEqual([]);
});

test('a sheet with an exclamation mark in its name is renamed on opening, and the page says so', async () => {
  const file = new FileBook();
  file.addWorksheet('Keep!').getCell('A1').value = 3;
  file.addWorksheet('Other').getCell('A1').value = { formula: "'Keep!'!A1*2", result: 6 };
  await page.setInputFiles('#file', {
    name: 'marks.xlsx',
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(await file.xlsx.writeBuffer()),
  });
  const notice = page.getByRole('alert').filter({ hasText: 'Keep!' });
  await notice.waitFor();
  expect(await notice.innerText()).toContain(
    'Formulas cannot find a sheet with an exclamation mark in its name here. “Keep!” is “Keep” now, and formulas follow.',
  );
  expect(await page.locator('#file-state').isVisible()).toBe(false);
  const again = await saved();
  expect(again.worksheets.map(({ name }) => name)).toEqual(['Keep', 'Other']);
  expect(again.getWorksheet('Other')?.getCell('A1').value).toEqual({ formula: "'Keep'!A1*2", result: 6 });
});

test('what the pane does is one step back, and what was saved is not marked', async () => {
  await press('Make the plant inventory');
  expect(await unsaved()).toBe(true);
  expect(await page.title()).toMatch(/^• untidy-list\.xlsx/);
  const file = await saved();
  expect(file.worksheets.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['My roses', 'Plants', 'Beds']),
  );
  expect(await unsaved()).toBe(false);
  await page.click('#undo');
  await expect.poll(unsaved).toBe(true);
  expect((await saved()).worksheets.map(({ name }) => name)).toEqual(['My roses']);
  await page.click('#redo');
  await expect.poll(unsaved).toBe(true);
  expect((await saved()).getWorksheet('Plants')?.getCell('A5').value).toBe('Winter Lantern');
});

test('a formula typed into a cell is computed, and the pane says why it refuses', async () => {
  await typeInCell(page, 'G6', '=feed.seconds(0.7,"gal",2.8,"gal/min")');
  await typeInCell(page, 'G7', '=FEED.SECONDS("much","gal",2.8,"gal/min")');
  await page.locator('#pane', { hasText: 'much' }).waitFor();
  expect(await page.locator('#pane').innerText()).toMatch(/dose.*“?much/i);
  await goToCell(page, 'G6');
  await page.locator('#pane summary', { hasText: 'G6 shows 15' }).waitFor();
  const sheet = (await saved()).getWorksheet('My roses')!;
  expect(sheet.getCell('G6').result).toBeCloseTo(15, 9);
  expect(sheet.getCell('G7').result).toEqual({ error: '#VALUE!' });
});

test('the keyboard reaches everything: Tab from the top, F6 out of the sheets and back', async () => {
  const holds = (selector: string) =>
    page.evaluate((wanted) => document.activeElement?.closest(wanted) != null, selector);
  await page.keyboard.press('Tab');
  expect(await holds('.skip')).toBe(true);
  await page.keyboard.press('Tab');
  expect(await holds('#open')).toBe(true);
  await page.keyboard.press('F6');
  expect(await holds('#grid')).toBe(true);
  await page.keyboard.press('Tab');
  expect(await holds('#grid')).toBe(true);
  await page.keyboard.press('F6');
  expect(await holds('#pane')).toBe(true);
  await page.keyboard.press('Tab');
  expect(await holds('#pane button')).toBe(true);
});

test('a sheet is renamed by hand, but not to a name that formulas could not find', async () => {
  const tab = page.locator('[data-u-comp="slide-tab-item"]').first();
  const rename = async (name: string) => {
    await tab.dblclick({ delay: 60 });
    await page.locator('[contenteditable=true]:focus').waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type(name);
    await page.keyboard.press('Enter');
  };
  await rename("Gran's roses");
  await expect.poll(async () => (await saved()).worksheets[0]?.name).toBe("Gran's roses");
  await rename('Today!');
  await page.getByRole('alert').filter({ hasText: 'leave out the exclamation mark' }).waitFor();
  expect((await saved()).worksheets[0]?.name).toBe("Gran's roses");
  expect(await tab.innerText()).toBe("Gran's roses");
  expect(troubles).toEqual([]);
});

test('what is typed into the pane stays out of the cells', async () => {
  await press('Make the plant inventory');
  const dose = page.locator('#pane table input').first();
  await dose.click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('0.8');
  await page.keyboard.press('Control+z');
  await page.keyboard.type('5');
  expect(await dose.inputValue()).toContain('5');
  const file = await saved();
  expect(file.getWorksheet('Plants')?.getCell('A1').value).toBe('Plants');
  expect(file.getWorksheet('Plants')?.getCell('A5').value).toBe('Winter Lantern');
});

describe('work that was not saved', () => {
  /** The drafts that the browser keeps, each as a text. */
  const drafts = () =>
    page.evaluate(
      () =>
        new Promise<string[]>((resolve, reject) => {
          const opening = indexedDB.open('wandcount');
          opening.onerror = () => reject(opening.error ?? new Error('There is no store of drafts.'));
          opening.onsuccess = () => {
            const reading = opening.result.transaction('drafts').objectStore('drafts').getAll();
            reading.onsuccess = () => {
              opening.result.close();
              resolve(reading.result.map((draft) => JSON.stringify(draft)));
            };
          };
        }),
    );
  const expectDrafts = (count: number) => expect.poll(drafts).toHaveLength(count);

  test('outlives the tab, and is offered on the next start', async () => {
    await press('Make the plant inventory');
    // It stands in the list, and then among the plants.
    await expect.poll(async () => (await drafts()).join().split('Winter Lantern').length).toBeGreaterThan(2);
    await page.close({ runBeforeUnload: false });
    ({ page, troubles } = await benches.open(context));
    const offer = page.locator('.notice', { hasText: 'was not saved' });
    await offer.waitFor();
    expect(await offer.innerText()).toMatch(/“untidy-list\.xlsx” from \d{1,2}:\d\d\s?[AP]M was not saved\./);
    await offer.getByRole('button', { name: 'Open it' }).click();
    await page.locator('#pane .step', { hasText: 'ready: 10 roses in 2 beds' }).waitFor();
    await expect.poll(unsaved).toBe(true);
    expect((await saved()).getWorksheet('Plants')?.getCell('A5').value).toBe('Winter Lantern');
    await expectDrafts(0);
    await page.close();
    ({ page, troubles } = await benches.open(context));
    expect(await page.locator('.notice').count()).toBe(0);
  });

  test('is not offered while the tab it belongs to is open', async () => {
    await press('Make the plant inventory');
    await expectDrafts(1);
    const second = await benches.open(context);
    expect(await second.page.locator('.notice').count()).toBe(0);
  });

  test('may be discarded', async () => {
    await press('Make the plant inventory');
    await expectDrafts(1);
    await page.close();
    ({ page } = await benches.open(context));
    await page.getByRole('button', { name: 'Discard' }).click();
    await expectDrafts(0);
    await page.close();
    ({ page } = await benches.open(context));
    expect(await page.locator('.notice').count()).toBe(0);
  });

  test('is asked about when the page is left, and offered back when another file is opened', async () => {
    await press('Make the plant inventory');
    await openList('other.csv', 'Bed,Rose\nNorth,Elsewhere\n');
    expect(await unsaved()).toBe(false);
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await page.locator('#file-name', { hasText: 'untidy-list.xlsx' }).waitFor();
    await expect.poll(unsaved).toBe(true);
    const asked = page.waitForEvent('dialog');
    const closing = page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.accept();
    await closing;
  });
});

test('a file that cannot be opened is refused above the work, and the workbook stays', async () => {
  await page.setInputFiles('#file', {
    name: 'roses.xlsx',
    mimeType: 'application/octet-stream',
    buffer: (await smallList()).subarray(0, 900),
  });
  const notice = page.getByRole('alert').filter({ hasText: 'roses.xlsx' });
  await notice.waitFor();
  expect(await notice.innerText()).toContain('“roses.xlsx” is cut off or damaged');
  expect(await page.locator('#file-name').innerText()).toBe('untidy-list.xlsx');
});

test('HTML in a file and in its name is text', async () => {
  const bad = '<img src=x onerror="document.title=1">';
  await page.setInputFiles('#file', {
    name: `${bad}.csv`,
    mimeType: 'text/csv',
    buffer: Buffer.from(`Bed,Rose,How many\nEast,${bad.replaceAll('"', '')},3\n`),
  });
  await page.locator('#file-name', { hasText: 'onerror' }).waitFor();
  await page.locator('#pane', { hasText: 'onerror' }).waitFor();
  expect(await page.locator('#pane img, .bar img, .notices img').count()).toBe(0);
  expect(troubles).toEqual([]);
});

test('files are saved through the file dialog where there is one, the next time without asking', async () => {
  await page.evaluate(() => {
    const log: unknown[] = [];
    Object.assign(window, {
      saves: log,
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) => {
        log.push(`asked for ${suggestedName}`);
        return {
          name: 'mine.xlsx',
          createWritable: async () => ({
            write: async (blob: Blob) => void log.push(blob.size > 1_000),
            close: async () => void log.push('closed'),
          }),
        };
      },
    });
  });
  await page.click('#save');
  await page.locator('#file-name', { hasText: 'mine.xlsx' }).waitFor();
  await press('Make the plant inventory');
  await page.keyboard.press('Control+s');
  await expect.poll(unsaved).toBe(false);
  expect(await page.evaluate(() => (window as unknown as { saves: unknown[] }).saves)).toEqual([
    'asked for untidy-list.xlsx',
    true,
    'closed',
    true,
    'closed',
  ]);
});

test('a new garden is an empty workbook', async () => {
  await page.click('#more');
  await page.keyboard.press('Enter');
  await page.locator('#file-name', { hasText: 'garden.xlsx' }).waitFor();
  expect((await saved()).worksheets.map(({ name }) => name)).toEqual(['Sheet1']);
});

test('printing without a card says where to make one', async () => {
  await page.click('#print');
  const notice = page.getByRole('alert').filter({ hasText: 'There is no card yet' });
  await notice.waitFor();
  expect(await page.locator('#print-view').count()).toBe(0);
});

test.each([
  ['light', 1280],
  ['dark', 1024],
  ['light', 360],
] as const)('nothing stands in the way of assistive programs, %s, %d px wide', async (colorScheme, width) => {
  await page.emulateMedia({ colorScheme });
  await page.setViewportSize({ width, height: 768 });
  await press('Make the plant inventory');
  await page.evaluate(readFileSync(join(root, 'node_modules/axe-core/axe.min.js'), 'utf8'));
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(where: Document): Promise<AxeResults> } };
    return (await axe.run(document)).violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html }) => `${id}: ${html}`),
    );
  });
  const own = (line: string): boolean => {
    const known = GRID_OWN[line.split(':')[0] ?? ''];
    return known !== undefined && known.test(line);
  };
  expect(found.filter((line) => !own(line))).toEqual([]);
});

describe('on a narrow page', () => {
  test('steps and sheets take turns, and nothing is wider than the page', async () => {
    await page.setViewportSize({ width: 360, height: 740 });
    expect(await page.locator('#pane').isVisible()).toBe(true);
    expect(await page.locator('#grid').isVisible()).toBe(false);
    await page.getByRole('tab', { name: 'Sheets' }).click();
    expect(await page.locator('#pane').isVisible()).toBe(false);
    expect(await page.locator('#grid').isVisible()).toBe(true);
    await page.keyboard.press('ArrowLeft');
    expect(await page.locator('#pane').isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});

test('the pane is made wider and narrower with the keyboard, and stays so', async () => {
  const width = async () => Math.round((await page.locator('#pane').boundingBox())!.width);
  const before = await width();
  await page.locator('#splitter').focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  expect(await width()).toBe(before + 48);
  await page.reload();
  await started(page);
  expect(await width()).toBe(before + 48);
});

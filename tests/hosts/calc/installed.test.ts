import { afterAll, beforeAll, expect, test } from 'vitest';

import { buildExtension, extension } from '../../../addin/build/calc/makeExtension.mjs';
import { sheetOf } from './cells';
import { paneOf, words } from './engine/engines';
import { sharedOffice, startOffice, type Office } from './office';

let office: Office;
beforeAll(async () => {
  await buildExtension();
  office = await startOffice({ extension: false });
});
afterAll(() => office?.end());

// In the very run of the office that installed it: the context that Python was loaded with is gone by then.
test('computes before the office is started anew', async () => {
  await office.ask({ do: 'install', path: extension });
  const sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  expect((await sheet.shows('=FEED.SECONDS(0.7;"gal";2.8;"gal/min")')).value).toBeCloseTo(15, 9);
});

test('shows its pane, and computes, in the run after the one that installed it', async () => {
  const later = await sharedOffice();
  try {
    const sheet = sheetOf(later, await later.ask<string>({ do: 'open_document' }));
    expect(words(await paneOf(later, sheet.doc))).toContain('Garden');
    expect((await sheet.shows('=FEED.SECONDS(0.7;"gal";2.8;"gal/min")')).value).toBeCloseTo(15, 9);
  } finally {
    await later.end();
  }
});

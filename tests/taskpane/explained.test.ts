import { expect, test } from 'vitest';

import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Workbook } from '../../addin/workbook/port';
import { call, type FeedCall, type RawArgument } from '../../functions';
import { explained } from '../../taskpane/explained';

const memory = memoryWorkbook({ sheets: { Try: [[1, 2]] } });
/** A1 shows an error. */
const workbook: Workbook = {
  outline: () => memory.outline(),
  apply: (change) => memory.apply(change),
  read: async (areas) => {
    const snapshot = await memory.read(areas);
    const blocks = snapshot.blocks.map(({ area }) => ({ area, cells: [[{ value: null, error: '#N/A' }]] }));
    return { ...snapshot, blocks };
  },
};

const made = (name: string, ...args: readonly RawArgument[]): FeedCall => ({
  name,
  args,
  outcome: call(name, args),
});

const at = { sheet: 'Try', row: 3, column: 3 };
const cell = { ...at, formula: '=FEED.SECONDS(A1,"gal",2.8,"gal/min")', shows: '#N/A', failed: true };
const PASSED_ON = 'A1 shows an error, and this formula uses it. Put that cell right first.';

const sentence = async (...given: Parameters<typeof explained>) => (await explained(...given)).sentence;

test('what a host knows comes before what a function says, and that before the cell that an error comes from', async () => {
  const refused = made('SECONDS', 1, 'gallon', 2.8, 'gal/min');
  const passedOn = made('SECONDS', { error: '#N/A' }, 'gal', 2.8, 'gal/min');
  expect(await sentence(workbook, cell, { calls: [passedOn, refused], why: 'Nobody answers.' })).toBe(
    'Nobody answers.',
  );
  expect(await sentence(workbook, cell, { calls: [passedOn, refused] })).toContain('"gallon"');
  expect(await sentence(workbook, cell, { calls: [passedOn] })).toBe(PASSED_ON);
  expect(await sentence(workbook, cell, { calls: [], instead: 'Not told.' })).toBe(PASSED_ON);
});

test('a cell with a value has no sentence, whatever a branch of it refused', async () => {
  const refused = made('SECONDS', 1, 'gallon', 2.8, 'gal/min');
  expect(
    await sentence(workbook, { ...cell, shows: '0', failed: false }, { calls: [refused] }),
  ).toBeUndefined();
});

test('the formula is shown as the user types it, the working told of the calls that have a value', async () => {
  const typed = '=FEED.SECONDS(0,7;"gal";2,8;"gal/min")';
  const calls = [made('SECONDS', 0.7, 'gal', 2.8, 'gal/min')];
  const told = await explained(workbook, { ...cell, typed, shows: '15', failed: false }, { calls });
  expect(told).toMatchObject({ ...at, formula: typed, shows: '15' });
  expect(told.working.join('\n')).toContain('0.7 gal ÷ 2.8 gal/min');
});

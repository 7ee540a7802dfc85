import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';

import { root } from '../../addin/build/paths.mjs';
import { CARD } from '../../addin/workbook/card/cardNames';
import { EARLIER_CARD } from '../../addin/workbook/card/readCard';
import { logAreas, readLog } from '../../addin/workbook/log/logRound';
import type { Workbook } from '../../addin/workbook/port';
import { areaNamed } from '../../addin/workbook/snapshot';
import { productUseTable } from '../../addin/workbook/log/logTables';
import { readTable } from '../../addin/workbook/tables/readTable';
import { createPane } from '../../taskpane/pane';
import { calculatingWorkbook } from '../taskpane/calculatingWorkbook';
import { drive, wordsOf } from '../taskpane/paneDriver';
import { savedBook } from './savedBook';

const FILE = join(root, 'tests/workbook/earlier/before-live-card/whole-garden.workbench.xlsx');
/** An amount in a measure that people own; a rate has a stroke behind its measure. */
const AMOUNT = /\d (?:cups?|tbsp|tsp|qt)\b(?!\/)/;

describe('a card that an earlier program made', () => {
  let workbook: Workbook;
  let pane: ReturnType<typeof createPane>;
  let user: ReturnType<typeof drive>;

  /** What stands on the card to be printed. */
  const printed = async (): Promise<string[]> => {
    const { blocks } = await workbook.read([areaNamed(await workbook.outline(), CARD)!]);
    return blocks[0]!.cells.flat().flatMap(({ value }) => (value === null ? [] : [String(value)]));
  };
  const labels = (): string[] =>
    pane
      .view()
      .section.blocks.flatMap((block) => (block.kind === 'actions' ? block.actions : []))
      .map(({ label }) => label);

  beforeAll(async () => {
    workbook = calculatingWorkbook(await savedBook(readFileSync(FILE)));
    pane = createPane(workbook, { today: () => '2026-06-07', measures: 'US', print: async () => undefined });
    user = drive(pane);
    await pane.dispatch({ kind: 'workbookChanged' });
  });

  test('is said to be one, and is not offered to be printed', async () => {
    expect((await printed()).filter((text) => AMOUNT.test(text)).length).toBeGreaterThan(4);
    await user.open('round');
    expect(wordsOf(pane.view())).toContain(`The card: ${EARLIER_CARD}`);
    expect(labels()).toEqual(['Make the card']);
  });

  test('loses its measures with the next action, and says so in their place', async () => {
    await user.open('garden');
    await user.type('Dose for one Large bush', '0.7');
    await user.press('Keep the doses');
    expect(user.says()).toMatch(/^Kept the doses/);
    const texts = await printed();
    expect(texts.filter((text) => AMOUNT.test(text))).toEqual([]);
    expect(texts).toContain('Round card: make it again');
    expect(texts).toContain('This card is out of date');
    expect(texts).toContain(EARLIER_CARD);
    await user.open('round');
    expect(labels()).toEqual(['Make the card']);
  });

  test('can still be logged, with the numbers that were fed by', async () => {
    await user.open('log');
    expect(wordsOf(pane.view())).toContain(EARLIER_CARD);
    expect(user.answer()).toBe('Logged: 3 May 2026, 2 fills, 43 gal made up');
    await user.press('Write the log line');
    const now = await workbook.read(logAreas(await workbook.outline()));
    const [last, first] = readLog(now).rounds;
    expect(last).toMatchObject({ fills: first!.fills, plants: first!.plants, mix: first!.mix });
    expect(last!.madeUp).toBeCloseTo(first!.madeUp, 6);
    const used = readTable(productUseTable, now).rows;
    const amounts = (round: number) =>
      used.filter((line) => line.round === round).map(({ product, amount, unit }) => [product, amount, unit]);
    expect(amounts(last!.round)).toHaveLength(2);
    expect(amounts(last!.round)).toEqual(amounts(first!.round));
  });

  test('made again, it may be printed', async () => {
    await user.open('round');
    await user.press('Make the card');
    expect(labels()).toContain('Print the card');
    expect((await printed()).filter((text) => AMOUNT.test(text)).length).toBeGreaterThan(4);
    expect(await printed()).not.toContain(EARLIER_CARD);
  });
});

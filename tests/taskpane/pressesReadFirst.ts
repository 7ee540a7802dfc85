import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import type { CellInput, Change } from '../../addin/workbook/change';
import type { Workbook } from '../../addin/workbook/port';
import { usedArea } from '../../addin/workbook/snapshot';
import { createPane, type Pane } from '../../taskpane/pane';
import type { HostUnderTest } from '../workbook/portContract/hostUnderTest';

import { drive } from './paneDriver';
import { UNTIDY } from './untidyList';

const LIST = 'Roses';

/** Where a cell with this text stands. */
const placeOf = (cells: readonly (readonly unknown[])[], text: string): [number, number] => {
  const row = cells.findIndex((line) => line.includes(text));
  if (row < 0) throw new Error(`No cell holds “${text}”.`);
  return [row, cells[row]!.indexOf(text)];
};

/**
 * What a press does in a workbook that was edited and whose host has not told of it, registered as tests: this pane is
 * never told of anything.
 *
 * @param open a fresh workbook whose user can insert rows
 */
export const pressesReadFirst = (name: string, open: () => Promise<HostUnderTest>): void => {
  describe(`on ${name}, a press reads first`, () => {
    let host: HostUnderTest;
    let pane: Pane;
    let user: ReturnType<typeof drive>;
    /** Done once, after a press has decided and before it writes. */
    let meanwhile: (() => Promise<void>) | undefined;

    const byHand = (sheet: string, row: number, column: number, input: CellInput): Promise<void> => {
      const change: Change = {
        title: 'By hand',
        edits: [{ kind: 'write', sheet, row, column, cells: [[input]] }],
      };
      return host.workbook.apply(change);
    };
    /** What stands on a sheet; a formula is told as one, as its text follows rows that move. */
    const entries = async (sheet: string) => {
      const { blocks } = await host.workbook.read((outline) => [usedArea(outline, sheet)!]);
      return blocks[0]!.cells.map((line) =>
        line.map(({ value, formula }) => (formula === undefined ? value : '=')),
      );
    };
    const doseCell = async (size: string): Promise<[number, number]> => {
      const [row, column] = placeOf(await entries('Doses'), size);
      return [row, column + 1];
    };
    const doseOf = async (size: string) => {
      const [row, column] = await doseCell(size);
      return (await entries('Doses'))[row]![column];
    };

    beforeEach(async () => {
      host = await open();
      meanwhile = undefined;
      await host.workbook.apply({
        title: 'The list',
        edits: [
          { kind: 'addSheet', sheet: LIST },
          { kind: 'write', sheet: LIST, row: 0, column: 0, cells: UNTIDY },
        ],
      });
      const workbook: Workbook = {
        ...host.workbook,
        apply: async (change, seen) => {
          const happens = meanwhile;
          meanwhile = undefined;
          await happens?.();
          await host.workbook.apply(change, seen);
        },
      };
      pane = createPane(workbook, { today: () => '2026-05-03', measures: 'US' });
      user = drive(pane);
      await pane.dispatch({ kind: 'workbookChanged' });
      await user.press('Make the plant inventory');
    });
    afterEach(async () => {
      pane.close();
      await host.close?.();
    });

    test.each([
      ['Doses', 'garden', 'Dose for one Bush', '0.5', 'Keep the doses', 'Bush', 1],
      ['Beds', 'garden', 'Station for Front', 'Q', 'Keep the walk', 'Front', 1],
      ['Rig', 'rig', 'The barrel holds', '55', 'Keep this rig', 'Barrel', 1],
    ] as const)(
      'rows inserted above on %s: all that is written lands in the right cells',
      async (sheet, section, field, typed, button, label, across) => {
        await user.open(section);
        if (section === 'rig') {
          await user.type('The barrel holds', '60');
          await user.type('Time 1', '46');
          await user.press(button);
        }
        await user.type(field, typed);
        const before = await entries(sheet);
        const [row, column] = placeOf(before, label);
        await host.user!.insertRows!(sheet, 0, 2);
        await user.press(button);
        expect(pane.view().message?.tone, user.says()).toBe('good');
        const wanted = before.map((line) => [...line]);
        wanted[row]![column + across] = typed === 'Q' ? typed : Number(typed);
        expect((await entries(sheet)).slice(2)).toEqual(wanted);
      },
    );

    test('an edit of another cell that arrives while an action writes is kept, and so is the action', async () => {
      await user.type('Dose for one Bush', '0.5');
      const [row, column] = await doseCell('Large bush');
      meanwhile = () => byHand('Doses', row, column, 0.9);
      await user.press('Keep the doses');
      expect(user.says()).toBe('Kept the doses.');
      expect([await doseOf('Bush'), await doseOf('Large bush')]).toEqual([0.5, 0.9]);
    });

    test('an edit of the very cell is not written over: the action says so and keeps what was typed', async () => {
      await user.type('Dose for one Bush', '0.5');
      const [row, column] = await doseCell('Bush');
      meanwhile = () => byHand('Doses', row, column, 0.8);
      await user.press('Keep the doses');
      expect(user.says()).toBe(
        'The workbook was edited at the same moment, so nothing was written. Try again.',
      );
      expect(await doseOf('Bush')).toBe(0.8);
      expect(user.field('Dose for one Bush').value).toBe('0.5');
      await user.press('Keep the doses');
      expect(await doseOf('Bush')).toBe(0.5);
    });

    test('rows inserted while an action writes move nothing of it into wrong cells', async () => {
      await user.type('Dose for one Bush', '0.5');
      const before = await entries('Doses');
      meanwhile = () => host.user!.insertRows!('Doses', 0, 1);
      await user.press('Keep the doses');
      if (pane.view().message?.tone === 'warning') await user.press('Keep the doses');
      const [row, column] = placeOf(before, 'Bush');
      before[row]![column + 1] = 0.5;
      expect((await entries('Doses')).slice(1)).toEqual(before);
    });

    test('a line typed below a table while an action adds one there stays, and both are kept', async () => {
      await user.open('mix');
      await user.type('Name', 'Seaweed');
      const height = (await host.workbook.outline()).sheets.find((sheet) => sheet.name === 'Products')!.rows;
      meanwhile = () => byHand('Products', height, 0, 'Iron chelate');
      await user.press('Keep this product');
      expect(user.says()).toBe('Added Seaweed to the products.');
      const products = (await entries('Products')).map(([first]) => first);
      expect(products.slice(-2)).toEqual(['Iron chelate', 'Seaweed']);
    });
  });
};

import { describe, expect, test } from 'vitest';

import type { Garden } from '../../addin/workbook/garden';
import type { PaneState } from '../../taskpane/state';
import { askMixLines, mixFault, rowsOf } from '../../taskpane/sections/mixRows';
import { whyNoMix } from '../../taskpane/sections/mix';
import { askRig, rigFault } from '../../taskpane/sections/rigFields';
import { askProduct, productFault } from '../../taskpane/sections/productFields';
import { askTanks, tanksToWrite } from '../../taskpane/sections/tankFields';

import { paneOn, readyGarden } from './gardens';
import { wordsOf } from './paneDriver';
import { actionsOf, blocksOf, headed, labelled, shown } from './shown';
import { UNTIDY } from './untidyList';

describe('a list that is being adopted shows', () => {
  const listOf = (lines: readonly (readonly unknown[])[]): Partial<PaneState> => {
    const cells = lines.map((line) => line.map((cell) => cell as string | number | null));
    return {
      list: { sheet: 'List', cells: { cells, merges: [] } },
      ownSheets: [{ name: 'List', rows: lines.length, active: true }],
    };
  };
  const unmade: Partial<Garden> = { has: { ...readyGarden.has, plants: false } };
  const list = listOf([...UNTIDY, ['Old Lantern', 'Terrace', '??', '', 1]]);
  const blocks = () => blocksOf('garden', unmade, list);

  test('how many roses were read, and of what size', () => {
    expect(shown('garden', unmade, list).section.answer).toBe(
      '349 roses in 3 beds, read from 6 of 10 rows; 1 row could not be read',
    );
    // Hybrid teas 40 + 60 + 60.
    expect(headed(blocks(), 'adopt.found')).toEqual([
      ['Size', 'Plants'],
      ['Large bush', '160'],
      ['Bush', '100'],
      ['Potted miniature', '88'],
      ['Not known', '1'],
    ]);
  });

  test('where its headings stand and what each column holds', () => {
    expect(labelled(blocks())['The headings stand in']).toBe('2');
    const headings = blocks().flatMap((block) => (block.kind === 'fields' ? [...block.fields] : []))[1];
    const rows = headings?.kind === 'choice' ? headings.choices.map(({ label }) => label) : [];
    expect(rows).toHaveLength(11);
    expect([rows[0], rows[1], rows[3], rows[4], rows[10]]).toEqual([
      'Row 1: Roses at the Mill House',
      'Row 2: blank',
      'Row 4: Amber Kettle, Front, HT, 40',
      'Row 5: Quiet Harbour, Front, hybrid tea…',
      'The list has no headings',
    ]);
    expect(headed(blocks(), 'adopt.columns')).toEqual([
      ['Column', 'Holds', 'For example'],
      ['Variety', 'plant', 'Amber Kettle, Quiet Harbour, Plum Lantern, Grey Sparrow'],
      ['Bed', 'bed', 'Front, Long border, Terrace'],
      ['Type', 'class', 'HT, hybrid teas, Flori., H.T.'],
      ['Pot?', 'pot', 'pot, in pot'],
      ['Qty', 'count', '40, 60, 100, 88'],
    ]);
  });

  test('what it asks, what it could not read, and how it understood the words', () => {
    expect(headed(blocks(), 'adopt.sizes')).toEqual([
      ['The list says', 'Plants', 'Size'],
      ['class “??”', '1', ''],
    ]);
    expect(blocks()).toContainEqual({
      kind: 'text',
      text: '1 rose has no size yet: choose it above, or give it on the sheet afterwards.',
    });
    expect(headed(blocks(), 'adopt.unread.rows')).toEqual([
      ['Row', 'Why', 'It holds'],
      ['9', '“a dozen or so?” is not a number of plants', 'Little Ferry | Terrace | miniature | in…'],
    ]);
    expect(headed(blocks(), 'adopt.readings')).toEqual([
      ['The list says', 'Taken as', 'Rows'],
      ['HT, hybrid teas, H.T.', 'Hybrid tea', '3'],
      ['Flori.', 'Floribunda', '1'],
      ['mini', 'Miniature', '1'],
      ['pot', 'in a pot', '1'],
    ]);
    expect(actionsOf(blocks())).toEqual([
      { id: 'garden.adopt', label: 'Make the plant inventory', primary: true },
      { id: 'garden.new', label: 'Begin an empty garden' },
    ]);
    const clear = blocksOf('garden', unmade, listOf(UNTIDY));
    expect(JSON.stringify(clear)).not.toMatch(/no size yet|Which size/);
  });

  test('a list without headings by its letters, with what was guessed to be checked', () => {
    const bare = blocksOf(
      'garden',
      unmade,
      listOf([
        ['a', 'b'],
        ['c', 'd'],
      ]),
    );
    expect(headed(bare, 'adopt.columns').map(([column]) => column)).toEqual([
      'Column',
      'Column A',
      'Column B',
    ]);
    expect(labelled(bare)['The headings stand in']).toBe('none');
    expect(bare).toContainEqual({
      kind: 'steps',
      items: [
        'No column says how many: each row counts as one plant, and repeated rows are added up.',
        'The list names no beds: all roses are put in one, “Garden”.',
      ],
    });
  });
});

describe('it cannot be kept', () => {
  const at = (garden: Partial<Garden> = {}, typed: Record<string, string> = {}) => {
    const now = { ...readyGarden, ...garden };
    return { now, state: paneOn('mix', now, { typed }) };
  };
  const mixed = (garden: Partial<Garden>, typed: Record<string, string> = {}) => {
    const { now, state } = at(garden, typed);
    return [mixFault(askMixLines(state, now)), whyNoMix(state)];
  };

  test('a mix with a product twice or without its rate, or an empty one that takes no other’s place', () => {
    expect(mixed({})).toEqual([undefined, undefined]);
    expect(mixed({}, { 'mix.product.1': 'Soluble powder 20-20-20', 'mix.rate.1': '1' })[0]).toBe(
      '“Soluble powder 20-20-20” stands twice in the mix; use one rate a product.',
    );
    expect(mixed({}, { 'mix.product.1': 'Seaweed' })[0]).toContain('Rate of product 2: nothing was given');
    expect(mixed({ mix: [] }, { 'mix.product.1': '' })).toEqual([
      undefined,
      'Choose a product that goes into the barrel first, and its rate.',
    ]);
    expect(mixed({ mix: [] }, { 'mix.rate.1': '1' })).toEqual([undefined, undefined]);
    expect(mixed({}, { 'mix.product."soluble powder 20-20-20"': '' })).toEqual([undefined, undefined]);
    expect(mixed({ mix: [], products: [] })[1]).toBe(
      'A mix is made of products: add your first product under Mix.',
    );
  });

  test('a rig with times and no bucket, or without a flow, or that no round can be planned with', () => {
    const without = { ...readyGarden.rig, flow: { unit: 'gal/min' }, bucket: { unit: 'gal' } };
    const fault = (garden: Partial<Garden>, typed: Record<string, string> = {}) => {
      const { now, state } = at(garden, typed);
      return rigFault(askRig(state, now));
    };
    expect(fault({})).toBeUndefined();
    expect(fault({ rig: without })).toBe(
      'The flow at the wand is not known: time a bucket, or write the flow.',
    );
    expect(fault({ rig: without, timedBuckets: [24, 25, 24] })).toBe(
      'The bucket holds: nothing was given; use the volume that each time filled.',
    );
    expect(fault({}, { 'rig.heel': '60' })).toBe(
      'Heel: 60 gal was given; use less than the 60 gal that the barrel holds at its fill line.',
    );
  });

  test('a product without a name, or with that of another', () => {
    const fault = (typed: Record<string, string>) => {
      const { now, state } = at({}, typed);
      return productFault(now, askProduct(state, now));
    };
    expect(fault({ 'product.new.name': 'Kelp' })).toBeUndefined();
    expect(fault({})).toContain('Name: nothing was given');
    expect(fault({ 'product.new.name': ' SEAWEED ' })).toContain('is the name of another product');
    expect(fault({ 'product.pick': '"seaweed"' })).toBeUndefined();
  });
});

test('what is kept is what was asked: limits of the what-if sheet in its units, and lines of the mix in their rows', () => {
  const written = (typed: Record<string, string>) =>
    tanksToWrite(readyGarden, askTanks(paneOn('tanks', readyGarden, { typed }), readyGarden));
  expect(written({})).toEqual({ barrels: [30, 45, 60, 100], limits: {} });
  const limits = { 'tanks.mostFills': '3', 'tanks.mostWeight': '500', 'tanks.longest': '90' };
  expect(written(limits).limits).toEqual({ fills: 3, weight: 500, minutes: 90 });
  const seaweed = { row: 7, product: 'Seaweed', rate: { value: 0.5, unit: 'fl oz/gal' } };
  const garden = { ...readyGarden, mix: [readyGarden.mix[0]!, seaweed] };
  expect(rowsOf(askMixLines(paneOn('mix', garden), garden))).toEqual(garden.mix);
});

describe('the ways on', () => {
  test('a size whose plants are gone needs no dose; one with plants does', () => {
    const blank = [readyGarden.doses[0]!, { row: 6, sizeClass: 'Potted miniature' }];
    const gone = [readyGarden.plants[0]!, { ...readyGarden.plants[1]!, howMany: 0 }];
    const garden = (more: Partial<Garden>) =>
      shown('garden', more).steps.find(({ id }) => id === 'garden')?.state;
    expect(garden({ doses: blank })).toEqual({
      kind: 'attention',
      why: 'no dose is given for Potted miniature',
    });
    expect(garden({ doses: blank, plants: gone })).toMatchObject({ kind: 'ready' });
  });

  test('four cells that could not be read are told, and no more counted', () => {
    const problems = Array.from({ length: 4 }, (_, row) => ({
      place: 'garden' as const,
      sheet: 'Plants',
      row,
      sentence: `Plants, row ${row + 1}: “lots” was given.`,
    }));
    expect(wordsOf(shown('garden', { problems })).join(' ')).not.toContain('more cell');
  });

  test('a rig of which nothing is known says what to do first', () => {
    const rig = { ...readyGarden.rig, barrel: { unit: 'gal' }, flow: { unit: 'gal/min' } };
    const view = shown('rig', { rig });
    expect(view.section.answer).toBe('Time a bucket at the wand and say how big the barrel is.');
    expect(view.steps.find(({ id }) => id === 'rig')?.state).toEqual({ kind: 'empty' });
    expect(labelled(blocksOf('rig'))).toMatchObject({ 'Time 1': '', 'Time 2': '', 'Time 3': '' });
  });

  test('this cell tells what a formula uses, how it works, or that it uses nothing', () => {
    const cell = { sheet: 'Rig', row: 3, column: 1, formula: '=1+1', shows: '2', cells: [], working: [] };
    const told = (more: object) => {
      const fold = shown('rig', {}, { cell: { ...cell, ...more } }).section.blocks.at(-1);
      if (fold?.kind !== 'more') throw new Error('There is no fold.');
      const texts = fold.blocks.flatMap((block) =>
        block.kind === 'text' ? [block.text] : block.kind === 'steps' ? [...block.items] : [],
      );
      return [fold.label, fold.open, ...texts.slice(1)];
    };
    expect(told({})).toEqual(['This cell: Rig, B4 shows 2', false, 'This formula uses no other cell.']);
    expect(told({ shows: '', cells: ['A1: 5'] })).toEqual([
      'This cell: Rig, B4 shows nothing',
      false,
      'It uses:',
      'A1: 5',
    ]);
    expect(told({ working: ['1 + 1 = 2'] })).toEqual(['This cell: Rig, B4 shows 2', false, '1 + 1 = 2']);
    expect(told({ sentence: 'dose: -1 was given; use more than 0.' })).toEqual([
      'This cell: Rig, B4 shows 2',
      true,
      'dose: -1 was given; use more than 0.',
    ]);
  });
});

import { expect } from 'vitest';

import type { Garden } from '../../addin/workbook/garden';
import type { PaneState } from '../../taskpane/state';
import type { Button, Block, Table } from '../../taskpane/view';
import { viewOf } from '../../taskpane/way';

import { paneOn, readyGarden } from './gardens';

/** What a section shows of the ready garden, changed so. */
export const shown = (
  section: PaneState['section'],
  garden: Partial<Garden> = {},
  more: Partial<PaneState> = {},
) => viewOf(paneOn(section, { ...readyGarden, ...garden }, more));

const inside = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => [block, ...(block.kind === 'more' ? inside(block.blocks) : [])]);
/** Its blocks, those under folds too. */
export const blocksOf = (...given: Parameters<typeof shown>) => inside(shown(...given).section.blocks);

export const tableOf = (blocks: readonly Block[], id: string): Table => {
  const found = blocks.flatMap((block) =>
    block.kind === 'table' && block.table.id === id ? [block.table] : [],
  );
  expect(found, id).toHaveLength(1);
  return found[0]!;
};
/** A table's labels and rows as texts. */
export const headed = (blocks: readonly Block[], id: string) => {
  const { columns, rows } = tableOf(blocks, id);
  return [
    columns.map(({ label }) => label),
    ...rows.map((row) => row.map((cell) => (typeof cell === 'string' ? cell : cell.value))),
  ];
};
export const actionsOf = (blocks: readonly Block[]): Button[] =>
  blocks.flatMap((block) => (block.kind === 'actions' ? [...block.actions] : []));
/** What stands in the fields, by their labels. */
export const labelled = (blocks: readonly Block[]): Record<string, string> =>
  Object.fromEntries(
    blocks
      .flatMap((block) => (block.kind === 'fields' ? [...block.fields] : []))
      .map(({ label, value }) => [label, value]),
  );

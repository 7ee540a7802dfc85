import { describe, expect, test } from 'vitest';

import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { createPane } from '../../taskpane/pane';
import { readLook, type PaneLook } from '../../taskpane/paneLook';
import type { HostServices } from '../../taskpane/services';

import { drive } from './paneDriver';
import { UNTIDY } from './untidyList';

const services: HostServices = { today: () => '2026-05-03', measures: 'US' };
const garden = async () => {
  const memory = memoryWorkbook({ sheets: { List: UNTIDY } });
  const pane = createPane(memory, services);
  await pane.dispatch({ kind: 'workbookChanged' });
  await drive(pane).press('Make the plant inventory');
  pane.close();
  return memory;
};
const isOpen = (pane: ReturnType<typeof createPane>, id: string): boolean | undefined =>
  pane
    .view()
    .section.blocks.flatMap((block) => (block.kind === 'more' && block.id === id ? [block.open] : []))[0];

describe('how the pane stands', () => {
  test('is kept when the user goes elsewhere, opens or closes a fold, and at no other time', async () => {
    const kept: PaneLook[] = [];
    const pane = createPane(await garden(), { ...services, keepLook: (look) => kept.push(look) });
    await pane.dispatch({ kind: 'workbookChanged' });
    await pane.dispatch({ kind: 'type', field: 'rig.capacity', value: '60' });
    expect(kept).toEqual([]);
    await pane.dispatch({ kind: 'fold', block: 'cell', open: true });
    await pane.dispatch({ kind: 'open', section: 'rig' });
    await pane.dispatch({ kind: 'open', section: 'rig' });
    await pane.dispatch({ kind: 'fold', block: 'cell', open: false });
    expect(kept).toEqual([
      { folds: { cell: true } },
      { section: 'rig', folds: { cell: true } },
      { section: 'rig', folds: { cell: false } },
    ]);
  });

  test('comes back as it was kept', async () => {
    const keptLook: PaneLook = { section: 'garden', folds: { 'rig.more': true } };
    const pane = createPane(await garden(), { ...services, keptLook });
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(pane.view().section.id).toBe('garden');
    await pane.dispatch({ kind: 'open', section: 'rig' });
    expect(isOpen(pane, 'rig.more')).toBe(true);
  });

  test.each([undefined, null, 'spoilt', 7, [], { section: 'shed', folds: 3 }, { folds: { cell: 'open' } }])(
    'kept as %o is taken for nothing: the pane begins where something is missing',
    async (keptLook) => {
      expect(readLook(keptLook).folds).toEqual({});
      const pane = createPane(await garden(), { ...services, keptLook });
      await pane.dispatch({ kind: 'workbookChanged' });
      expect(pane.view().section.id).toBe('rig');
      expect(isOpen(pane, 'rig.more')).toBe(false);
    },
  );
});

import { cellAddress } from '../../addin/workbook/address';
import type { PaneState } from '../state';
import type { Block } from '../view';

import { fold } from './fold';

/** Why the selected cell shows what it shows, at the foot of every section. */
export const thisCell = (state: PaneState): Block => {
  const { cell } = state;
  if (cell === undefined) {
    const text = 'Select a cell with a formula to see how it was worked out, or why it shows an error.';
    return fold(state, 'cell', 'This cell', [{ kind: 'text', text, tone: 'quiet' }]);
  }
  const { sheet, row, column, formula, shows, sentence, cells, working } = cell;
  const blocks: Block[] = [
    { kind: 'text', text: formula, tone: 'quiet' },
    ...(sentence === undefined ? [] : [{ kind: 'text', text: sentence, tone: 'warning' } as const]),
    ...(cells.length === 0
      ? []
      : [{ kind: 'text', text: 'It uses:' } as const, { kind: 'steps', items: cells } as const]),
    ...(working.length === 0 ? [] : [{ kind: 'steps', items: working } as const]),
    ...(sentence === undefined && cells.length + working.length === 0
      ? [{ kind: 'text', text: 'This formula uses no other cell.', tone: 'quiet' } as const]
      : []),
  ];
  const where = `${sheet}, ${cellAddress(row, column)}`;
  return fold(
    state,
    'cell',
    `This cell: ${where} shows ${shows === '' ? 'nothing' : shows}`,
    blocks,
    sentence !== undefined,
  );
};

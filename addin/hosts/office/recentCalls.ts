import type { FeedCall } from '../../../functions';
import { areaOfReference } from '../../workbook/references';

/** What cells asked of the functions lately, so that the pane can tell how a cell was worked out. */
export interface RecentCalls {
  /** @param address the cell as the program spells it: "'Round card'!B3" */
  note(address: string | undefined, call: FeedCall): void;
  /** The calls of a cell's last calculation, oldest first. */
  of(address: string): readonly FeedCall[];
}

/** Cells that are remembered, and calls of one cell. */
const MOST_CELLS = 2_000;
const MOST_CALLS = 20;
/** Calls further apart than this belong to two calculations, ms. */
const ONE_CALCULATION = 250;

const keyOf = (address: string): string => {
  const area = areaOfReference(address);
  return area ? JSON.stringify([area.sheet, area.row, area.column]) : address;
};

export const recentCalls = (now: () => number = () => performance.now()): RecentCalls => {
  const cells = new Map<string, { last: number; calls: FeedCall[] }>();
  return {
    note: (address, call) => {
      if (address === undefined) return;
      const key = keyOf(address);
      const at = now();
      const known = cells.get(key);
      const calls = known && at - known.last <= ONE_CALCULATION ? known.calls : [];
      cells.delete(key);
      cells.set(key, { last: at, calls: [...calls, call].slice(-MOST_CALLS) });
      const [oldest] = cells.keys();
      if (cells.size > MOST_CELLS && oldest !== undefined) cells.delete(oldest);
    },
    of: (address) => cells.get(keyOf(address))?.calls ?? [],
  };
};

import type { Garden } from '../../addin/workbook/garden';
import { WorkbookError, type Snapshot } from '../../addin/workbook/port';
import { UNREAD } from '../offer';
import type { PaneState } from '../state';

/**
 * What the workbook held when it was last read.
 *
 * @throws WorkbookError before it was read
 */
export const bookOf = ({ garden, snapshot }: PaneState): { garden: Garden; snapshot: Snapshot } => {
  if (garden === undefined || snapshot === undefined) throw new WorkbookError(UNREAD);
  return { garden, snapshot };
};

import { columnNumber } from './address';
import type { Area } from './change';

const REFERENCE =
  /^=?(?:\[[^\]]*\])?('(?:[^']|'')+'|[^'!]+)!\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i;

/** The area that a reference such as 'Round card'!$A$2:$C$9 names, or undefined where it names something else. */
export const areaOfReference = (reference: string): Area | undefined => {
  const found = REFERENCE.exec(reference.trim());
  if (!found) return undefined;
  const [, quoted = '', left = '', top = '', right = left, bottom = top] = found;
  const sheet = quoted.startsWith("'") ? quoted.slice(1, -1).replaceAll("''", "'") : quoted;
  const rows = [Number(top) - 1, Number(bottom) - 1].sort((a, b) => a - b) as [number, number];
  const columns = [columnNumber(left), columnNumber(right)].sort((a, b) => a - b) as [number, number];
  return {
    sheet,
    row: rows[0],
    column: columns[0],
    rows: rows[1] - rows[0] + 1,
    columns: columns[1] - columns[0] + 1,
  };
};

import { columnNumber } from '../../../workbook/address';
import type { Area } from '../../../workbook/change';
import { areaOfReference } from '../../../workbook/references';

const BARE = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i;

const bareArea = (text: string, sheet: string): Area | undefined => {
  const found = BARE.exec(text);
  if (!found) return undefined;
  const [, left = '', top = '', right = left, bottom = top] = found;
  const [row, column] = [Number(top) - 1, columnNumber(left)];
  return { sheet, row, column, rows: Number(bottom) - row, columns: columnNumber(right) - column + 1 };
};

/** The areas that a file writes as one text: "A1:B9", "A1 C3:C9", "Beds!$A$2". */
export const fileAreas = (text: string, sheet: string): Area[] =>
  text
    .split(/[\s,;]+(?=(?:[^']*'[^']*')*[^']*$)/)
    .map((part) => bareArea(part, sheet) ?? areaOfReference(part))
    .filter((area): area is Area => area !== undefined);

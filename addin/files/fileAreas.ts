import type { Area } from '../workbook/change';
import { areaOfReference } from '../workbook/references';

/** The areas that a file writes as one text: "A1:B9", "A1 C3:C9", "Beds!$A$2". */
export const fileAreas = (text: string, sheet: string): Area[] =>
  text
    .split(/[\s,;]+(?=(?:[^']*'[^']*')*[^']*$)/)
    .map((part) => areaOfReference(part, sheet))
    .filter((area): area is Area => area !== undefined);

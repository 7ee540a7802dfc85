import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { step, type Step } from './step';

type Freeze = Extract<Edit, { kind: 'freeze' }>;

/** Keeps the first rows and columns in sight. */
export const setFreeze = ({ sheet: name, rows, columns }: Freeze): Step =>
  step(4, (at: BookAt) => {
    const sheet = at.sheet(name);
    const { freezePanes } = sheet;
    freezePanes.unfreeze();
    if (rows > 0 && columns > 0) freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
    else if (rows > 0) freezePanes.freezeRows(rows);
    else if (columns > 0) freezePanes.freezeColumns(columns);
  });

import type { Holds } from '../addin/workbook/fields/holds';
import { inRange, type NumberRange } from '../addin/workbook/fields/range';
import { unitChoices } from '../addin/workbook/fields/usualUnits';

const trialNumber = (range: NumberRange): number =>
  inRange(7, range) ? 7 : ((range.least ?? range.above ?? 0) + (range.most ?? 14)) / 2;

/** A value that a field may hold, whatever it declares, and that no new garden begins with. */
export const trialOf = (holds: Holds): unknown => {
  switch (holds.kind) {
    case 'measure':
      return { value: 7, unit: unitChoices('US', holds.of).at(-1) };
    case 'number':
      return trialNumber(holds.range);
    case 'choice':
      return holds.choices.at(-1);
    case 'yesNo':
      return true;
    case 'unit':
      return 'L';
    case 'text':
      return 'Zinnia';
  }
};

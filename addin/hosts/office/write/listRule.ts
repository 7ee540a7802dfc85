import { fixedReference } from '../../../workbook/address';
import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { step, type Step } from './step';

type List = Extract<Edit, { kind: 'list' }>;

/** Longest sentence that the program shows when an entry is refused, characters. */
const LONGEST_MESSAGE = 225;

const shortened = (message: string): string =>
  message.length > LONGEST_MESSAGE ? `${message.slice(0, LONGEST_MESSAGE - 1)}…` : message;

/** Offers the allowed entries in each cell and refuses others with the sentence. */
export const setListRule = ({ area, source, message }: List): Step =>
  step(5, (at: BookAt) => {
    const { dataValidation } = at.range(area);
    dataValidation.clear();
    dataValidation.rule = {
      list: {
        inCellDropDown: true,
        source: 'sheet' in source ? `=${fixedReference(source)}` : source.join(','),
      },
    };
    dataValidation.ignoreBlanks = true;
    dataValidation.errorAlert = {
      showAlert: true,
      style: 'Stop',
      title: 'Not on the list',
      message: shortened(message),
    };
  });

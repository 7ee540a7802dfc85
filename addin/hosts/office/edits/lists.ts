import { fixedReference } from '../../../workbook/address';
import { only, type Edit } from '../../../workbook/change';

import { keepAspect, type Aspect } from './aspect';
import { byPiece, given, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

/** Longest sentence that the program shows when an entry is refused, characters. */
const LONGEST_MESSAGE = 225;

const shortened = (message: string): string =>
  message.length > LONGEST_MESSAGE ? `${message.slice(0, LONGEST_MESSAGE - 1)}…` : message;

/** Offers the allowed entries in each cell and refuses others with the sentence. */
const setListRule = ({ area, source, message }: Extract<Edit, { kind: 'list' }>): Piece =>
  piece(5, (at) => {
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

const UNLIKE: readonly string[] = ['Inconsistent', 'MixedCriteria'];

/** Rules of any kind for what may be typed. */
const rules: Aspect = {
  load: ({ dataValidation }) => {
    dataValidation.load('type,rule,ignoreBlanks,errorAlert,prompt');
  },
  putBack: ({ dataValidation }, area) => {
    const { type, rule, ignoreBlanks, errorAlert, prompt } = dataValidation;
    if (UNLIKE.includes(type)) return undefined;
    return piece(6, (at) => {
      const now = at.range(area).dataValidation;
      now.clear();
      if (type === 'None') return;
      now.rule = given(rule);
      now.ignoreBlanks = ignoreBlanks;
      now.errorAlert = given(errorAlert);
      now.prompt = given(prompt);
    });
  },
};

/** Lists of choices. */
export const prepareLists: Prepare = async ({ at, edits, over }) => {
  const areas = only(over, 'list').map(({ area }) => area);
  const before = await keepAspect(at, rules, areas);
  return { pieces: only(edits, 'list').map(setListRule), putBack: before.map(byPiece) };
};

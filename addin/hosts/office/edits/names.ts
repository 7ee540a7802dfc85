import { only } from '../../../workbook/change';
import { fixedReference } from '../../../workbook/address';

import { byPiece, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

/** Workbook names of areas; a name that is there stands for the new area. Capitals do not tell names apart. */
export const prepareNames: Prepare = async ({ book: { nameFormulas: before }, edits }) => {
  const known = new Set(before.keys());
  const named = only(edits, 'name');
  const pieces = named.map(({ name, area }): Piece => {
    const isKnown = known.has(name.toLowerCase());
    known.add(name.toLowerCase());
    return piece(2, (at) => {
      const { names } = at.context.workbook;
      if (isKnown) names.getItem(name).formula = `=${fixedReference(area)}`;
      else names.add(name, at.range(area));
    });
  });
  const putBack = [...new Set(named.map(({ name }) => name))].map((name) => {
    const formula = before.get(name.toLowerCase());
    return piece(2, ({ context }) => {
      const item = context.workbook.names.getItem(name);
      if (formula === undefined) item.delete();
      else item.formula = formula;
    });
  });
  return { pieces, putBack: putBack.map(byPiece) };
};

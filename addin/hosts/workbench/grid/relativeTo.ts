import { columnLetters } from '../../../workbook/address';
import { respelled } from '../../../workbook/formula/tokens';
import { referenceOf, type Corner } from '../../../workbook/references';

const relative = (cells: string, row: number): string => {
  const { prefix, first, last } = referenceOf(cells)!;
  const told = (corner: Corner): string =>
    `${corner.fixedColumn ? '$' : ''}${columnLetters(corner.column)}${corner.fixedRow ? `$${corner.row + 1}` : `[${corner.row - row}]`}`;
  return prefix + told(first) + (last ? `:${told(last)}` : '');
};

/**
 * A formula with its references told from its own row, the same for all rows of a formula that is copied down;
 * undefined where that cannot be told.
 *
 * @example relativeTo(4, '=$B5*Doses!$B$2') // '=$B[0]*Doses!$B$2'
 */
export const relativeTo = (row: number, formula: string): string | undefined => {
  let others = false;
  const told = respelled(formula, ({ kind, text }) => {
    // Rows as a whole move with a formula too, and parts of tables and arrays go by other rules.
    others ||= kind === 'rows' || kind === 'other' || text === '{';
    return kind === 'cells' ? relative(text, row) : text;
  });
  return others ? undefined : told;
};

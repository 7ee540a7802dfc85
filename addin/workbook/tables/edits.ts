import type { CellInput, Edit } from '../change';

/**
 * Edits gathered while sheets are laid out, and put in an order that every host can follow: sheets before what
 * stands on them, values before the formulas that read them, what some hosts keep out of their undo last.
 */
export interface Draft {
  readonly sheets: Edit[];
  readonly names: Edit[];
  readonly values: Edit[];
  readonly looks: Edit[];
  readonly formulas: Edit[];
  readonly last: Edit[];
}

export const emptyDraft = (): Draft => ({
  sheets: [],
  names: [],
  values: [],
  looks: [],
  formulas: [],
  last: [],
});

export const editsOf = ({ sheets, names, values, looks, formulas, last }: Draft): Edit[] => [
  ...sheets,
  ...looks,
  ...values,
  ...names,
  ...formulas,
  ...last,
];

export const write = (
  sheet: string,
  row: number,
  column: number,
  cells: readonly (readonly CellInput[])[],
): Edit => ({
  kind: 'write',
  sheet,
  row,
  column,
  cells,
});

/** Cells of one column, written in as few pieces as possible: rows that follow each other go together. */
export const writeColumn = (
  sheet: string,
  column: number,
  cells: readonly (readonly [row: number, input: CellInput])[],
): Edit[] => {
  const pieces: { row: number; cells: CellInput[][] }[] = [];
  for (const [row, input] of [...cells].sort(([a], [b]) => a - b)) {
    const piece = pieces.at(-1);
    if (piece && piece.row + piece.cells.length === row) piece.cells.push([input]);
    else pieces.push({ row, cells: [[input]] });
  }
  return pieces.map((piece) => write(sheet, piece.row, column, piece.cells));
};

import type { Edit } from '../../workbook/change';
import { callsFeed } from '../../workbook/formula/feedSpelling';
import type { Block, Workbook } from '../../workbook/port';
import { usedArea } from '../../workbook/snapshot';

type Write = Extract<Edit, { kind: 'write' }>;

const unknownIn = ({ area, cells }: Block): Write[] => {
  const writes: Write[] = [];
  for (let across = 0; across < area.columns; across += 1) {
    let run: { formula: string }[][] = [];
    for (const [down, line] of cells.entries()) {
      const { formula, error } = line[across]!;
      if (formula === undefined || error !== '#NAME?' || !callsFeed(formula)) {
        run = [];
        continue;
      }
      if (run.length === 0)
        writes.push({
          kind: 'write',
          sheet: area.sheet,
          row: area.row + down,
          column: area.column + across,
          cells: run,
        });
      run.push([{ formula }]);
    }
  }
  return writes;
};

/**
 * Writes FEED formulas anew that show #NAME?: they were put in or calculated while the functions were not there, and
 * the program does not try again by itself.
 *
 * @returns how many
 */
export const repairFormulas = async (workbook: Workbook): Promise<number> => {
  const seen = await workbook.read((outline) =>
    outline.sheets.flatMap(({ name }) => usedArea(outline, name) ?? []),
  );
  const edits = seen.blocks.flatMap(unknownIn);
  if (edits.length > 0) await workbook.apply({ title: 'Repair formulas', edits }, seen);
  return edits.reduce((sum, { cells }) => sum + cells.length, 0);
};

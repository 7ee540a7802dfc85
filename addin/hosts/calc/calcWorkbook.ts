import type { Area, Change } from '../../workbook/change';
import { refuseLocked, touchedBy, type Locks } from '../../workbook/locks';
import { moveFormulaDown } from '../../workbook/memory/shift';
import type { Block, CellState, Outline, Workbook } from '../../workbook/port';
import { inUse } from '../../workbook/snapshot';
import { validateAreas, validateChange } from '../../workbook/validateChange';
import { orFailedAt } from './componentRefused';
import { errorOfCode } from './errorCodes';
import { plannedWrites, wireArea } from './plannedWrites';
import type { Corner } from './wire/parts';
import type { Ask, WireCells, WireOutline } from './wire/requests';

type CellFormula = WireCells['formulas'][number];

const areaOf = (sheet: string, [row, column, rows, columns]: Corner): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

const outlineOf = (wire: WireOutline): Outline => ({
  sheets: wire.sheets.map((sheet) => ({
    ...sheet,
    merges: sheet.merges.map((merge) => areaOf(sheet.name, merge)),
  })),
  names: Object.fromEntries(
    Object.entries(wire.names).map(([name, [sheet, ...corner]]) => [name, areaOf(sheet, corner)]),
  ),
  active: wire.active,
});

const EMPTY: CellState = { value: null };

/** True where copying a formula down as a text gives what copying gave in Calc, which knows more references. */
const understood = ({ copied }: WireCells): boolean =>
  copied.every(([, , rows, first, last]) => moveFormulaDown(first, rows - 1) === last);

const formulasOf = ({ formulas, copied }: WireCells): readonly CellFormula[] => [
  ...formulas,
  ...copied.flatMap(([row, column, rows, first]) =>
    Array.from({ length: rows }, (_, below): CellFormula => [
      row + below,
      column,
      moveFormulaDown(first, below),
    ]),
  ),
];

const cellStates = (area: Area, wire: WireCells): CellState[][] => {
  const states: CellState[][] = wire.values.map((line) =>
    line.map((value) => ({ value: value === '' ? null : value })),
  );
  const at = (row: number, column: number): CellState => states[row - area.row]![column - area.column]!;
  const set = (row: number, column: number, state: CellState): void => {
    states[row - area.row]![column - area.column] = state;
  };
  for (const [row, column, rows, columns] of wire.truths)
    for (let r = row; r < row + rows; r += 1)
      for (let c = column; c < column + columns; c += 1) {
        const { value } = at(r, c);
        if (value === 0 || value === 1) set(r, c, { value: value === 1 });
      }
  for (const [row, column, formula] of formulasOf(wire)) {
    const { value } = at(row, column);
    // How Calc keeps a truth value of an .xlsx.
    if (/^=(TRUE|FALSE)\(\)$/.test(formula)) continue;
    // A formula whose answer is empty text is no empty cell.
    set(row, column, { value: value ?? '', formula });
  }
  for (const [row, column, code] of wire.errors)
    set(row, column, { ...at(row, column), value: null, error: errorOfCode(code) });
  return states;
};

const blockOf = (area: Area, used: Area | undefined, wire: WireCells | undefined): Block => {
  const states = used && wire ? cellStates(used, wire) : [];
  return {
    area,
    cells: Array.from({ length: area.rows }, (_r, row) =>
      Array.from({ length: area.columns }, (_c, column) => states[row]?.[column] ?? EMPTY),
    ),
  };
};

const UNREADABLE = 'The workbook could not be read.';

/** The workbook port over the pipe to one document of Calc. */
export const calcWorkbook = (ask: Ask): Workbook => {
  const outline = async (): Promise<Outline> =>
    outlineOf(await orFailedAt(UNREADABLE, ask({ what: 'outline' })));
  const write = async ({ title, edits }: Change): Promise<Locks> => {
    const [touched, operations] = [touchedBy(edits), plannedWrites({ title, edits })];
    const failing = `“${title}” could not be written, and the workbook stays as it was.`;
    return orFailedAt(failing, ask({ what: 'apply', title, touched, operations }));
  };
  return {
    outline,
    read: async (areas) => {
      const now = await outline();
      validateAreas(areas, now);
      const used = areas.map((area) => inUse(now, area));
      const asked = used.filter((area) => area !== undefined);
      const tell = (singly: boolean) =>
        orFailedAt(UNREADABLE, ask({ what: 'read', areas: asked.map(wireArea), singly }));
      const shortly = await tell(false);
      const told = shortly.every(understood) ? shortly : await tell(true);
      return {
        ...now,
        blocks: areas.map((area, index) =>
          blockOf(area, used[index], used[index] && told[asked.indexOf(used[index])]),
        ),
      };
    },
    apply: async (change: Change) => {
      validateChange(change, await outline());
      if (change.edits.length > 0) refuseLocked(await write(change));
    },
  };
};

import type { Area, Change } from '../../workbook/change';
import { refuseLocked, touchedBy } from '../../workbook/locks';
import { moveFormulaDown } from '../../workbook/memory/shift';
import {
  WorkbookMoved,
  type Block,
  type CellState,
  type Outline,
  type Snapshot,
  type Workbook,
} from '../../workbook/port';
import { readWanted } from '../../workbook/seen';
import { refuseNewer, shapeAreas } from '../../workbook/shapes';
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

const blockOf = (area: Area, wire: WireCells | null): Block => {
  const states = wire ? cellStates(areaOf(area.sheet, wire.used), wire) : [];
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
  const look = async (areas: readonly Area[]): Promise<Snapshot> => {
    const tell = (singly: boolean) =>
      orFailedAt(UNREADABLE, ask({ what: 'read', areas: areas.map(wireArea), singly }));
    const shortly = await tell(false);
    const told = shortly.cells.every((wire) => !wire || understood(wire)) ? shortly : await tell(true);
    return {
      ...outlineOf(told.outline),
      blocks: areas.map((area, index) => blockOf(area, told.cells[index]!)),
      stamp: told.stamp,
    };
  };
  const outline = async (): Promise<Outline> => {
    const { sheets, names, active } = await look([]);
    return { sheets, names, active };
  };
  const write = ({ title, edits }: Change, seen: Snapshot | undefined) => {
    const [touched, operations] = [touchedBy(edits), plannedWrites({ title, edits })];
    const failing = `“${title}” could not be written, and the workbook stays as it was.`;
    const still =
      seen?.stamp === undefined
        ? {}
        : { seen: { areas: seen.blocks.map(({ area }) => wireArea(area)), stamp: seen.stamp } };
    return orFailedAt(failing, ask({ what: 'apply', title, touched, operations, ...still }));
  };
  return {
    outline,
    read: async (wanted) => {
      const snapshot = await readWanted(wanted, look);
      validateAreas(
        snapshot.blocks.map(({ area }) => area),
        snapshot,
      );
      return snapshot;
    },
    apply: async (change, seen) => {
      const book = await readWanted(shapeAreas, look);
      refuseNewer(change, book);
      validateChange(change, seen ?? book);
      if (change.edits.length === 0) return;
      const { moved, ...locks } = await write(change, seen);
      if (moved) throw new WorkbookMoved();
      refuseLocked(locks);
    },
  };
};

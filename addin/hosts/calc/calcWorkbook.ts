import type { Area, Change } from '../../workbook/change';
import { refuseLocked, touchedBy, type Locks, type Touched } from '../../workbook/locks';
import { moveFormulaDown } from '../../workbook/memory/shift';
import type { Block, CellState, Outline, Workbook } from '../../workbook/port';
import { validateAreas, validateChange } from '../../workbook/validateChange';
import { failedAt } from './componentRefused';
import { errorOfCode } from './errorCodes';
import { plannedWrites, wireArea, type Operation, type WireArea } from './plannedWrites';

type Corner = readonly [row: number, column: number, rows: number, columns: number];

/** What the component tells of a document. */
export interface WireOutline {
  readonly sheets: readonly {
    readonly name: string;
    readonly rows: number;
    readonly columns: number;
    readonly merges: readonly Corner[];
  }[];
  readonly names: Readonly<Record<string, WireArea>>;
  readonly active: string;
}

type CellFormula = readonly [row: number, column: number, formula: string];

/** What the component tells of an area; rows and columns count from the sheet's corner. */
export interface WireCells {
  readonly values: readonly (readonly (string | number | null)[])[];
  readonly formulas: readonly CellFormula[];
  /** Formulas of columns whose first one, copied down, is all the others: with that of the last cell. */
  readonly copied: readonly (readonly [
    row: number,
    column: number,
    rows: number,
    first: string,
    last: string,
  ])[];
  readonly errors: readonly (readonly [row: number, column: number, code: number])[];
  readonly truths: readonly Corner[];
}

/** What the engine asks of the component about one document. */
export type WorkbookRequest =
  | { readonly what: 'outline' }
  | { readonly what: 'read'; readonly areas: readonly WireArea[]; readonly singly: boolean }
  /** Answered with the locks that stand in the way; where there are none, all is written. */
  | {
      readonly what: 'apply';
      readonly title: string;
      readonly touched: Touched;
      readonly operations: readonly Operation[];
    };

/** Asks the component; the promise is refused with a `ComponentRefused`, or with the component's own words where it failed. */
export type Ask = (request: object) => Promise<unknown>;

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

/** The part of an area that holds anything; undefined where nothing does. */
const inUse = (area: Area, outline: Outline): Area | undefined => {
  const sheet = outline.sheets.find(({ name }) => name === area.sheet);
  if (!sheet) return undefined;
  const rows = Math.min(area.rows, sheet.rows - area.row);
  const columns = Math.min(area.columns, sheet.columns - area.column);
  return rows > 0 && columns > 0 ? { ...area, rows, columns } : undefined;
};

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
  const request = async (asked: WorkbookRequest, failing: string): Promise<unknown> => {
    try {
      return await ask(asked);
    } catch (cause) {
      throw failedAt(failing, cause);
    }
  };
  const outline = async (): Promise<Outline> =>
    outlineOf((await request({ what: 'outline' }, UNREADABLE)) as WireOutline);
  const write = async ({ title, edits }: Change): Promise<Locks> => {
    const [touched, operations] = [touchedBy(edits), plannedWrites({ title, edits })];
    const failing = `“${title}” could not be written, and the workbook stays as it was.`;
    return (await request({ what: 'apply', title, touched, operations }, failing)) as Locks;
  };
  return {
    outline,
    read: async (areas) => {
      const now = await outline();
      validateAreas(areas, now);
      const used = areas.map((area) => inUse(area, now));
      const asked = used.filter((area) => area !== undefined);
      const tell = async (singly: boolean) =>
        (await request(
          { what: 'read', areas: asked.map(wireArea), singly },
          UNREADABLE,
        )) as readonly WireCells[];
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

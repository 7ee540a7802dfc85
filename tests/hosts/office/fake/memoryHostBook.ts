import { fixedReference } from '../../../../addin/workbook/address';
import {
  renameInFormula,
  shiftArea,
  shiftFormula,
  shiftIndex,
  type Shift,
} from '../../../../addin/workbook/memory/shift';
import { areaOfReference } from '../../../../addin/workbook/references';

import { asTyped } from './asTyped';
import { computedCells, outsideStrings, placeOf, type PlacedCell } from './computedCells';
import type {
  Cells,
  HostBook,
  HostCell,
  HostChart,
  HostInput,
  HostNote,
  HostPage,
  HostRule,
} from './hostBook';
import { HostError } from './hostError';
import { restingLook } from './restingLook';

interface Sheet {
  readonly id: string;
  name: string;
  cells: Map<string, PlacedCell>;
  /** Number formats and looks by place: later entries count. */
  formats: Map<string, string>;
  looks: Map<string, Record<string, unknown>>;
  rules: Map<string, HostRule>;
  widths: Map<number, number>;
  merges: Cells[];
  frozen: { rows: number; columns: number };
  note: HostNote[];
  comment: HostNote[];
  charts: HostChart[];
  page: HostPage;
  protected: boolean;
}

interface State {
  sheets: Sheet[];
  names: { name: string; formula: string }[];
  active: string;
}

/** What a user does by hand, what the test sets up, and what can be looked at. */
export interface MemoryHostBook extends HostBook {
  readonly state: () => unknown;
  readonly restore: (state: unknown) => void;
  protect(sheet: string | undefined, on: boolean): void;
  readOnly: boolean;
  /** FEED formulas are told as the file format stores them. */
  storedSpelling: boolean;
  /** FEED formulas show #NAME?, as they do where the functions were not there. */
  unknown: boolean;
  /** How many looks at a FEED formula find it unanswered after it was written. */
  answersAfter: number;
  sheetNamed(name: string): Sheet;
  rename(from: string, to: string): void;
  insert(sheet: string, axis: 'row' | 'column', at: number, count: number): void;
}

const STANDARD_WIDTH = 48;
const key = (row: number, column: number): string => `${row},${column}`;
const newSheet = (id: string, name: string): Sheet => ({
  id,
  name,
  cells: new Map(),
  formats: new Map(),
  looks: new Map(),
  rules: new Map(),
  widths: new Map(),
  merges: [],
  frozen: { rows: 0, columns: 0 },
  note: [],
  comment: [],
  charts: [],
  page: { orientation: 'Portrait', zoom: { scale: 100 }, margins: {} },
  protected: false,
});

/** A workbook in memory behind the object model, computed by the workbench's formula engine. */
export const memoryHostBook = (): MemoryHostBook => {
  let state: State = { sheets: [newSheet('{1}', 'Sheet1')], names: [], active: '{1}' };
  let ids = 1;
  let isProtected = false;
  const pending = new Map<string, number>();

  const sheetAt = (id: string): Sheet => {
    const sheet = state.sheets.find((one) => one.id === id);
    if (!sheet) throw new HostError('ItemNotFound');
    return sheet;
  };
  const each = (
    cells: Cells,
    visit: (row: number, column: number, down: number, across: number) => void,
  ): void => {
    for (let down = 0; down < cells.rows; down += 1)
      for (let across = 0; across < cells.columns; across += 1)
        visit(cells.row + down, cells.column + across, down, across);
  };

  const spelled = (formula: string): string =>
    book.storedSpelling
      ? outsideStrings(formula, (part) => part.replaceAll(/FEED\.(\w+)\(/g, '_xldudf_FEED_$1('))
      : formula;

  const told = (sheet: Sheet, place: string, values: ReadonlyMap<string, PlacedCell>): HostCell => {
    const cell = sheet.cells.get(place);
    const format = sheet.formats.get(place) ?? 'General';
    if (!cell) return { value: '', formula: '', type: 'Empty', format };
    const open = pending.get(`${sheet.id}!${place}`) ?? 0;
    if (open > 0) pending.set(`${sheet.id}!${place}`, open - 1);
    const answer = cell.formula === undefined ? cell : values.get(`${sheet.id}!${place}`)!;
    const formula = cell.formula === undefined ? cell.value : spelled(cell.formula);
    if (open > 0) return { value: '#BUSY!', formula, type: 'Error', format };
    if (book.unknown && /FEED\./i.test(cell.formula ?? ''))
      return { value: '#NAME?', formula, type: 'Error', format };
    const { value } = answer;
    const type = answer.error ? 'Error' : ({ string: 'String', number: 'Double', boolean: 'Boolean' } as const)[typeof value as 'string']; // prettier-ignore
    return { value, formula, type, format };
  };

  const put = (sheet: Sheet, place: string, input: HostInput): void => {
    if (input === null) return;
    if (typeof input === 'string' && input.length > 32_768)
      throw new HostError('InvalidArgument', 'too long');
    const isText = sheet.formats.get(place) === '@';
    const typed =
      typeof input === 'string'
        ? asTyped(input, isText)
        : ({ kind: 'value', value: isText ? String(input) : input } as const);
    pending.delete(`${sheet.id}!${place}`);
    switch (typed.kind) {
      case 'empty':
        sheet.cells.delete(place);
        break;
      case 'formula':
        sheet.cells.set(place, { value: '', formula: typed.formula });
        if (/FEED\./i.test(typed.formula)) pending.set(`${sheet.id}!${place}`, book.answersAfter);
        break;
      case 'error':
        sheet.cells.set(place, { value: typed.error, error: true });
        break;
      case 'value':
        sheet.cells.set(place, { value: typed.value });
    }
  };

  const bounds = (sheet: Sheet, places: Iterable<string>): Cells | undefined => {
    const all = [...places].map(placeOf);
    if (all.length === 0) return undefined;
    const [rows, columns] = [all.map(([row]) => row), all.map(([, column]) => column)];
    const [row, column] = [Math.min(...rows), Math.min(...columns)];
    return {
      sheet: sheet.id,
      row,
      column,
      rows: Math.max(...rows) - row + 1,
      columns: Math.max(...columns) - column + 1,
    };
  };

  const book: MemoryHostBook = {
    readOnly: false,
    storedSpelling: false,
    answersAfter: 0,
    unknown: false,
    state: () => structuredClone(state),
    restore: (was) => {
      state = structuredClone(was as State);
    },
    sheetNamed: (name) => {
      const sheet = state.sheets.find((one) => one.name === name);
      if (!sheet) throw new Error(`no sheet ${name}`);
      return sheet;
    },
    protect: (name, on) => {
      if (name === undefined) isProtected = on;
      else book.sheetNamed(name).protected = on;
    },
    rename: (from, to) => {
      const sheet = book.sheetNamed(from);
      for (const one of state.sheets)
        for (const [place, cell] of one.cells)
          if (cell.formula)
            one.cells.set(place, { ...cell, formula: renameInFormula(cell.formula, from, to) });
      state.names = state.names.map(({ name, formula }) => ({
        name,
        formula: renameInFormula(formula, from, to),
      }));
      sheet.name = to;
    },
    insert: (name, axis, at, count) => {
      const shift: Shift = { sheet: name, axis, at, count };
      for (const sheet of state.sheets) {
        const cells = new Map<string, PlacedCell>();
        for (const [place, cell] of sheet.cells) {
          const [row, column] = placeOf(place);
          const formula = cell.formula && shiftFormula(cell.formula, sheet.name, shift);
          const here = sheet.name === name;
          const moved = key(
            here && axis === 'row' ? shiftIndex(row, shift)! : row,
            here && axis === 'column' ? shiftIndex(column, shift)! : column,
          );
          cells.set(moved, { ...cell, ...(formula ? { formula } : {}) });
        }
        sheet.cells = cells;
      }
      state.names = state.names.map(({ name: called, formula }) => {
        const area = areaOfReference(formula);
        const moved = area && shiftArea(area, shift);
        return { name: called, formula: moved ? `=${fixedReference(moved)}` : formula };
      });
    },

    sheets: () => state.sheets.map(({ id, name }) => ({ id, name })),
    active: () => state.active,
    activate: (id) => {
      state.active = sheetAt(id).id;
    },
    select: () => undefined,
    addSheet: (name) => {
      ids += 1;
      const id = `{${ids}}`;
      state.sheets.push(newSheet(id, name));
      return id;
    },
    deleteSheet: (id) => {
      state.sheets = state.sheets.filter((sheet) => sheet !== sheetAt(id));
      if (state.active === id) state.active = state.sheets[0]!.id;
      state.names = state.names.filter(({ formula }) => {
        const area = areaOfReference(formula);
        return !area || state.sheets.some(({ name }) => name === area.sheet);
      });
    },
    used: (id, drawn) => {
      const sheet = sheetAt(id);
      return bounds(sheet, drawn ? [...sheet.cells.keys(), ...sheet.looks.keys(), ...sheet.merges.map(({ row, column }) => key(row, column))] : sheet.cells.keys()); // prettier-ignore
    },
    read: async (cells) => {
      const sheet = sheetAt(cells.sheet);
      const values = await computedCells(state);
      return Array.from({ length: cells.rows }, (_, down) =>
        Array.from({ length: cells.columns }, (_none, across) =>
          told(sheet, key(cells.row + down, cells.column + across), values),
        ),
      );
    },
    write: (cells, inputs) => {
      const sheet = sheetAt(cells.sheet);
      each(cells, (row, column, down, across) => put(sheet, key(row, column), inputs[down]![across]!));
    },
    setFormats: (cells, formats) => {
      const sheet = sheetAt(cells.sheet);
      each(cells, (row, column, down, across) => {
        const format = formats[down]![across]!;
        if (format === 'General') sheet.formats.delete(key(row, column));
        else if (format !== null) sheet.formats.set(key(row, column), format);
      });
    },
    look: (cells, property) => {
      const sheet = sheetAt(cells.sheet);
      let first: unknown;
      let unlike = false;
      each(cells, (row, column, down, across) => {
        const value = sheet.looks.get(key(row, column))?.[property] ?? restingLook(property);
        if (down === 0 && across === 0) first = value;
        else if (value !== first) unlike = true;
      });
      return unlike ? null : first;
    },
    setLook: (cells, property, value) => {
      const sheet = sheetAt(cells.sheet);
      each(cells, (row, column) => {
        const look: Record<string, unknown> = { ...sheet.looks.get(key(row, column)), [property]: value };
        if (value === restingLook(property)) delete look[property];
        if (Object.keys(look).length === 0) sheet.looks.delete(key(row, column));
        else sheet.looks.set(key(row, column), look);
      });
    },
    width: (id, column) => sheetAt(id).widths.get(column) ?? STANDARD_WIDTH,
    setWidth: (id, column, points) => {
      if (points === STANDARD_WIDTH) sheetAt(id).widths.delete(column);
      else sheetAt(id).widths.set(column, points);
    },
    merges: (id) => sheetAt(id).merges,
    merge: (cells) => {
      const sheet = sheetAt(cells.sheet);
      sheet.merges.push(cells);
      each(cells, (row, column, down, across) => {
        if (down + across > 0) sheet.cells.delete(key(row, column));
      });
    },
    unmerge: (cells) => {
      const sheet = sheetAt(cells.sheet);
      sheet.merges = sheet.merges.filter((one) => JSON.stringify(one) !== JSON.stringify(cells));
    },
    frozen: (id) => sheetAt(id).frozen,
    freeze: (id, rows, columns) => {
      sheetAt(id).frozen = { rows, columns };
    },
    names: () => state.names,
    setName: (name, formula) => {
      const known = state.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
      if (known) known.formula = formula;
      else state.names.push({ name, formula });
    },
    deleteName: (name) => {
      state.names = state.names.filter((one) => one.name !== name);
    },
    rule: (id, row, column) => sheetAt(id).rules.get(key(row, column)),
    setRule: (cells, rule) => {
      const sheet = sheetAt(cells.sheet);
      each(cells, (row, column) => {
        if (rule) sheet.rules.set(key(row, column), rule);
        else sheet.rules.delete(key(row, column));
      });
    },
    notes: (id, kind) => sheetAt(id)[kind],
    setNote: (id, kind, row, column, text) => {
      const sheet = sheetAt(id);
      const others = sheet[kind].filter((note) => note.row !== row || note.column !== column);
      sheet[kind] = text === '' ? others : [...others, { row, column, text }];
    },
    charts: (id) => sheetAt(id).charts,
    setChart: (id, at, chart) => {
      const charts = [...sheetAt(id).charts];
      charts.splice(at, 1, ...(chart ? [chart] : []));
      sheetAt(id).charts = charts;
    },
    page: (id) => sheetAt(id).page,
    setPage: (id, page) => {
      sheetAt(id).page = page;
    },
    isProtected: (id) => (id === undefined ? isProtected : sheetAt(id).protected),
    isReadOnly: () => book.readOnly,
    calculation: () => 'Done',
  };
  return book;
};

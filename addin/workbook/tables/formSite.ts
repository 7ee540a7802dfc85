import type { Area } from '../change';
import type { Snapshot } from '../port';
import { areaNamed, cellAt, isEmpty } from '../snapshot';
import { FORM_HEADERS, linesOf, unitName, type Form, type Line } from './form';
import { hasForm, lineAreas } from './readForm';

export const FORM_HEADER_ROW = 3;

/** Where a form's cells stand, or will stand. */
export interface FormSite {
  readonly form: Form;
  readonly sheet: string;
  readonly header: number;
  /** Value cells and unit cells by workbook name. */
  readonly cells: Readonly<Record<string, Area>>;
  /** Lines about to be made. */
  readonly missing: readonly Line[];
  /** Other lines that the sheet does not have. */
  readonly absent: readonly Line[];
  readonly fresh: boolean;
}

const cell = (sheet: string, row: number, column: number): Area => ({
  sheet,
  row,
  column,
  rows: 1,
  columns: 1,
});

/** Rows from `from` on where a whole line can be written without touching anything. */
const freeRow = (snapshot: Snapshot, sheet: string, from: number, column: number): number => {
  let row = from;
  const taken = (at: number) =>
    FORM_HEADERS.some((_header, index) => !isEmpty(cellAt(snapshot, sheet, at, column - 1 + index)));
  while (taken(row)) row += 1;
  return row;
};

const cellsOf = (line: Line, value: Area, snapshot: Snapshot | undefined): [string, Area][] => {
  const name = unitName(line);
  if (name === undefined) return [[line.name, value]];
  const unit = snapshot && areaNamed(snapshot, name);
  return [
    [line.name, value],
    [name, unit ?? { ...value, column: value.column + 1 }],
  ];
};

export const freshForm = (form: Form, sheet: string): FormSite => ({
  form,
  sheet,
  header: FORM_HEADER_ROW,
  cells: Object.fromEntries(
    linesOf(form).flatMap(([, line], index) =>
      cellsOf(line, cell(sheet, FORM_HEADER_ROW + 1 + index, 1), undefined),
    ),
  ),
  missing: Object.values(form.lines),
  absent: [],
  fresh: true,
});

/**
 * The form where its names say it is; undefined where the workbook has none.
 *
 * @param isMade which of the lines that it does not have are about to be made, below the others
 */
export const locateForm = (
  form: Form,
  snapshot: Snapshot,
  isMade: (key: string, line: Line) => boolean = () => false,
): FormSite | undefined => {
  if (!hasForm(form, snapshot)) return undefined;
  const areas = lineAreas(form, snapshot);
  const header = areaNamed(snapshot, form.name);
  const there = Object.values(areas);
  const lowest = there.reduce<Area | undefined>(
    (low, area) => (low === undefined || area.row > low.row ? area : low),
    undefined,
  );
  const base = lowest ?? (header && { ...header, column: header.column + 1 });
  if (!base) return undefined;
  const cells: [string, Area][] = [];
  const missing: Line[] = [];
  const absent: Line[] = [];
  let next = base.row + 1;
  for (const [key, line] of linesOf(form)) {
    const area = areas[key];
    if (area) {
      cells.push(...cellsOf(line, area, snapshot));
      continue;
    }
    if (!isMade(key, line)) {
      absent.push(line);
      continue;
    }
    const row = freeRow(snapshot, base.sheet, next, base.column);
    next = row + 1;
    missing.push(line);
    cells.push(...cellsOf(line, cell(base.sheet, row, base.column), undefined));
  }
  const top = Math.min(...there.map((area) => area.row), base.row);
  return {
    form,
    sheet: base.sheet,
    header: header?.row ?? Math.max(0, top - 1),
    cells: Object.fromEntries(cells),
    missing,
    absent,
    fresh: false,
  };
};

import { knownUnits, type Family, type System } from '../../core';
import type { Area, CellInput, Edit } from '../change';
import type { Measure } from '../fields/holds';
import { unitKind } from '../fields/usualUnits';
import type { Snapshot } from '../port';
import { areaNamed, cellAt, labelOf } from '../snapshot';
import { write, type Draft } from './edits';
import {
  FORM_HEADERS,
  FORM_WIDTHS,
  linesOf,
  offered,
  startOf,
  unitName,
  type Line,
  type LineValue,
} from './form';
import type { FormSite } from './formSite';
import { inputOf } from './table';
import { sameFormula } from '../formula/sameFormula';
import { isRenewed, type Renewed } from './renewed';
import { canFill, fillTemplate, type Places } from './template';

/** Values to keep, by the line's key. A value of undefined empties the cell, or brings its formula back. */
export type FormWish = Readonly<Record<string, LineValue>>;

const makeHeading = ({ form, sheet, header }: FormSite, draft: Draft): void => {
  const at = (row: number, columns = 1): Area => ({ sheet, row, column: 0, rows: 1, columns });
  const head = at(header, FORM_HEADERS.length);
  draft.values.push(
    write(sheet, 0, 0, [[form.title], [form.purpose]]),
    write(sheet, header, 0, [FORM_HEADERS]),
  );
  draft.looks.push(
    { kind: 'style', area: at(0), style: 'title' },
    { kind: 'style', area: at(1), style: 'note' },
    { kind: 'style', area: head, style: 'header' },
    ...FORM_WIDTHS.map((characters, column): Edit => ({
      kind: 'width',
      sheet,
      column,
      columns: 1,
      characters,
    })),
  );
  draft.names.push({ kind: 'name', name: form.name, area: head });
  draft.last.push({ kind: 'freeze', sheet, rows: header + 1, columns: 1 });
};

const makeLine = (site: FormSite, line: Line, measures: System, draft: Draft): void => {
  const area = site.cells[line.name]!;
  const { sheet, row, column } = area;
  const { value, unit } = startOf(line, measures);
  const list = offered(line.holds);
  draft.values.push(write(sheet, row, column - 1, [[line.label]]));
  draft.values.push(write(sheet, row, column + 2, [[line.what]]));
  draft.looks.push({ kind: 'style', area, style: line.formula ? 'computed' : 'input' });
  draft.looks.push({ kind: 'style', area: { ...area, column: column + 2 }, style: 'note' });
  if (line.format) draft.looks.push({ kind: 'format', area, format: line.format });
  if (list) draft.looks.push({ kind: 'list', area, ...list });
  if (!line.formula && value !== undefined) draft.values.push(write(sheet, row, column, [[value]]));
  if (unit !== undefined) draft.values.push(write(sheet, row, column + 1, [[unit]]));
};

const makeUnit = (site: FormSite, name: string, { of }: Measure, draft: Draft): void => {
  const family = unitKind(of) as Family;
  const area = site.cells[name]!;
  const message = `Choose a unit of ${family}. The value is not converted.`;
  draft.looks.push(
    { kind: 'style', area, style: 'input' },
    { kind: 'list', area, source: knownUnits(family), message },
  );
  draft.names.push({ kind: 'name', name, area });
};

const same = (snapshot: Snapshot, area: Area, input: CellInput): boolean => {
  const now = cellAt(snapshot, area.sheet, area.row, area.column);
  if (now.error !== undefined) return false;
  if (typeof input === 'object' && input !== null)
    return now.formula !== undefined && sameFormula(now.formula, input.formula);
  return now.formula === undefined && now.value === input;
};

/** What goes into a line's value cell, or undefined where it stays as it is. */
const valueFor = (
  site: FormSite,
  line: Line,
  snapshot: Snapshot,
  places: Places,
  wish: LineValue | undefined,
  earlier: Renewed,
): CellInput | undefined => {
  const asked = wish !== undefined && 'value' in wish;
  if (asked && wish.value !== undefined) return inputOf(wish.value);
  if (!line.formula) return asked ? null : undefined;
  if (!canFill(line.formula, places)) return undefined;
  const area = site.cells[line.name]!;
  const now = site.missing.includes(line) ? undefined : cellAt(snapshot, area.sheet, area.row, area.column);
  const formula = fillTemplate(line.formula, places)(area.row);
  const before = (earlier[line.name] ?? [])
    .filter((template) => canFill(template, places))
    .map((template) => fillTemplate(template, places)(area.row));
  return asked || isRenewed(now, formula, before) ? { formula } : undefined;
};

/** Edits that bring a form to what an action wants, and put lost lines and formulas back. */
export const writeForm = (
  site: FormSite,
  snapshot: Snapshot,
  places: Places,
  wish: FormWish,
  measures: System,
  earlier: Renewed,
  draft: Draft,
): void => {
  if (site.fresh) makeHeading(site, draft);
  for (const [key, line] of linesOf(site.form)) {
    if (site.absent.includes(line)) continue;
    const missing = site.missing.includes(line);
    const area = site.cells[line.name]!;
    if (missing) {
      makeLine(site, line, measures, draft);
      draft.names.push({ kind: 'name', name: line.name, area });
    }
    const unitCell = unitName(line);
    if (unitCell !== undefined && line.holds?.kind === 'measure') {
      const lost = missing || areaNamed(snapshot, unitCell) === undefined;
      if (lost) makeUnit(site, unitCell, line.holds, draft);
      const unit = wish[key]?.unit;
      const unitArea = site.cells[unitCell]!;
      const now = labelOf(cellAt(snapshot, unitArea.sheet, unitArea.row, unitArea.column));
      if (unit !== undefined && (missing || unit !== now))
        draft.values.push(write(unitArea.sheet, unitArea.row, unitArea.column, [[unit]]));
    }
    const input = valueFor(site, line, snapshot, places, wish[key], earlier);
    if (input === undefined || (!missing && same(snapshot, area, input))) continue;
    const edit = write(area.sheet, area.row, area.column, [[input]]);
    if (typeof input === 'object' && input !== null) draft.formulas.push(edit);
    else draft.values.push(edit);
  }
};

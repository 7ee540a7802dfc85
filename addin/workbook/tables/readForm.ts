import { cellSentence } from '../fields/cellSentence';
import { unitCell } from '../fields/cellValue';
import type { Problem } from '../garden';
import type { Area } from '../change';
import type { Outline, Snapshot } from '../port';
import { areaNamed, cellAt, isEmpty } from '../snapshot';
import type { Form, Line, LineValue } from './form';
import { cellWords } from './template';

export interface FormRead {
  readonly found: boolean;
  /** By the line's key; a computed line has a value only where one was typed over its formula. */
  readonly values: Readonly<Record<string, LineValue>>;
  readonly problems: readonly Problem[];
}

/** Where a form's lines stand; a name that points nowhere has none. */
export const lineAreas = (form: Form, outline: Outline): Readonly<Record<string, Area>> =>
  Object.fromEntries(
    form.lines.flatMap((line) => {
      const area = areaNamed(outline, line.name);
      return area ? [[line.key, area] as const] : [];
    }),
  );

/** True where the workbook has the form: its header, or most of its lines where the header was deleted. */
export const hasForm = (form: Form, outline: Outline): boolean =>
  areaNamed(outline, form.name) !== undefined ||
  Object.keys(lineAreas(form, outline)).length * 2 >= form.lines.length;

interface Checked<T> {
  readonly value?: T;
  readonly problem?: Problem;
}

const checked = <T>(
  form: Form,
  label: string,
  area: Area,
  snapshot: Snapshot,
  schema: {
    safeParse(value: unknown): { success: boolean; data?: T; error?: { issues: { message: string }[] } };
  },
): Checked<T> => {
  const { sheet, row, column } = area;
  const cell = cellAt(snapshot, sheet, row, column);
  const parsed = schema.safeParse(cell.value);
  if (parsed.success && cell.error === undefined)
    return parsed.data === undefined ? {} : { value: parsed.data };
  const where = `${cellWords(sheet, row, column)} (${label})`;
  const sentence = cellSentence(where, cell, parsed.error?.issues[0]?.message ?? 'a value');
  return { problem: { place: form.place, sheet, row, column, sentence } };
};

const readLine = (form: Form, line: Line, snapshot: Snapshot) => {
  const area = areaNamed(snapshot, line.name);
  if (!area) return { value: {}, problems: [] };
  const cell = cellAt(snapshot, area.sheet, area.row, area.column);
  const worked = line.formula !== undefined && cell.formula !== undefined;
  const value: Checked<unknown> = worked ? {} : checked(form, line.label, area, snapshot, line.schema);
  const unitArea = line.unit?.kind === 'chosen' ? areaNamed(snapshot, line.unit.name) : undefined;
  const unit: Checked<string> =
    line.unit?.kind === 'chosen' && unitArea
      ? checked(form, `${line.label}, unit`, unitArea, snapshot, unitCell(line.unit.family))
      : {};
  return {
    value: {
      ...(value.value === undefined ? {} : { value: value.value }),
      ...(unit.value === undefined ? {} : { unit: unit.value }),
    },
    // A unit is not missed while there is nothing for it to measure.
    problems: [value.problem, isEmpty(cell) ? undefined : unit.problem].filter(
      (problem) => problem !== undefined,
    ),
  };
};

/** Lines that the user deleted from a form that has to be complete. */
const lostLines = (form: Form, snapshot: Snapshot): Problem[] => {
  const areas = lineAreas(form, snapshot);
  const [any] = Object.values(areas);
  const lost = form.lines.filter((line) => areas[line.key] === undefined && line.formula === undefined);
  if (!form.complete || !any) return [];
  return lost.map(({ label }) => ({
    place: form.place,
    sheet: any.sheet,
    row: any.row,
    sentence: `${any.sheet} has no line “${label}” any more; keep the ${form.title.toLowerCase()} again, and it comes back.`,
  }));
};

/** The lines of a form as typed values, and what could not be read. */
export const readForm = (form: Form, snapshot: Snapshot): FormRead => {
  if (!hasForm(form, snapshot)) return { found: false, values: {}, problems: [] };
  const lines = form.lines.map((line) => [line.key, readLine(form, line, snapshot)] as const);
  return {
    found: true,
    values: Object.fromEntries(lines.map(([key, { value }]) => [key, value])),
    problems: [...lostLines(form, snapshot), ...lines.flatMap(([, { problems }]) => problems)],
  };
};

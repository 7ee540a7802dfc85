import type * as z from 'zod';
import type { System } from '../../core';
import { cellSentence } from '../fields/cellSentence';
import { unitCell } from '../fields/cellValue';
import { number, rangeBeside, type Measure } from '../fields/holds';
import { unitKind } from '../fields/usualUnits';
import type { Problem } from '../garden';
import type { Area } from '../change';
import type { Outline, Snapshot } from '../port';
import { areaNamed, cellAt, isEmpty } from '../snapshot';
import { linesOf, startOf, unitName, type Form, type FormRow, type Line, type Lines } from './form';
import { cellWords } from './template';

export interface FormRead<F extends Form> {
  readonly found: boolean;
  /** What the lines hold; one that the sheet works out has a value only where one was typed over its formula. */
  readonly row: FormRow<F>;
  readonly problems: readonly Problem[];
}

/** Where a form's lines stand; a name that points nowhere has none. */
export const lineAreas = (form: Form, outline: Outline): Readonly<Record<string, Area>> =>
  Object.fromEntries(
    linesOf(form).flatMap(([key, { name }]) => {
      const area = areaNamed(outline, name);
      return area ? [[key, area] as const] : [];
    }),
  );

/** True where the workbook has the form: its header, or most of its lines where the header was deleted. */
export const hasForm = (form: Form, outline: Outline): boolean =>
  areaNamed(outline, form.name) !== undefined ||
  Object.keys(lineAreas(form, outline)).length * 2 >= linesOf(form).length;

interface Checked {
  readonly value?: unknown;
  readonly problem?: Problem;
}

const checked = (
  form: Form,
  label: string,
  area: Area,
  snapshot: Snapshot,
  schema: z.ZodType<unknown>,
): Checked => {
  const { sheet, row, column } = area;
  const cell = cellAt(snapshot, sheet, row, column);
  const parsed = schema.safeParse(cell.value);
  if (parsed.success && cell.error === undefined) return { value: parsed.data };
  const where = `${cellWords(sheet, row, column)} (${label})`;
  const sentence = cellSentence(where, cell, parsed.error?.issues[0]?.message ?? 'a value');
  return { problem: { place: form.place, sheet, row, column, sentence } };
};

const readUnit = (form: Form, line: Line, holds: Measure, snapshot: Snapshot): Checked => {
  const area = areaNamed(snapshot, unitName(line) ?? '');
  return area ? checked(form, `${line.label}, unit`, area, snapshot, unitCell(unitKind(holds.of))) : {};
};

const readLine = (form: Form, line: Line, snapshot: Snapshot, measures: System) => {
  const { holds } = line;
  if (!holds) return { value: undefined, problems: [] };
  const area = areaNamed(snapshot, line.name);
  const cell = area ? cellAt(snapshot, area.sheet, area.row, area.column) : undefined;
  const unit = holds.kind === 'measure' ? readUnit(form, line, holds, snapshot) : {};
  const schema =
    holds.kind === 'measure'
      ? number(rangeBeside(holds, unit.value as string | undefined)).schema
      : holds.schema;
  const worked = line.formula !== undefined && cell?.formula !== undefined;
  const value =
    !area || worked
      ? { value: schema.safeParse(null).data }
      : checked(form, line.label, area, snapshot, schema);
  return {
    // While the sheet has no unit, the one that a new sheet would start with.
    value:
      holds.kind === 'measure'
        ? { value: value.value, unit: unit.value ?? startOf(line, measures).unit }
        : (value.value ?? schema.safeParse(null).data),
    // A unit is not missed while there is nothing for it to measure.
    problems: [value.problem, cell === undefined || isEmpty(cell) ? undefined : unit.problem].filter(
      (problem) => problem !== undefined,
    ),
  };
};

/** Lines that the user deleted from a form that has to be complete. */
const lostLines = (form: Form, snapshot: Snapshot): Problem[] => {
  const areas = lineAreas(form, snapshot);
  const [any] = Object.values(areas);
  const lost = linesOf(form).filter(([key, line]) => areas[key] === undefined && line.formula === undefined);
  if (!form.complete || !any) return [];
  return lost.map(([, { label }]) => ({
    place: form.place,
    sheet: any.sheet,
    row: any.row,
    sentence: `${any.sheet} has no line “${label}” any more; keep the ${form.title.toLowerCase()} again, and it comes back.`,
  }));
};

/**
 * The lines of a form as typed values, and what could not be read. A form that the workbook has not reads as blank.
 *
 * @param measures whose units stand in where the sheet has none
 */
export const readForm = <L extends Lines>(
  form: Form<L>,
  snapshot: Snapshot,
  measures: System = 'metric',
): FormRead<Form<L>> => {
  const found = hasForm(form, snapshot);
  const lines = linesOf(form).flatMap(([key, line]) =>
    line.holds ? [[key, readLine(form, line, snapshot, measures)] as const] : [],
  );
  return {
    found,
    row: Object.fromEntries(lines.map(([key, { value }]) => [key, value])) as FormRow<Form<L>>,
    problems: found ? [...lostLines(form, snapshot), ...lines.flatMap(([, { problems }]) => problems)] : [],
  };
};

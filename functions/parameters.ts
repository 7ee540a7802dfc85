import * as z from 'zod/mini';
import type { Family, RateUnit, Seconds, Unit } from '../addin/core';
import {
  families as everyFamily,
  findNutrientForm,
  findRateUnit,
  findUnit,
  knownUnits,
  NUTRIENT_FORMS,
  saidBy,
  seconds,
} from '../addin/core';
import { asNumber, asRows, isLeftOut, isRows, single } from './arguments';
import type { ParameterEntry, RawArgument, RawScalar, Refused } from './definition';
import * as say from './sentences';

/** What a function declares of one argument, and how a raw one is read; its name is its key in the function. */
export interface Parameter<T> extends Omit<ParameterEntry, 'name'> {
  readonly read: (raw: RawArgument, name: string) => T | Refused;
}

export const isRefused = (read: unknown): read is Refused =>
  typeof read === 'object' && read !== null && 'error' in read;

/** The numbers an argument may be; no bound means any finite number. */
export interface Bounds {
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
}

const inWords = ({ above, atLeast, atMost }: Bounds): string => {
  if (above !== undefined)
    return atMost === undefined ? `more than ${above}` : `more than ${above}, at most ${atMost}`;
  if (atLeast !== undefined) return atMost === undefined ? `${atLeast} or more` : `${atLeast} to ${atMost}`;
  return atMost === undefined ? 'any number' : `${atMost} or less`;
};

const schemaOf = (bounds: Bounds, allowed: string): z.ZodMiniType<number> => {
  const checks = [];
  if (bounds.above !== undefined) checks.push(z.gt(bounds.above, allowed));
  if (bounds.atLeast !== undefined) checks.push(z.gte(bounds.atLeast, allowed));
  if (bounds.atMost !== undefined) checks.push(z.lte(bounds.atMost, allowed));
  const finite = z.number(allowed);
  return checks.length === 0 ? finite : finite.check(...checks);
};

/** The number that a cell counts as, when the schema allows it. */
const readCell = (cell: RawScalar, name: string, schema: z.ZodMiniType<number>): number | Refused => {
  const value = asNumber(cell);
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const allowed = parsed.error.issues[0]!.message;
  return value === undefined ? say.notANumber(name, cell, allowed) : say.notAllowed(name, cell, allowed);
};

/** One finite number. A blank cell counts as 0, and the bounds decide whether 0 makes sense. */
export const number = (description: string, bounds: Bounds = {}): Parameter<number> => {
  const allowed = inWords(bounds);
  const schema = schemaOf(bounds, allowed);
  return {
    description,
    type: 'number',
    optional: false,
    range: false,
    allowed,
    read: (raw, name) => {
      const cell = single(raw);
      if (isRows(cell)) return say.oneValueOnly(name, cell);
      if (cell === null || cell === undefined) return say.notANumber(name, cell, allowed);
      return readCell(cell, name, schema);
    },
  };
};

/** An argument that may be left out, and what then stands for it. */
export const optional = <T, const D>(
  parameter: Parameter<T>,
  otherwise: string,
  value: D,
): Parameter<T | D> => ({
  ...parameter,
  optional: true,
  otherwise,
  read: (raw, name) => {
    const cell = single(raw);
    return !isRows(cell) && isLeftOut(cell) ? value : parameter.read(raw, name);
  },
});

/** The words of a text argument, without the spaces around them. */
const readText = (raw: RawArgument, name: string, allowed: string): string | Refused => {
  const cell = single(raw);
  if (isRows(cell)) return say.oneValueOnly(name, cell);
  const text = typeof cell === 'string' ? cell.trim() : '';
  return text === '' ? say.notAllowed(name, cell, allowed) : text;
};

const textParameter = <T>(
  description: string,
  allowed: string,
  find: (text: string, name: string) => T | Refused,
): Parameter<T> => ({
  description,
  type: 'text',
  optional: false,
  range: false,
  allowed,
  read: (raw, name) => {
    const text = readText(raw, name, allowed);
    return isRefused(text) ? text : find(text, name);
  },
});

/** A unit of one of the families. */
export const unit = <F extends Family>(description: string, ...families: F[]): Parameter<Unit<F>> => {
  const kind = families.join(' or ');
  const known = families.flatMap((family) => knownUnits(family));
  const allowed = `a ${kind} unit: ${known.join(', ')}`;
  const find = (text: string, name: string): Unit<F> | Refused => {
    const found = findUnit(text, ...families);
    if (found) return found;
    if (findUnit(text) || findRateUnit(text)) return say.notAllowed(name, text, allowed);
    return say.unknownUnit(name, text, kind, known);
  };
  return { ...textParameter(description, allowed, find), units: families };
};

const RATES = 'a rate, an amount over a volume, such as tbsp/gal, mL/L, g/L or oz/100 gal';

/** A rate as labels print it. */
export const rateUnit = (description: string): Parameter<RateUnit> => {
  const volumes = knownUnits('volume');
  const find = (text: string, name: string): RateUnit | Refused => {
    const found = findRateUnit(text);
    if (found) return found;
    if (findUnit(text)) return say.notAllowed(name, text, RATES);
    return say.unknownRate(name, text, [...volumes, ...knownUnits('mass')], volumes);
  };
  return { ...textParameter(description, RATES, find), units: ['rate'] };
};

/** A unit of any family, or a rate. */
export const anyUnit = (description: string): Parameter<Unit | RateUnit> => {
  const known = everyFamily.flatMap((family) => knownUnits(family));
  const find = (text: string, name: string): Unit | RateUnit | Refused =>
    findUnit(text) ?? findRateUnit(text) ?? say.unknownAnyUnit(name, text, known);
  const kinds = `${everyFamily.slice(0, -1).join(', ')} or ${everyFamily.at(-1)}`;
  const allowed = `a unit of ${kinds}, or a rate such as tbsp/gal`;
  return { ...textParameter(description, allowed, find), units: [...everyFamily, 'rate'] };
};

/** One word out of a few; case does not matter. */
export const choice = <W extends string>(description: string, ...words: W[]): Parameter<W> => {
  const allowed = words.map((word) => `"${word}"`).join(' or ');
  const schema = z.enum(words, allowed);
  return textParameter(description, allowed, (text, name) => {
    const parsed = schema.safeParse(text.toLowerCase());
    return parsed.success ? (parsed.data as W) : say.notAllowed(name, text, parsed.error.issues[0]!.message);
  });
};

/** An oxide as labels print it, or its element. */
export const nutrientForm = (description: string): Parameter<string> =>
  textParameter(
    description,
    `one of ${NUTRIENT_FORMS.join(', ')}`,
    (text, name) => findNutrientForm(text) ?? say.unknownName(name, text, 'oxide or element', NUTRIENT_FORMS),
  );

const rangeParameter = <T>(
  description: string,
  allowed: string,
  readRows: (rows: readonly (readonly RawScalar[])[], name: string) => T | Refused,
): Parameter<T> => ({
  description,
  type: 'any',
  optional: false,
  range: true,
  allowed,
  read: (raw, name) => {
    const rows = raw === null || raw === undefined ? undefined : asRows(raw);
    return rows === undefined
      ? say.notAllowed(name, raw, `a range of cells, each ${allowed}`)
      : readRows(rows, name);
  },
});

const zeroOrMore = schemaOf({ atLeast: 0 }, inWords({ atLeast: 0 }));

const nameOfCell = (
  name: string,
  rows: readonly (readonly unknown[])[],
  row: number,
  column: number,
): string => (rows.length === 1 && rows[0]!.length === 1 ? name : say.cellOf(name, row, column));

/** Seconds of timed buckets, in reading order; blank and 0 cells are left out. */
export const readings = (description: string): Parameter<readonly Seconds[]> =>
  rangeParameter(description, '0 or more; blank cells and 0 are left out', (rows, name) => {
    const found: Seconds[] = [];
    for (const [row, cells] of rows.entries()) {
      for (const [column, cell] of cells.entries()) {
        const value = readCell(cell, nameOfCell(name, rows, row, column), zeroOrMore);
        if (isRefused(value)) return value;
        if (value > 0) found.push(seconds(value));
      }
    }
    return found;
  });

/** Numbers of a range, row by row, with its shape. */
export interface Grid {
  readonly values: readonly number[];
  readonly rows: readonly (readonly RawScalar[])[];
}

/** A range of numbers, 0 or more; a blank cell counts as 0. */
export const grid = (description: string): Parameter<Grid> =>
  rangeParameter(description, '0 or more; a blank cell counts as 0', (rows, name) => {
    const values: number[] = [];
    for (let row = 0; row < rows.length; row++) {
      const cells = rows[row]!;
      for (let column = 0; column < cells.length; column++) {
        const cell = cells[column];
        // Most cells of a long range are such numbers already; asking the schema for each would be slow.
        const plain = typeof cell === 'number' && cell >= 0 && cell < Infinity;
        const value = plain ? cell : readCell(cell, nameOfCell(name, rows, row, column), zeroOrMore);
        if (isRefused(value)) return value;
        values.push(value);
      }
    }
    return { values, rows };
  });

const NAME = 'a text or a number';

/** A name as a cell says it, without the spaces around it. */
export const name = (description: string): Parameter<string> => ({
  description,
  type: 'any',
  optional: false,
  range: false,
  allowed: NAME,
  read: (raw, key) => {
    const cell = single(raw);
    if (isRows(cell)) return say.oneValueOnly(key, cell);
    const said = saidBy(cell);
    return said === '' ? say.notAllowed(key, cell, NAME) : said;
  },
});

/** What the cells of a range say, row by row. */
export const labels = (description: string): Parameter<readonly (readonly string[])[]> =>
  rangeParameter(description, 'a text, a number or blank', (rows) => rows.map((cells) => cells.map(saidBy)));

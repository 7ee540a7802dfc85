import { beforeAll, describe, expect, test } from 'vitest';

import { functionMetadata } from '../../../addin/build/office/functionMetadata';
import { DEFAULT_BASE } from '../../../addin/build/office/package';
import {
  associateFunctions,
  worksheetFunctions,
  type WorksheetFunction,
} from '../../../addin/hosts/office/worksheetFunctions';
import { feedSpelling } from '../../../addin/workbook/formula/feedSpelling';
import { catalogue, type ExampleEntry, type RawArgument } from '../../../functions';

import { CellError, ErrorCode } from './fake/functionsRuntime';

let functions: Record<string, WorksheetFunction>;
beforeAll(() => {
  Object.assign(globalThis, { CustomFunctions: { Error: CellError, ErrorCode } });
  functions = worksheetFunctions();
});

const metadata = new Map(functionMetadata(DEFAULT_BASE).functions.map((entry) => [entry.id, entry]));

/** A call as the program makes it: what was left out is null, a range is rows, the invocation comes last. */
const called = (name: string, args: readonly unknown[]): unknown => {
  const { parameters } = metadata.get(name)!;
  const given = parameters.map(({ dimensionality }, at) => {
    const arg = args[at] ?? null;
    return dimensionality === 'matrix' && arg !== null && !Array.isArray(arg) ? [[arg]] : arg;
  });
  return functions[name]!(...given, { functionName: name });
};

const refused = (name: string, args: readonly unknown[]): CellError => {
  try {
    called(name, args);
  } catch (error) {
    return error as CellError;
  }
  throw new Error('It was not refused.');
};

const examples = catalogue.flatMap(({ name, examples: all }) =>
  all.map((example, at): [string, string, ExampleEntry] => [name, String(at + 1), example]),
);

describe('a worksheet function', () => {
  test.each(examples)('%s gives the answer of example %s', (name, _at, { args, answer }) => {
    const value = called(name, args as readonly RawArgument[]);
    if (typeof answer === 'number') expect(value).toBeCloseTo(answer, 9);
    else expect(value).toEqual(answer);
  });

  test('tells the sentence of a wrong argument with #VALUE!', () => {
    const error = refused('SECONDS', ['a lot', 'gal', 2.8, 'gal/min']);
    expect(error).toBeInstanceOf(CellError);
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toBe('dose: the text "a lot" was given; use a number, more than 0.');
  });

  test('tells the sentence of something unknown with #N/A', () => {
    const error = refused('SECONDS', [0.7, 'bucket', 2.8, 'gal/min']);
    expect(error.code).toBe('#N/A');
    expect(error.message).toContain('dose_unit: "bucket" is not a known volume unit; use mL, L,');
  });

  test('takes what is left out, blank and 0 of an optional argument for the same', () => {
    const args = [1, 'tbsp/gal', 60, 'gal', 'cup'];
    for (const nothing of [null, undefined, '', 0])
      expect(called('DILUTE', [...args, nothing])).toBeCloseTo(3.75, 9);
  });

  test('takes blank cells of a range for blank', () => {
    expect(called('NEED', [[[2], [null], ['']], [[1], [1], [5]], 'gal', 'gal'])).toBeCloseTo(2, 9);
  });

  test.each<[string, unknown]>([
    ["a function's own error", new CellError('#N/A')],
    ['an error cell', { type: 'Error', errorType: 'NotAvailable', basicType: 'Error', basicValue: '#N/A' }],
  ])('lets %s out as it came in, without a sentence', (_what, value) => {
    const error = refused('SECONDS', [value, 'gal', 2.8, 'gal/min']);
    expect([error.code, error.message]).toEqual(['#N/A', '']);
    const inRange = refused('NEED', [[[value]], [[1]], 'gal', 'gal']);
    expect(inRange.code).toBe('#N/A');
  });

  test.each(['#DIV/0!', '#NUM!', '#NULL!'])('lets %s out as it came in', (code) => {
    expect(refused('SECONDS', [new CellError(code), 'gal', 2.8, 'gal/min']).code).toBe(code);
  });

  test.each(['#REF!', '#NAME?'])('answers %s, which no function may, with a sentence', (code) => {
    const error = refused('SECONDS', [{ basicValue: code }, 'gal', 2.8, 'gal/min']);
    expect([error.code, error.message]).toEqual(['#VALUE!', `An argument is the error ${code}.`]);
  });

  test('takes something that is no value for a wrong one', () => {
    expect(refused('SECONDS', [{ type: 'Entity' }, 'gal', 2.8, 'gal/min']).code).toBe('#VALUE!');
  });
});

describe('the functions are associated', () => {
  test('under the ids of functions.json, all at once', () => {
    let map: Record<string, unknown> = {};
    Object.assign(CustomFunctions, { associate: (given: Record<string, unknown>) => void (map = given) });
    expect(associateFunctions()).toBe(true);
    expect(Object.keys(map).sort()).toEqual([...metadata.keys()].sort());
  });

  test('later, where the program is not there yet', () => {
    const { CustomFunctions: kept } = globalThis as { CustomFunctions?: unknown };
    delete (globalThis as { CustomFunctions?: unknown }).CustomFunctions;
    expect(associateFunctions()).toBe(false);
    Object.assign(globalThis, { CustomFunctions: kept });
  });
});

describe('a FEED formula is read in both forms that files and programs keep', () => {
  test.each([
    ['=FEED.SECONDS(B3,C3)', '=FEED.SECONDS(B3,C3)'],
    ['=_xldudf_FEED_SECONDS(B3,C3)', '=FEED.SECONDS(B3,C3)'],
    ['=_xldudf_feed_seconds(B3,C3)', '=FEED.SECONDS(B3,C3)'],
    ['=feed.seconds (B3)', '=FEED.SECONDS (B3)'],
    ['=INDEX(_xldudf_FEED_FILLPLAN(B3,60,"gal"),2,1)', '=INDEX(FEED.FILLPLAN(B3,60,"gal"),2,1)'],
    ['=IF(A1="_xldudf_FEED_DOSE(",1,FEED.DOSE(1))', '=IF(A1="_xldudf_FEED_DOSE(",1,FEED.DOSE(1))'],
    ["='feed.dose (old)'!A1+_xldudf_FEED_DOSE(1)", "='feed.dose (old)'!A1+FEED.DOSE(1)"],
    ['=MYFEED.DOSE(1)', '=MYFEED.DOSE(1)'],
  ])('%s', (stored, spelled) => {
    expect(feedSpelling(stored)).toBe(spelled);
  });
});

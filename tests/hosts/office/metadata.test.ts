import { describe, expect, test } from 'vitest';

import { metadataFaults } from '../../../addin/build/office/checkMetadata';
import {
  functionMetadata,
  helpAnchor,
  type FunctionMetadata,
} from '../../../addin/build/office/functionMetadata';
import { DEFAULT_BASE } from '../../../addin/build/office/package';
import { supportPage } from '../../../addin/build/office/supportPage';
import { takenNames } from '../../../addin/build/office/takenNames';
import { catalogue } from '../../../functions';
import names from '../../../functions/names.json';

type Draft = { -readonly [Key in keyof FunctionMetadata]: unknown } & {
  functions: Record<string, unknown>[];
};

const faultsOf = (metadata: unknown): string[] =>
  metadataFaults(JSON.stringify(metadata), { builtIn: takenNames });
const good = functionMetadata(DEFAULT_BASE);

/** The metadata after a change to its second function, a fresh copy each time. */
const changed = (change: (entry: Record<string, unknown>, all: Draft) => void): unknown => {
  const draft = structuredClone(good) as unknown as Draft;
  change(draft.functions[1]!, draft);
  return draft;
};
const named = (name: string): unknown => changed((entry) => Object.assign(entry, { id: name, name }));
const parameterWith = (what: object): unknown =>
  changed(({ parameters }) => Object.assign((parameters as object[])[0]!, what));

describe('functions.json', () => {
  test('keeps the documented limits', () => {
    expect(takenNames.size).toBeGreaterThan(500);
    expect(faultsOf(good)).toEqual([]);
  });

  test('tells every function of the catalogue, and none that users may not have in their workbooks', () => {
    expect(good.functions.map(({ id }) => id)).toEqual(catalogue.map(({ name }) => name));
    expect(good.functions.map(({ id }) => id).sort()).toEqual([...names].sort());
  });

  test('tells arguments in their order, which may be left out, and which are ranges', () => {
    for (const [at, { name, parameters, result }] of catalogue.entries()) {
      const told = good.functions[at]!;
      expect(
        told.parameters.map((one) => [one.name, one.optional ?? false, one.dimensionality]),
        name,
      ).toEqual(parameters.map((one) => [one.name, one.optional, one.range ? 'matrix' : 'scalar']));
      expect(told.result.dimensionality, name).toBe(result.kind === 'rows' ? 'matrix' : 'scalar');
    }
  });

  test('leads to the part of the support page that tells of the function', () => {
    const page = supportPage();
    for (const [at, entry] of catalogue.entries()) {
      expect(good.functions[at]!.helpUrl).toBe(`${DEFAULT_BASE}/support.html#${helpAnchor(entry)}`);
      expect(page, entry.name).toContain(`id="${helpAnchor(entry)}"`);
    }
  });

  test.each<[string, unknown, string]>([
    ['a name of two letters', named('AB'), 'a name is 3 to 64 capital letters'],
    ['a name of 65 letters', named('A'.repeat(65)), 'a name is 3 to 64 capital letters'],
    ['a name with an underscore', named('FILL_TIME'), 'a name is 3 to 64 capital letters'],
    ['a name in small letters', named('dilute'), 'a name is 3 to 64 capital letters'],
    ['a name like a cell', named('MIX12'), 'a name must not look like a cell'],
    [
      'a name like a cell of rows and columns',
      named('R1C1'),
      'must not look like a cell of rows and columns',
    ],
    ["a name of the program's own function", named('SUM'), "SUM is a function of the program's own."],
    ['a macro name', named('STEP'), "STEP is a function of the program's own."],
    ['two functions of one name', named(good.functions[0]!.name), `${good.functions[0]!.name} stands twice.`],
    [
      'an id unlike its name',
      changed((entry) => Object.assign(entry, { id: 'OTHER' })),
      'id and name differ',
    ],
    [
      'no description',
      changed((entry) => Object.assign(entry, { description: ' ' })),
      'functions.1.description',
    ],
    [
      'a description of 1025 characters',
      changed((entry) => Object.assign(entry, { description: 'x'.repeat(1025) })),
      'functions.1.description',
    ],
    [
      'a parameter description of 513 characters',
      parameterWith({ description: 'x'.repeat(513) }),
      'functions.1.parameters.0.description',
    ],
    ['an unknown type', parameterWith({ type: 'text' }), 'functions.1.parameters.0.type'],
    [
      'a parameter that takes numbers only',
      parameterWith({ type: 'number' }),
      'functions.1.parameters.0.type',
    ],
    ['an unknown property', parameterWith({ unit: 'gal' }), 'functions.1.parameters.0'],
    [
      'a parameter with a space in its name',
      parameterWith({ name: 'the rate' }),
      'functions.1.parameters.0.name',
    ],
    [
      'two parameters of one name',
      changed(({ parameters }) => Object.assign((parameters as object[])[0]!, { name: 'volume' })),
      'two parameters have one name',
    ],
    [
      'an optional parameter before others',
      parameterWith({ optional: true }),
      'an optional parameter stands before one that is not',
    ],
    [
      '129 parameters',
      changed((entry) =>
        Object.assign(entry, {
          parameters: Array.from({ length: 129 }, (_, at) => ({
            name: `p${at}`,
            description: 'x',
            type: 'any',
            dimensionality: 'scalar',
          })),
        }),
      ),
      'functions.1.parameters',
    ],
    [
      'help over http',
      changed((entry) => Object.assign(entry, { helpUrl: 'http://localhost/x' })),
      'functions.1.helpUrl',
    ],
    [
      'errors that do not reach the functions',
      changed((_entry, all) => delete all.allowErrorForDataTypeAny),
      'allowErrorForDataTypeAny',
    ],
    ['no functions', changed((_entry, all) => void (all.functions = [])), 'functions'],
  ])('with %s is refused', (_what, metadata, fault) => {
    expect(faultsOf(metadata).join('\n')).toContain(fault);
  });

  test('that is not JSON is refused', () => {
    expect(metadataFaults('{', { builtIn: takenNames })).toEqual(['functions.json is not JSON.']);
  });
});

import ts from 'typescript';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const guarded = ['tests/core/forbidden.ts', 'tests/workbook/forbiddenFields.ts'];
const file = `${root}${guarded[0]}`;
const quantity = `${root}addin/core/measuring/quantity.ts`;
const sourceOf = (path: string) => ts.sys.readFile(path)!;
const directivesIn = (path: string) => sourceOf(path).match(/@ts-expect-error/g)!.length;
const directives = directivesIn(file);

/** Complaints of the compiler about forbidden calls, with some files read as given here. */
const complaints = (changed: Readonly<Record<string, string>> = {}, path = file): number[] => {
  const { config } = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, include: [], files: [path] }, ts.sys, root);
  const host = ts.createCompilerHost(options);
  const read = host.readFile.bind(host);
  const parse = host.getSourceFile.bind(host);
  host.getSourceFile = (name, target, ...rest) =>
    changed[name] === undefined
      ? parse(name, target, ...rest)
      : ts.createSourceFile(name, changed[name], target);
  host.readFile = (name) => changed[name] ?? read(name);
  const program = ts.createProgram([path], options, host);
  return ts.getPreEmitDiagnostics(program, program.getSourceFile(path)).map((diagnostic) => diagnostic.code);
};

const UNUSED_DIRECTIVE = 2578;

test.each(guarded)('every forbidden call of %s is refused by the compiler', { timeout: 60_000 }, (name) => {
  const path = `${root}${name}`;
  expect(complaints({}, path)).toEqual([]);
  const allowed = sourceOf(path).replaceAll('@ts-expect-error', '');
  expect(complaints({ [path]: allowed }, path)).toHaveLength(directivesIn(path));
});

test('without dimensions on quantities the compiler would let them through', { timeout: 60_000 }, () => {
  const bare = ts.sys
    .readFile(quantity)!
    .replace(
      /(export type Quantity<Dimension extends string> = ).*/,
      '$1number & { readonly [dimension]?: Dimension | string };',
    );
  const codes = complaints({ [quantity]: bare });
  // Only a bare mass or number in place of an amount is refused for another reason.
  expect(codes.filter((code) => code === UNUSED_DIRECTIVE)).toHaveLength(directives - 2);
  expect(codes).toHaveLength(directives - 2);
});

import ts from 'typescript';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const file = `${root}tests/core/forbidden.ts`;
const quantity = `${root}addin/core/measuring/quantity.ts`;
const source = ts.sys.readFile(file)!;
const directives = source.match(/@ts-expect-error/g)!.length;

/** Complaints of the compiler about the forbidden calls, with some files read as given here. */
const complaints = (changed: Readonly<Record<string, string>> = {}): number[] => {
  const { config } = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, include: [], files: [file] }, ts.sys, root);
  const host = ts.createCompilerHost(options);
  const read = host.readFile.bind(host);
  const parse = host.getSourceFile.bind(host);
  host.getSourceFile = (name, target, ...rest) =>
    changed[name] === undefined
      ? parse(name, target, ...rest)
      : ts.createSourceFile(name, changed[name], target);
  host.readFile = (name) => changed[name] ?? read(name);
  const program = ts.createProgram([file], options, host);
  return ts.getPreEmitDiagnostics(program, program.getSourceFile(file)).map((diagnostic) => diagnostic.code);
};

const UNUSED_DIRECTIVE = 2578;

test('every forbidden call is refused by the compiler', { timeout: 60_000 }, () => {
  expect(complaints()).toEqual([]);
  expect(complaints({ [file]: source.replaceAll('@ts-expect-error', '') })).toHaveLength(directives);
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

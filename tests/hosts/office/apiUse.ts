import { dirname } from 'node:path';
import ts from 'typescript';

import { setsIn, typesFile } from './fake/apiMembers';

/** A place in the code where a member of the platform is used, and the set that brings it. */
export interface ApiUse {
  readonly file: string;
  readonly member: string;
  readonly set: string;
}

/** Sets that the types leave to the platform's pages: https://learn.microsoft.com/javascript/api/requirement-sets/common/dialog-api-requirement-sets */
const UNTOLD: Readonly<Record<string, string>> = { 'UI.displayDialogAsync': 'DialogApi 1.1' };

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  lib: ['lib.es2023.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
  strict: true,
  skipLibCheck: true,
  resolveJsonModule: true,
  noEmit: true,
  types: ['office-js', 'custom-functions-runtime', 'node'],
};

/**
 * Every use of the platform's object model in the files: members read, set, called, taken apart or named in a load.
 *
 * @param files paths of the files to look at
 * @param more  texts of files that are not there, by path, to try what is found
 */
export const apiUses = (files: readonly string[], more: Readonly<Record<string, string>> = {}): ApiUse[] => {
  const host = ts.createCompilerHost(OPTIONS);
  const { readFile, fileExists } = host;
  host.readFile = (path) => more[path] ?? readFile(path);
  host.fileExists = (path) => path in more || fileExists(path);
  const { getSourceFile } = host;
  host.getSourceFile = (path, ...rest) =>
    path in more
      ? ts.createSourceFile(path, more[path]!, ts.ScriptTarget.ES2022, true)
      : getSourceFile(path, ...rest);
  const program = ts.createProgram({ rootNames: [...files, ...Object.keys(more)], options: OPTIONS, host });
  const checker = program.getTypeChecker();
  const platform = new Set([dirname(typesFile)]);
  const uses: ApiUse[] = [];

  const note = (file: string, symbol: ts.Symbol | undefined): void => {
    for (const declaration of symbol?.declarations ?? []) {
      const source = declaration.getSourceFile();
      const path = source.fileName;
      if (![...platform].some((folder) => path.startsWith(folder)) && !/custom-functions-runtime/.test(path))
        continue;
      const comment = source.text.slice(declaration.getFullStart(), declaration.getStart());
      const parent = declaration.parent as ts.Node & { readonly name?: ts.Identifier };
      const member = `${parent.name?.text ?? ''}.${symbol!.name}`;
      const set = setsIn(comment).set ?? UNTOLD[member];
      if (set) uses.push({ file, member, set });
    }
  };

  /** Members named in a load: "items/name,format/columnWidth". */
  const noteLoad = (file: string, call: ts.CallExpression, target: ts.Expression): void => {
    const [given] = call.arguments;
    if (!given || !ts.isStringLiteralLike(given)) return;
    for (const path of given.text.split(',')) {
      let type: ts.Type | undefined = checker.getTypeAtLocation(target);
      for (const name of path.trim().split('/')) {
        const symbol: ts.Symbol | undefined = type?.getProperty(name);
        note(file, symbol);
        const reached: ts.Type | undefined = symbol && checker.getTypeOfSymbolAtLocation(symbol, call);
        type = reached && (checker.getIndexTypeOfType(reached, ts.IndexKind.Number) ?? reached);
      }
    }
  };

  const visit = (file: string, node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(file, checker.getSymbolAtLocation(node.name));
    if (ts.isObjectBindingPattern(node)) {
      const type = checker.getTypeAtLocation(node);
      for (const element of node.elements)
        note(file, type.getProperty((element.propertyName ?? element.name).getText()));
    }
    if (ts.isPropertyAssignment(node) || ts.isShorthandPropertyAssignment(node)) {
      const type = checker.getContextualType(node.parent as ts.ObjectLiteralExpression);
      note(file, type?.getProperty(node.name.getText()));
    }
    if (
      ts.isCallExpression(node) &&
      ts.isPropertyAccessExpression(node.expression) &&
      node.expression.name.text === 'load'
    )
      noteLoad(file, node, node.expression.expression);
    node.forEachChild((child) => visit(file, child));
  };
  for (const file of [...files, ...Object.keys(more)]) {
    const source = program.getSourceFile(file);
    if (!source) throw new Error(`${file} was not read.`);
    visit(file, source);
  }
  return uses;
};

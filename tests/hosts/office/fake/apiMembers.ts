import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import ts from 'typescript';

/** A member of a class of the platform's object model. */
export interface ApiMember {
  readonly kind: 'property' | 'method' | 'events';
  /** Set and version that bring it, such as "ExcelApi 1.9"; undefined where the types do not say. */
  readonly set?: string;
  /** The same for writing, where it differs. */
  readonly setToWrite?: string;
  readonly readonly: boolean;
  /** The class of what it gives, where that is a class of the model. */
  readonly gives?: string;
}

export type ApiMembers = Readonly<Record<string, Readonly<Record<string, ApiMember>>>>;

const require = createRequire(import.meta.url);
/** The platform's own types; every member's comment tells the set that brings it. */
export const typesFile = require.resolve('@types/office-js/index.d.ts');

const SET = /\[Api set: (\w+) ([\d.]+)([^\]]*)\]/;
const TO_WRITE = /(\d+\.\d+) for set/;
/** How the members that all programs share tell theirs; a set of one version only is told without it. */
const COMMON_SET = /\*\*Requirement set\*\*: \{@link [^|}]*\| (?!Not in a set)(\w+)(?: ([\d.]+))?\}/;

/** The sets that a comment of the types tells. */
export const setsIn = (comment: string): Pick<ApiMember, 'set' | 'setToWrite'> => {
  const [, name, told, rest = ''] = SET.exec(comment) ?? [];
  if (!name) {
    const [, common, version = '1.1'] = COMMON_SET.exec(comment) ?? [];
    return common === undefined ? {} : { set: `${common} ${version}` };
  }
  const write = TO_WRITE.exec(rest)?.[1];
  return { set: `${name} ${told}`, ...(write ? { setToWrite: `${name} ${write}` } : {}) };
};

const commentOf = (node: ts.Node, text: string): string => text.slice(node.getFullStart(), node.getStart());

const isReadonly = (node: ts.PropertyDeclaration): boolean =>
  (node.modifiers ?? []).some(({ kind }) => kind === ts.SyntaxKind.ReadonlyKeyword);

/** Classes of the Excel object model with their members, as the platform's types declare them. */
export const apiMembers = (): ApiMembers => {
  const text = readFileSync(typesFile, 'utf8');
  const start = text.indexOf('declare namespace Excel {');
  const excel = text.slice(start, text.indexOf('\ndeclare namespace ', start));
  const file = ts.createSourceFile('excel.d.ts', excel, ts.ScriptTarget.Latest, true);
  const classes: Record<string, Record<string, ApiMember>> = {};
  const names = new Set<string>();
  const eachClass = (visit: (one: ts.ClassDeclaration, name: string) => void): void => {
    const [space] = file.statements;
    const body = space && ts.isModuleDeclaration(space) ? space.body : undefined;
    if (!body || !ts.isModuleBlock(body)) throw new Error('The types of the object model could not be read.');
    for (const one of body.statements) if (ts.isClassDeclaration(one) && one.name) visit(one, one.name.text);
  };
  eachClass((_one, name) => names.add(name));
  const givenBy = (type: ts.TypeNode | undefined): string | undefined => {
    const name = type?.getText(file).replace(/^Excel\./, '');
    return name !== undefined && names.has(name) ? name : undefined;
  };
  eachClass((one, className) => {
    const members: Record<string, ApiMember> = {};
    for (const member of one.members) {
      if (!member.name) continue;
      const name = member.name.getText(file);
      const sets = setsIn(commentOf(member, excel));
      if (ts.isMethodDeclaration(member)) {
        // The first of several ways to call a method has the earliest set.
        members[name] ??= { kind: 'method', readonly: true, ...sets, gives: givenBy(member.type) };
      } else if (ts.isPropertyDeclaration(member)) {
        const events = member.type?.getText(file).includes('EventHandlers<') ?? false;
        const kind = events ? 'events' : 'property';
        members[name] = { kind, readonly: isReadonly(member), ...sets, gives: givenBy(member.type) };
      }
    }
    classes[className] = members;
  });
  return classes;
};

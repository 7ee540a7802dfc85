import * as z from 'zod';

import { operation } from '../../hosts/calc/wire/operations';
import { nativeView, piece } from '../../hosts/calc/wire/pieces';
import { request } from '../../hosts/calc/wire/requests';

/** What the component hears: alternatives that a word of the message tells apart. */
const FAMILIES = [
  { name: 'OPERATIONS', ends: 'Operation', tag: 'op', union: operation },
  { name: 'PIECES', ends: 'Piece', tag: 'kind', union: piece },
  { name: 'REQUESTS', ends: 'Request', tag: 'what', union: request },
] as const;

const capital = (word: string): string => word[0]!.toUpperCase() + word.slice(1);

const wordOf = (shape: z.ZodObject, tag: string): string => String((shape.shape[tag] as z.ZodLiteral).value);

/** A shape without what may be left out and what may not be changed. */
const bare = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodOptional || schema instanceof z.ZodReadonly
    ? bare(schema.unwrap() as z.ZodType)
    : schema;

const elementOf = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodArray ? bare(schema.element as z.ZodType) : schema;

const idOf = (schema: z.ZodType): string | undefined => schema.meta()?.id;

/** The record, or the alternatives, that a field holds: one, several, or one beside plain words. */
const heldBy = (field: z.ZodType): string | undefined => {
  const inner = elementOf(bare(field));
  const family = FAMILIES.find(({ union }) => union === inner);
  if (family) return family.name;
  if (inner instanceof z.ZodUnion)
    return (inner.options as z.ZodType[]).map(heldBy).find((held) => held !== undefined);
  return idOf(inner);
};

const typeOf = (field: z.ZodType): string => {
  if (field instanceof z.ZodOptional) return `Optional[${typeOf(bare(field))}]`;
  const schema = bare(field);
  const family = FAMILIES.find(({ union }) => union === schema);
  // In quotes, as it comes after those that hold it.
  if (family) return JSON.stringify(family.ends);
  const id = idOf(schema);
  if (id !== undefined) return id;
  if (schema instanceof z.ZodArray) return `List[${typeOf(schema.element as z.ZodType)}]`;
  if (schema instanceof z.ZodTuple)
    return `Tuple[${(schema.def.items as z.ZodType[]).map(typeOf).join(', ')}]`;
  if (schema instanceof z.ZodUnion) return `Union[${(schema.options as z.ZodType[]).map(typeOf).join(', ')}]`;
  if (schema instanceof z.ZodRecord) return `Dict[str, ${typeOf(schema.valueType as z.ZodType)}]`;
  if (schema instanceof z.ZodString || schema instanceof z.ZodEnum) return 'str';
  if (schema instanceof z.ZodBoolean) return 'bool';
  if (schema instanceof z.ZodNumber) return schema.isInt ? 'int' : 'float';
  if (schema instanceof z.ZodNull) return 'None';
  return 'Any';
};

/** What may be left out comes last, as Python wants it; the word that tells the record is the record's own. */
const record = (name: string, schema: z.ZodObject): string => {
  const fields = Object.entries(schema.shape as Record<string, z.ZodType>);
  const rank = (field: z.ZodType): number =>
    field instanceof z.ZodOptional ? 2 : field instanceof z.ZodLiteral ? 1 : 0;
  const lines = fields
    .sort(([, a], [, b]) => rank(a) - rank(b))
    .map(([key, field]) => {
      if (field instanceof z.ZodLiteral) return `    ${key}: str = ${JSON.stringify(field.value)}`;
      return `    ${key}: ${typeOf(field)}${field instanceof z.ZodOptional ? ' = None' : ''}`;
    });
  return `class ${name}(NamedTuple):\n${lines.join('\n')}\n`;
};

interface Named {
  readonly name: string;
  readonly schema: z.ZodObject;
}

/** Records with those that they hold before them. */
const withHeld = (named: Named, found: Map<string, z.ZodObject>): void => {
  if (found.has(named.name)) return;
  for (const field of Object.values(named.schema.shape as Record<string, z.ZodType>)) {
    const parts = [elementOf(bare(field))].flatMap((inner) =>
      inner instanceof z.ZodUnion ? (inner.options as z.ZodType[]) : [inner],
    );
    for (const inner of parts) {
      const id = idOf(inner);
      if (id !== undefined && inner instanceof z.ZodObject) withHeld({ name: id, schema: inner }, found);
    }
  }
  found.set(named.name, named.schema);
};

const READ = `
def read(kind, told):
    """What was told, as a record of the kind, or of the kind among several that it names itself.

    TypeError where something is missing, or is none of the record's own.
    """
    if isinstance(told, list):
        return [read(kind, one) for one in told]
    if not isinstance(told, dict):
        return told
    if isinstance(kind, dict):
        kind = kind[told[_TAGS[id(kind)]]]
    held = _HELD.get(kind, {})
    return kind(**{name: read(held[name], value) if name in held else value for name, value in told.items()})
`;

/** The component's module of records: one for each thing that the engine tells it, as the engine's schemas say. */
export const wireRecords = (): string => {
  const found = new Map<string, z.ZodObject>();
  const families = FAMILIES.map(({ name, ends, tag, union }) => {
    const members = (union.options as readonly z.ZodObject[]).map((schema) => ({
      word: wordOf(schema, tag),
      name: `${capital(wordOf(schema, tag))}${ends}`,
      schema,
    }));
    members.forEach((member) => withHeld(member, found));
    return { name, ends, tag, members };
  });
  withHeld({ name: 'View', schema: nativeView }, found);
  const held = [...found].flatMap(([name, schema]) => {
    const inner = Object.entries(schema.shape as Record<string, z.ZodType>).flatMap(([key, field]) => {
      const of = heldBy(field);
      return of === undefined ? [] : [`"${key}": ${of}`];
    });
    return inner.length === 0 ? [] : [`    ${name}: {${inner.join(', ')}},`];
  });
  const tables = families.map(
    ({ name, ends, members }) =>
      `${name} = {\n${members.map((one) => `    "${one.word}": ${one.name},`).join('\n')}\n}\n` +
      `${ends} = Union[${members.map((one) => one.name).join(', ')}]\n`,
  );
  return [
    '"""What the engine tells, as records. Made from the engine\'s own description when the extension is built."""\n',
    'from typing import Any, Dict, List, NamedTuple, Optional, Tuple, Union\n',
    ...[...found].map(([name, schema]) => `\n${record(name, schema)}`),
    '',
    ...tables,
    `_TAGS = {${families.map(({ name, tag }) => `id(${name}): "${tag}"`).join(', ')}}\n`,
    `_HELD = {\n${held.join('\n')}\n}\n`,
    READ,
  ].join('\n');
};

import { knownUnits } from '../core';
import type { ExampleEntry, FunctionEntry, ParameterEntry, ResultValue } from '../../functions';
import { formulaOf, NAMESPACE, sections } from '../../functions';

const INTRODUCTION = `# The worksheet functions

This page is made from the catalogue in \`functions/entries\` by \`node addin/build/reference.mjs\`; change it there.

Every function stands in the namespace \`${NAMESPACE}\`: write \`=${NAMESPACE}.DILUTE(…)\`. Arguments in [brackets] may be left out.

## What holds for all of them

- An argument that may be left out counts as left out where it is 0, blank or empty text.
- A blank cell where a number must stand counts as 0. TRUE and FALSE count as 1 and 0.
- A number written as text is text, and \`#VALUE!\`.
- A range of one cell is its value. A larger range where one value belongs is \`#VALUE!\`.
- \`#VALUE!\` says that an argument is of the wrong kind or out of its range, \`#N/A\` that something is not known. Each comes with a sentence that names the argument, what was given and what is allowed.
- An error value given as an argument comes out unchanged.
- Results have full precision; the cell's format rounds them.
- Nothing is guessed: a volume becomes a mass by the product's \`density\` only.`;

const unitRow = (kind: string, tokens: string): string => `| ${kind} | ${tokens} |`;

const codes = (tokens: readonly string[]): string => tokens.map((token) => `\`${token}\``).join(' ');

const units = (): string =>
  [
    '## Units',
    '',
    'Units are text. Case and spaces around them do not matter. A US gallon is `gal`, an imperial one `imp gal`. The tablespoon is the US one: 16 to a cup, 256 to a gallon.',
    '',
    '| kind | units |',
    '| --- | --- |',
    unitRow('volume', codes(knownUnits('volume'))),
    unitRow('mass', codes(knownUnits('mass'))),
    unitRow(
      'rate',
      'a volume or mass `/` a volume, with a count if need be: `tbsp/gal` `mL/L` `g/L` `oz/100 gal`',
    ),
    unitRow('flow', `${codes(knownUnits('flow'))}; \`gpm\` and \`gph\` are \`gal/min\` and \`gal/h\``),
    unitRow('length', codes(knownUnits('length'))),
    unitRow('temperature', codes(knownUnits('temperature'))),
  ].join('\n');

const signature = (entry: FunctionEntry): string =>
  `${NAMESPACE}.${entry.name}(${entry.parameters
    .map((parameter) => (parameter.optional ? `[${parameter.name}]` : parameter.name))
    .join(', ')})`;

/** A list of units is in the table above; here the kind is enough. */
const allowed = (parameter: ParameterEntry): string => {
  const kind = parameter.units ? parameter.allowed.split(':')[0]! : parameter.allowed;
  const range = parameter.range ? `a cell or a range, each ${kind}` : kind;
  return parameter.optional ? `${range}; left out: ${parameter.otherwise}` : range;
};

const answer = (value: ResultValue): string => {
  if (typeof value === 'number') return String(Number(value.toPrecision(10)));
  if (typeof value === 'string') return `"${value}"`;
  return `{${value.map((row) => row.join(',')).join(';')}}`;
};

const exampleLine = (entry: FunctionEntry, example: ExampleEntry): string =>
  `- \`${formulaOf(entry.name, example.args)}\` gives \`${answer(example.answer)}\``;

const functionText = (entry: FunctionEntry): string =>
  [
    `### ${entry.name}`,
    '',
    `${entry.summary}.`,
    '',
    `\`${signature(entry)}\``,
    '',
    '| argument | what it is | allowed |',
    '| --- | --- | --- |',
    ...entry.parameters.map(
      (parameter) => `| \`${parameter.name}\` | ${parameter.description} | ${allowed(parameter)} |`,
    ),
    '',
    `Result: ${entry.result.description}.`,
    '',
    ...(entry.errors.length > 0 ? [...entry.errors.map((error) => `- ${error}`), ''] : []),
    'Examples:',
    '',
    ...entry.examples.map((example) => exampleLine(entry, example)),
    '',
    `Source: ${entry.source}.`,
  ].join('\n');

/** functions/REFERENCE.md as Markdown, before it is laid out. */
export const referencePage = (): string =>
  [
    INTRODUCTION,
    units(),
    ...sections.flatMap(({ title, functions }) => [`## ${title}`, ...functions.map(functionText)]),
  ].join('\n\n');

import { formulaOf, type FunctionEntry, type ParameterEntry } from '../../../functions';
import { sections } from '../../../functions';
import names from '../../hosts/calc/names.json';

import type { PackageFiles } from './oxt';
import { element, text, type Node } from '../xml';

const STYLE =
  'body{font:16px/1.5 system-ui,sans-serif;max-width:46rem;margin:2rem auto;padding:0 1rem;color:#262229;background:#fbfaf8}' +
  'h1,h2,h3{line-height:1.25;color:#6a3470}code{background:#f3ebf4;padding:.1em .3em}' +
  'table{border-collapse:collapse;width:100%}td,th{text-align:left;vertical-align:top;border-top:1px solid #dfdae2;padding:.3rem .5rem}';

const page = (title: string, ...inside: readonly Node[]): string =>
  `<!doctype html>\n${element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('title', {}, text(title)),
      element('style', {}, STYLE),
    ),
    element('body', {}, element('h1', {}, text(title)), ...inside),
  )}\n`;

const paragraph = (words: string): Node => element('p', {}, text(words));

/** A formula as Calc shows it: semicolons between arguments. */
const inCalc = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) => (index % 2 ? part : part.replaceAll(';', '|').replaceAll(',', ';')))
    .join('');

const parameterRow = ({ name, description, allowed, optional, otherwise }: ParameterEntry): Node =>
  element(
    'tr',
    {},
    element('td', {}, element('code', {}, text(name))),
    element(
      'td',
      {},
      text(
        `${description}. ${allowed}${optional ? `; may be left out${otherwise ? `: ${otherwise}` : ''}` : ''}.`,
      ),
    ),
  );

const functionPart = (entry: FunctionEntry, namespace: string): Node =>
  [
    element('h3', { id: entry.name }, text(`${namespace}.${entry.name}`)),
    paragraph(`${entry.summary}. ${entry.result.description}.`),
    element('table', {}, ...entry.parameters.map(parameterRow)),
    ...entry.examples.map(({ args, answer }) =>
      element(
        'p',
        {},
        element('code', {}, text(inCalc(formulaOf(entry.name, args)))),
        text(
          ` gives ${typeof answer === 'object' ? answer.map((row) => row.join(', ')).join('; ') : answer}`,
        ),
      ),
    ),
    ...entry.errors.map(paragraph),
    paragraph(`Source: ${entry.source}`),
  ].join('\n');

/** How the pane is used, in the order in which a grower needs it. */
const STEPS: readonly (readonly [string, string])[] = [
  [
    'Garden',
    'Choose the sheet with your list of roses, look at how it was read, and make the plant inventory. Your own sheet stays as it is.',
  ],
  ['Rig', 'Say how big the barrel is, and time a bucket at the wand.'],
  ['Mix', 'Say what goes into the barrel, at the rates of the labels.'],
  ['Round', 'Read how many fills it takes and how long, make the card and print it.'],
  ['Log', 'After the round, write down what you used.'],
  ['Tank what-if', 'Lay barrels of several sizes side by side before you buy one.'],
];

const troubles: readonly (readonly [string, string])[] = [
  [
    'Cells show #N/A and the pane says that Node.js is missing',
    `Install Node.js ${names.leastNode} or newer, or choose the node program in the menu Rose feeding, then choose Calculate again.`,
  ],
  [
    'A cell shows an error',
    'Select it: the foot of the pane says why, and tells the computation step by step where there is a value.',
  ],
  [
    'The sheet is opened where the extension is missing',
    'Formulas stay in the file and compute again when the extension is back. Until then cells may show #NAME?.',
  ],
];

const titled = (pairs: readonly (readonly [string, string])[]): Node =>
  pairs.map(([title, words]) => element('h3', {}, text(title)) + paragraph(words)).join('\n');

/** Help that is read in the browser: how to begin, and every function. */
export const helpPages = (catalogue: readonly FunctionEntry[], namespace: string): PackageFiles => {
  const known = new Set(catalogue.map(({ name }) => name));
  return {
    'help/index.html': page(
      'Wandcount in LibreOffice Calc',
      paragraph('The pane is the deck Wandcount in the sidebar; the menu Rose feeding has the same actions.'),
      element('p', {}, element('a', { href: 'functions.html' }, text('The worksheet functions'))),
      element('h2', {}, text('The way to a round')),
      titled(STEPS),
      element('h2', {}, text('When something is amiss')),
      titled(troubles),
    ),
    'help/functions.html': page(
      `The worksheet functions of ${namespace}`,
      ...sections.flatMap(({ title, functions }) => [
        element('h2', {}, text(title)),
        ...functions.filter(({ name }) => known.has(name)).map((entry) => functionPart(entry, namespace)),
      ]),
    ),
  };
};

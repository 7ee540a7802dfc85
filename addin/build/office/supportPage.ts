import { formulaOf, NAMESPACE, sections, type FunctionEntry, type ResultValue } from '../../../functions';
import { PANE_BUTTON, RIBBON } from '../../hosts/office/ribbon';
import { product } from '../product.mjs';
import { element, text, type Node } from '../xml';

import { helpAnchor } from './functionMetadata';

const STYLE =
  ':root{color-scheme:light dark}body{max-width:44rem;margin:2rem auto;padding:0 1rem;font:1rem/1.5 system-ui,sans-serif}' +
  'code{font-family:ui-monospace,monospace;overflow-wrap:anywhere}dt{margin-top:1rem;font-weight:600}dd{margin:.25rem 0 0 1rem}';

const leaf = (name: string, words: string): Node => element(name, {}, text(words));

const shown = (answer: ResultValue): string =>
  typeof answer === 'object' ? answer.map((row) => row.join(', ')).join('; ') : String(answer);

const described = (entry: FunctionEntry): Node[] => {
  const [example] = entry.examples;
  const words = entry.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name));
  return [
    element('dt', { id: helpAnchor(entry) }, leaf('code', `${NAMESPACE}.${entry.name}(${words.join(', ')})`)),
    leaf('dd', `${entry.summary}. ${entry.result.description}.`),
    ...entry.parameters.map(({ name, description, allowed }) =>
      leaf('dd', `${name}: ${description}; ${allowed}.`),
    ),
    ...(example
      ? [
          element(
            'dd',
            {},
            leaf('code', formulaOf(entry.name, example.args)),
            text(` gives ${shown(example.answer)}`),
          ),
        ]
      : []),
  ];
};

/** The page that the program opens for help: where to press, what to do when something is wrong, every function. */
export const supportPage = (): string => {
  const body = element(
    'body',
    {},
    leaf('h1', product.title),
    leaf('p', product.description),
    leaf('h2', 'Where to begin'),
    leaf(
      'p',
      `Press “${PANE_BUTTON.label}” on the Home tab. The pane leads from your list of roses to the card you take outdoors.`,
    ),
    element('ul', {}, ...RIBBON.map(({ label, tip }) => leaf('li', `${label}: ${tip}`))),
    leaf('h2', 'When a cell shows an error'),
    leaf(
      'p',
      'Point at the cell’s error flag: the sentence there names the argument, what was given and what is allowed.',
    ),
    leaf(
      'p',
      'A cell that shows #NAME? was calculated while Wandcount was not there. Press “Repair formulas” once it is.',
    ),
    leaf('h2', 'When nothing is written'),
    leaf(
      'p',
      'A cell that is being edited, a protected sheet and a workbook opened for reading only take no changes. The pane says which it is, and the workbook stays as it was.',
    ),
    leaf('h2', 'The functions'),
    ...sections.flatMap(({ title, functions }) => [
      leaf('h3', title),
      element('dl', {}, ...functions.flatMap(described)),
    ]),
  );
  const head = element(
    'head',
    {},
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    leaf('title', `${product.title}: help`),
    element('style', {}, STYLE),
  );
  return `<!doctype html>\n${element('html', { lang: 'en' }, head, body)}\n`;
};

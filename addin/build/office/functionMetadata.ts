import { catalogue, type FunctionEntry, type ParameterEntry } from '../../../functions';

import { addressOf, FILES } from './package';

/** What a program reads of the functions before it runs any; https://learn.microsoft.com/office/dev/add-ins/excel/custom-functions-json */
export interface FunctionMetadata {
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description: string;
    readonly helpUrl: string;
    readonly result: { readonly type: string; readonly dimensionality: string };
    readonly parameters: readonly {
      readonly name: string;
      readonly description: string;
      readonly type: 'any';
      readonly dimensionality: string;
      readonly optional?: true;
    }[];
  }[];
}

const RESULTS = {
  number: { type: 'number', dimensionality: 'scalar' },
  text: { type: 'string', dimensionality: 'scalar' },
  rows: { type: 'any', dimensionality: 'matrix' },
} as const;

const sentence = ({ description, allowed, optional, otherwise }: ParameterEntry): string =>
  [
    description,
    allowed,
    ...(optional ? [otherwise ? `left out: ${otherwise}` : 'may be left out'] : []),
  ].join('; ');

// Every parameter takes anything, so that a wrong kind reaches the function, which says what is wrong with it.
const parameter = (entry: ParameterEntry): FunctionMetadata['functions'][number]['parameters'][number] => ({
  name: entry.name,
  description: sentence(entry),
  type: 'any',
  dimensionality: entry.range ? 'matrix' : 'scalar',
  ...(entry.optional ? { optional: true } : {}),
});

/** Where the support page tells of a function. */
export const helpAnchor = ({ name }: Pick<FunctionEntry, 'name'>): string => name.toLowerCase();

/**
 * functions.json: the catalogue as the program's formula editor shows it.
 *
 * @param base the address that the package is served from
 */
export const functionMetadata = (base: string): FunctionMetadata => ({
  allowErrorForDataTypeAny: true,
  functions: catalogue.map((entry) => ({
    id: entry.name,
    name: entry.name,
    description: `${entry.summary}: ${entry.result.description}`,
    helpUrl: `${addressOf(base, FILES.support)}#${helpAnchor(entry)}`,
    result: RESULTS[entry.result.kind],
    parameters: entry.parameters.map(parameter),
  })),
});

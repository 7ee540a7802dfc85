import type { FunctionEntry, ParameterEntry } from '../../../functions';

import { group, member, property, registryFile, worded } from './registry';

const MODULES = ['org', 'wandcount'];
const INTERFACE = 'XFeed';

/** Words that the interface language keeps for itself. */
const RESERVED = new Set(
  (
    'any attribute boolean bound byte char const constants context default double enum exception float get hyper ' +
    'in inout interface long maybeambiguous maybedefault maybevoid module needs observes oneway optional out ' +
    'property published raises readonly removable sequence service set short singleton string struct switch ' +
    'transient type typedef union unsigned void'
  ).split(' '),
);

/** The interface language knows no underscores. */
const identifier = (name: string): string => {
  const joined = name.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());
  if (!/^[a-z][A-Za-z0-9]*$/.test(joined) || RESERVED.has(joined))
    throw new Error(`“${name}” cannot stand in a Calc registration.`);
  return joined;
};

/** The name of a function's method. Calc builds the function's name from it: FEED and this, in capitals. */
export const methodOf = ({ name }: Pick<FunctionEntry, 'name'>): string => identifier(name.toLowerCase());

const ANY = 'any';
const ROWS = 'sequence< sequence< any > >';

const declared = (entry: FunctionEntry): string => {
  const result = entry.result.kind === 'rows' ? ROWS : ANY;
  const parameters = entry.parameters.map(({ name }) => `[in] any ${identifier(name)}`);
  return `      ${result} ${methodOf(entry)}(${parameters.join(', ')});`;
};

/**
 * The type description of the functions, which LibreOffice reads as it stands. Every parameter is of any type, so
 * that it may be left out and that a wrong kind reaches the function, which says what is wrong.
 */
export const typeDescription = (catalogue: readonly FunctionEntry[]): string =>
  [
    ...MODULES.map((name) => `module ${name} {`),
    `    interface ${INTERFACE}: com::sun::star::uno::XInterface {`,
    ...catalogue.map(declared),
    '    };',
    ...MODULES.map(() => '};'),
    '',
  ].join('\n');

const described = ({ description, optional, otherwise, allowed }: ParameterEntry): string =>
  [
    description,
    allowed,
    ...(optional ? [otherwise ? `left out: ${otherwise}` : 'may be left out'] : []),
  ].join('; ');

/** Names, arguments and descriptions for the function wizard. */
export const functionRegistration = (catalogue: readonly FunctionEntry[], namespace: string): string =>
  registryFile(
    'CalcAddIns',
    'org.openoffice.Office',
    group(
      'AddInInfo',
      member(
        namespace,
        group(
          'AddInFunctions',
          ...catalogue.map((entry) =>
            member(
              methodOf(entry),
              worded('DisplayName', `${namespace}.${entry.name}`),
              worded('Description', `${entry.summary}: ${entry.result.description}`),
              property('Category', 'Add-In'),
              group(
                'Parameters',
                ...entry.parameters.map((parameter) =>
                  member(
                    identifier(parameter.name),
                    worded('DisplayName', parameter.name),
                    worded('Description', described(parameter)),
                  ),
                ),
              ),
            ),
          ),
        ),
      ),
    ),
  );

/** What the component needs to know of each function: its method, its name, whether its answer is rows. */
export const functionList = (catalogue: readonly FunctionEntry[]): string =>
  `${JSON.stringify(
    catalogue.map((entry) => ({
      method: methodOf(entry),
      name: entry.name,
      rows: entry.result.kind === 'rows',
    })),
    undefined,
    1,
  )}\n`;

import * as z from 'zod';

/** Longest a function's id and name may be; the shortest limit that the platform's own descriptions give. */
const NAME = z
  .string()
  .regex(/^[A-Z][A-Z0-9]{2,63}$/, 'a name is 3 to 64 capital letters and digits, a letter first')
  .refine((name) => !/^[A-Z]{1,3}[0-9]{1,7}$/.test(name), 'a name must not look like a cell')
  .refine((name) => !/^R[0-9]*C[0-9]*$/.test(name), 'a name must not look like a cell of rows and columns');

const text = (longest: number) => z.string().trim().min(1).max(longest);

const PARAMETER = z.strictObject({
  name: z.string().regex(/^[a-z][a-z0-9_]{0,63}$/, 'a parameter is named in 1 to 64 small letters'),
  description: text(512),
  type: z.literal('any'),
  dimensionality: z.enum(['scalar', 'matrix']),
  optional: z.literal(true).optional(),
});

const FUNCTION = z
  .strictObject({
    id: NAME,
    name: NAME,
    description: text(1024),
    helpUrl: z.url({ protocol: /^https$/ }).max(2048),
    result: z.strictObject({
      type: z.enum(['number', 'string', 'any']),
      dimensionality: z.enum(['scalar', 'matrix']),
    }),
    parameters: z.array(PARAMETER).max(128),
  })
  .refine(({ id, name }) => id === name, 'id and name differ')
  .refine(
    ({ parameters }) => new Set(parameters.map(({ name }) => name)).size === parameters.length,
    'two parameters have one name',
  )
  .refine(
    ({ parameters }) =>
      parameters.findIndex(({ optional }) => optional) < 0 ||
      parameters.slice(parameters.findIndex(({ optional }) => optional)).every(({ optional }) => optional),
    'an optional parameter stands before one that is not',
  );

const METADATA = z.strictObject({
  allowErrorForDataTypeAny: z.literal(true),
  functions: z.array(FUNCTION).min(1).max(20_000),
});

/** Functions that a namespace or a name must not repeat are the program's own. */
export interface TakenNames {
  readonly builtIn: ReadonlySet<string>;
}

/**
 * What is wrong with functions.json, a sentence each, by the strictest of the limits that the platform's descriptions
 * give (https://learn.microsoft.com/office/dev/add-ins/excel/custom-functions-json, custom-functions-naming, and the
 * unified manifest's schema v1.30, extensionFunction).
 */
export const metadataFaults = (json: string, { builtIn }: TakenNames): string[] => {
  let given: unknown;
  try {
    given = JSON.parse(json);
  } catch {
    return ['functions.json is not JSON.'];
  }
  const parsed = METADATA.safeParse(given);
  if (!parsed.success)
    return parsed.error.issues.map(
      ({ path, message }) => `${path.join('.') || 'functions.json'}: ${message}.`,
    );
  const names = parsed.data.functions.map(({ name }) => name);
  return [
    ...names.filter((name, at) => names.indexOf(name) !== at).map((name) => `${name} stands twice.`),
    ...names.filter((name) => builtIn.has(name)).map((name) => `${name} is a function of the program's own.`),
  ];
};

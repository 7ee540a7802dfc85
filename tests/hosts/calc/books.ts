import { calcWorkbook } from '../../../addin/hosts/calc/calcWorkbook';
import { readAnswer } from '../../../addin/hosts/calc/wire/requests';
import type { CellState, Outline, Workbook } from '../../../addin/workbook/port';
import type { Office } from './office';

/** The workbook port of a document of Calc. */
export const workbookOf = (office: Office, doc: string): Workbook =>
  calcWorkbook(async (request) => readAnswer(request.what, await office.ask({ do: 'job', doc, request })));

/**
 * Formulas without what two programs spell in two ways: quotes round plain sheet names, spaces, brackets of TRUE,
 * exponents.
 */
export const plainFormula = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) =>
      index % 2
        ? part
        : part
            .replace(/'([A-Za-z_][A-Za-z0-9_.]*)'!/g, '$1!')
            .replace(/\s+/g, '')
            .replace(/(?<![\w$.])\d+(?:\.\d+)?(?:E[+-]?\d+)?(?![\w.])/gi, (number) => String(Number(number)))
            .replace(/\b(TRUE|FALSE)\(\)/gi, '$1'),
    )
    .join('');

/** Every cell in use by "Sheet!row,column", and the names. */
export interface Contents {
  readonly cells: ReadonlyMap<string, CellState>;
  readonly names: Outline['names'];
  readonly sheets: readonly string[];
}

export const contentsOf = async (workbook: Workbook): Promise<Contents> => {
  const outline = await workbook.outline();
  const used = outline.sheets
    .filter(({ rows }) => rows > 0)
    .map(({ name, rows, columns }) => ({ sheet: name, row: 0, column: 0, rows, columns }));
  const { blocks } = await workbook.read(used);
  const cells = new Map<string, CellState>();
  for (const { area, cells: lines } of blocks)
    lines.forEach((line, row) =>
      line.forEach((state, column) => {
        if (state.value === null && state.formula === undefined && state.error === undefined) return;
        const formula = state.formula === undefined ? {} : { formula: plainFormula(state.formula) };
        cells.set(`${area.sheet}!${row},${column}`, { ...state, ...formula });
      }),
    );
  return { cells, names: outline.names, sheets: outline.sheets.map(({ name }) => name) };
};

const alike = (a: CellState['value'], b: CellState['value']): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a))
    : a === b || (a ?? '') === (b ?? '');

/** Cells that differ in value, formula or error, told for a person to read. */
export const differences = (wanted: Contents, found: Contents): string[] => {
  const places = new Set([...wanted.cells.keys(), ...found.cells.keys()]);
  const none: CellState = { value: null };
  return [...places].flatMap((place) => {
    const [a, b] = [wanted.cells.get(place) ?? none, found.cells.get(place) ?? none];
    const same = alike(a.value, b.value) && a.formula === b.formula && a.error === b.error;
    return same ? [] : [`${place}: ${JSON.stringify(a)} became ${JSON.stringify(b)}`];
  });
};

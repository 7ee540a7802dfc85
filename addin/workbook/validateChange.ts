import { overlap, sameArea } from './address';
import { STYLES, type Area, type CellInput, type Change, type ChartEdit, type Edit } from './change';
import { WorkbookError, type Outline } from './port';

/** The grid of the .xlsx format, which every host reads and writes. */
export const GRID = { rows: 1_048_576, columns: 16_384 } as const;
/** Longest text and longest formula of an .xlsx cell, in characters. */
export const LONGEST_TEXT = 32_767;
export const LONGEST_FORMULA = 8_192;
/** Longest list of given entries that an .xlsx file holds, commas included. */
const LONGEST_LIST = 255;
const WIDEST_COLUMN = 255;

const FORBIDDEN_IN_SHEET_NAMES = /[:\\/?*[\]]/;
const WORKBOOK_NAME = /^[A-Za-z_][A-Za-z0-9_.]*$/;
const LOOKS_LIKE_A_CELL = /^([A-Za-z]{1,3}\d+|[Rr]\d*([Cc]\d*)?|[Cc]\d*)$/;

/** Why a sheet may not have this name, or undefined where it may. */
export const sheetNameRefusal = (name: string): string | undefined => {
  if (name.trim() === '') return 'A sheet needs a name.';
  if (name.length > 31)
    return `The sheet name “${name}” has ${name.length} characters; at most 31 are allowed.`;
  if (FORBIDDEN_IN_SHEET_NAMES.test(name))
    return `The sheet name “${name}” has a character that is not allowed there; leave out : \\ / ? * [ and ].`;
  if (name.startsWith("'") || name.endsWith("'"))
    return `The sheet name “${name}” begins or ends with an apostrophe, which is not allowed.`;
  return undefined;
};

/** Why a workbook name may not be defined, or undefined where it may. */
export const workbookNameRefusal = (name: string): string | undefined =>
  name.length <= LONGEST_LIST && WORKBOOK_NAME.test(name) && !LOOKS_LIKE_A_CELL.test(name)
    ? undefined
    : `“${name}” cannot be a workbook name; use letters, digits, dots and underscores, a letter first, and nothing that reads like a cell.`;

const isCount = (n: number, least: number): boolean => Number.isSafeInteger(n) && n >= least;

const inputRefusal = (input: CellInput | undefined): string | undefined => {
  if (typeof input === 'number' && !Number.isFinite(input))
    return `A cell cannot hold ${input}; only finite numbers are written.`;
  if (typeof input === 'string' && input.length > LONGEST_TEXT)
    return `A text of ${input.length} characters is too long for a cell; at most ${LONGEST_TEXT} are allowed.`;
  if (input === null || input === undefined || typeof input !== 'object') return undefined;
  if (!input.formula.startsWith('=') || input.formula.length < 2)
    return `A formula begins with “=”; “${input.formula}” does not.`;
  return input.formula.length > LONGEST_FORMULA
    ? `A formula of ${input.formula.length} characters is too long; at most ${LONGEST_FORMULA} are allowed.`
    : undefined;
};

interface Known {
  readonly sheets: Set<string>;
  readonly lowerCase: Set<string>;
  readonly merges: Area[];
}

const sheetRefusal = (known: Known, sheet: string): string | undefined =>
  known.sheets.has(sheet) ? undefined : `There is no sheet “${sheet}”.`;

const areaRefusal = (known: Known, area: Area): string | undefined => {
  const noSheet = sheetRefusal(known, area.sheet);
  if (noSheet) return noSheet;
  const whole =
    isCount(area.row, 0) && isCount(area.column, 0) && isCount(area.rows, 1) && isCount(area.columns, 1);
  return whole && area.row + area.rows <= GRID.rows && area.column + area.columns <= GRID.columns
    ? undefined
    : `An area of ${area.rows} rows and ${area.columns} columns at row ${area.row + 1}, column ${area.column + 1} does not fit on the sheet “${area.sheet}”.`;
};

const cellRefusal = (known: Known, sheet: string, row: number, column: number): string | undefined =>
  areaRefusal(known, { sheet, row, column, rows: 1, columns: 1 });

const first = (...refusals: readonly (string | undefined)[]): string | undefined =>
  refusals.find((refusal) => refusal !== undefined);

const unless = (allowed: boolean, refusal: string): string | undefined => (allowed ? undefined : refusal);

const writeRefusal = (known: Known, edit: Edit & { kind: 'write' }): string | undefined => {
  const { sheet, row, column, cells } = edit;
  const columns = cells[0]?.length ?? 0;
  if (columns === 0) return 'There is nothing to write: give at least one row and one column of cells.';
  if (cells.some((line) => line.length !== columns))
    return 'The cells to write do not form a rectangle: every row needs the same number of columns.';
  const refusal = areaRefusal(known, { sheet, row, column, rows: cells.length, columns });
  if (refusal) return refusal;
  for (const line of cells)
    for (const input of line) {
      const inCell = inputRefusal(input);
      if (inCell) return inCell;
    }
  return undefined;
};

const listRefusal = (known: Known, edit: Edit & { kind: 'list' }): string | undefined => {
  const area = areaRefusal(known, edit.area);
  if (area) return area;
  if (!('length' in edit.source))
    return first(
      areaRefusal(known, edit.source),
      unless(
        edit.source.rows === 1 || edit.source.columns === 1,
        'A list of allowed entries is one row or one column of cells.',
      ),
    );
  const source = edit.source;
  const odd = source.find((entry) => entry.trim() === '' || entry.includes(','));
  return first(
    unless(source.length > 0, 'A list of allowed entries needs at least one entry.'),
    unless(odd === undefined, `“${odd}” cannot be an allowed entry: an entry has text and no comma.`),
    unless(
      source.join(',').length <= LONGEST_LIST,
      `A list of allowed entries has at most ${LONGEST_LIST} characters; put a longer one on a sheet.`,
    ),
  );
};

const mergeRefusal = (known: Known, area: Area): string | undefined => {
  const refusal = areaRefusal(known, area);
  if (refusal) return refusal;
  if (area.rows * area.columns < 2) return 'A merge needs at least two cells.';
  return unless(
    known.merges.every((merge) => sameArea(merge, area) || !overlap(merge, area)),
    `Cells at row ${area.row + 1}, column ${area.column + 1} of “${area.sheet}” are merged already with others.`,
  );
};

const chartRefusal = (known: Known, edit: ChartEdit): string | undefined => {
  const cells = edit.labels.rows * edit.labels.columns;
  const areas = [edit.labels, ...edit.series.map((series) => series.values)];
  return first(
    cellRefusal(known, edit.sheet, edit.row, edit.column),
    unless(edit.id.trim() !== '', 'A chart needs an id.'),
    unless(edit.series.length > 0, 'A chart needs at least one series of values.'),
    ...areas.map((area) => areaRefusal(known, area)),
    unless(
      areas.every((area) => area.rows === 1 || area.columns === 1),
      'The labels and values of a chart are one row or one column of cells each.',
    ),
    unless(
      areas.every((area) => area.rows * area.columns === cells),
      'The labels and values of a chart have the same number of cells.',
    ),
  );
};

const editRefusal = (known: Known, edit: Edit): string | undefined => {
  switch (edit.kind) {
    case 'addSheet':
      return first(
        sheetNameRefusal(edit.sheet),
        unless(
          !known.lowerCase.has(edit.sheet.toLowerCase()),
          `There is a sheet “${edit.sheet}” already (capital and small letters count as the same).`,
        ),
      );
    case 'write':
      return writeRefusal(known, edit);
    case 'format':
      return first(
        areaRefusal(known, edit.area),
        unless(edit.format !== '', 'A number format cannot be empty.'),
      );
    case 'width':
      return first(
        areaRefusal(known, {
          sheet: edit.sheet,
          row: 0,
          column: edit.column,
          rows: 1,
          columns: edit.columns,
        }),
        unless(
          edit.characters > 0 && edit.characters <= WIDEST_COLUMN,
          `A column ${edit.characters} characters wide is not allowed; give more than 0 and at most ${WIDEST_COLUMN}.`,
        ),
      );
    case 'style':
      return first(
        areaRefusal(known, edit.area),
        unless(STYLES.includes(edit.style), `“${edit.style}” is not a known style.`),
      );
    case 'wrap':
      return areaRefusal(known, edit.area);
    case 'merge':
      return mergeRefusal(known, edit.area);
    case 'freeze':
      return first(
        sheetRefusal(known, edit.sheet),
        unless(
          isCount(edit.rows, 0) && isCount(edit.columns, 0),
          `${edit.rows} rows and ${edit.columns} columns cannot be frozen.`,
        ),
      );
    case 'list':
      return listRefusal(known, edit);
    case 'name':
      return first(workbookNameRefusal(edit.name), areaRefusal(known, edit.area));
    case 'note':
      return first(
        cellRefusal(known, edit.sheet, edit.row, edit.column),
        unless(edit.text.trim() !== '', 'A note needs a text.'),
        inputRefusal(edit.text),
      );
    case 'chart':
      return chartRefusal(known, edit);
    case 'page':
      return first(
        areaRefusal(known, edit.area),
        unless(isCount(edit.repeatRows, 0), `${edit.repeatRows} rows cannot be repeated on each page.`),
        unless(
          edit.pagesHigh === undefined || isCount(edit.pagesHigh, 1),
          `A sheet cannot be fitted to ${edit.pagesHigh} pages.`,
        ),
      );
    case 'activate':
      return cellRefusal(known, edit.sheet, edit.row, edit.column);
    default:
      return `“${(edit as { kind: string }).kind}” is not a known kind of edit.`;
  }
};

const knownOf = (outline: Pick<Outline, 'sheets'>): Known => {
  const names = outline.sheets.map((sheet) => sheet.name);
  return {
    sheets: new Set(names),
    lowerCase: new Set(names.map((name) => name.toLowerCase())),
    merges: outline.sheets.flatMap((sheet) => sheet.merges),
  };
};

/**
 * Why a workbook cannot take a change, in a plain sentence, or undefined where it can. The edits are followed in
 * their order, so that one may use a sheet that an earlier one adds.
 *
 * @example changeRefusal({ title: 'Try', edits: [{ kind: 'addSheet', sheet: 'a/b' }] }, outline)
 * // 'The sheet name “a/b” has a character that is not allowed there; leave out : \ / ? * [ and ].'
 */
export const changeRefusal = (change: Change, outline: Pick<Outline, 'sheets'>): string | undefined => {
  const known = knownOf(outline);
  for (const edit of change.edits) {
    const refusal = editRefusal(known, edit);
    if (refusal) return refusal;
    if (edit.kind === 'addSheet') {
      known.sheets.add(edit.sheet);
      known.lowerCase.add(edit.sheet.toLowerCase());
    }
    if (edit.kind === 'merge') known.merges.push(edit.area);
  }
  return undefined;
};

/** Every host calls this before it touches the workbook, so that all refuse the same with the same sentence. */
export const validateChange = (change: Change, outline: Pick<Outline, 'sheets'>): void => {
  const refusal = changeRefusal(change, outline);
  if (refusal) throw new WorkbookError(refusal);
};

/** Every host calls this before it reads, for the same reason. */
export const validateAreas = (areas: readonly Area[], outline: Pick<Outline, 'sheets'>): void => {
  const known = knownOf(outline);
  for (const area of areas) {
    const refusal = areaRefusal(known, area);
    if (refusal) throw new WorkbookError(refusal);
  }
};

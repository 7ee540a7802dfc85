import { PAGE_MARGIN, type Area, type CellInput, type Change, type Edit } from '../../workbook/change';
import { moveFormulaDown } from '../../workbook/memory/shift';
import { respelled } from '../../workbook/formula/tokens';
import { lookOf, SERIES_COLOURS, styleName } from './looks';
import type { Operation } from './wire/operations';
import type { WireArea } from './wire/parts';

export const wireArea = ({ sheet, row, column, rows, columns }: Area): WireArea => [
  sheet,
  row,
  column,
  rows,
  columns,
];

/** A chart's size, hundredths of a millimetre. */
const CHART = { width: 12_000, height: 7_500 };

/** Calc's parser reads a bare TRUE as the number 1; with its brackets it stays a truth value. */
const withTruths = (formula: string): string =>
  respelled(formula, ({ kind, text }) =>
    kind === 'name' && /^(TRUE|FALSE)$/i.test(text) ? `${text}()` : text,
  );

type Kind = 'values' | 'truths' | 'formulas' | 'left';

const kindOf = (input: CellInput | undefined): Kind => {
  if (input === undefined) return 'left';
  if (typeof input === 'boolean') return 'truths';
  return typeof input === 'object' && input !== null ? 'formulas' : 'values';
};

interface Run {
  readonly kind: Kind;
  readonly column: number;
  readonly columns: number;
}

const runsOf = (line: readonly CellInput[]): Run[] => {
  const runs: Run[] = [];
  line.forEach((input, column) => {
    const kind = kindOf(input);
    const last = runs.at(-1);
    if (last?.kind === kind) runs[runs.length - 1] = { ...last, columns: last.columns + 1 };
    else runs.push({ kind, column, columns: 1 });
  });
  return runs;
};

/** Fewer rows than this are written as fast as they are copied. */
const COPIED = 10;

const copiedDown = (cells: readonly (readonly string[])[]): boolean =>
  cells.length >= COPIED &&
  cells[0]!.every((first, column) =>
    cells.every((line, below) => line[column] === moveFormulaDown(first, below)),
  );

const block = (edit: Edit & { kind: 'write' }, first: number, count: number, run: Run): Operation[] => {
  const lines = edit.cells
    .slice(first, first + count)
    .map((line) => line.slice(run.column, run.column + run.columns));
  const area: WireArea = [edit.sheet, edit.row + first, edit.column + run.column, count, run.columns];
  switch (run.kind) {
    case 'left':
      return [];
    case 'truths':
      return [{ op: 'truths', area, cells: lines as boolean[][] }];
    case 'formulas': {
      const cells = lines.map((line) =>
        line.map((input) => withTruths((input as { formula: string }).formula)),
      );
      return [
        copiedDown(cells) ? { op: 'filled', area, formulas: cells[0]! } : { op: 'formulas', area, cells },
      ];
    }
    case 'values':
      return [{ op: 'values', area, cells: lines as (string | number | null)[][] }];
  }
};

/** A write as blocks of one kind each: rows whose cells are of the same kinds go together. */
const writes = (edit: Edit & { kind: 'write' }): Operation[] => {
  const operations: Operation[] = [];
  const patterns = edit.cells.map((line) => line.map(kindOf).join());
  for (let first = 0; first < patterns.length;) {
    let end = first + 1;
    while (patterns[end] === patterns[first]) end += 1;
    for (const run of runsOf(edit.cells[first]!)) operations.push(...block(edit, first, end - first, run));
    first = end;
  }
  return operations;
};

const entriesOf = (source: readonly string[]): string =>
  source.map((entry) => `"${entry.replaceAll('"', '""')}"`).join(';');

const listOf = ({ area, source, message }: Edit & { kind: 'list' }): Operation => ({
  op: 'list',
  area: wireArea(area),
  message,
  ...('length' in source ? { entries: entriesOf(source) } : { source: wireArea(source) }),
});

const planned = (edit: Edit): Operation[] => {
  switch (edit.kind) {
    case 'addSheet':
      return [{ op: 'sheet', sheet: edit.sheet }];
    case 'write':
      return writes(edit);
    case 'format':
      return [{ op: 'format', area: wireArea(edit.area), format: edit.format }];
    case 'style':
      return [
        { op: 'look', area: wireArea(edit.area), name: styleName(edit.style), look: lookOf(edit.style) },
      ];
    case 'width':
      return [
        {
          op: 'width',
          sheet: edit.sheet,
          column: edit.column,
          columns: edit.columns,
          characters: edit.characters,
        },
      ];
    case 'wrap':
    case 'merge':
      return [{ op: edit.kind, area: wireArea(edit.area) }];
    case 'list':
      return [listOf(edit)];
    case 'name':
      return [{ op: 'name', name: edit.name, area: wireArea(edit.area) }];
    case 'note':
      return [{ op: 'note', sheet: edit.sheet, row: edit.row, column: edit.column, text: edit.text }];
    case 'chart': {
      const { id, sheet, row, column, type, title, finding } = edit;
      const series = edit.series.map(({ values }, index) => ({
        values: wireArea(values),
        colour: SERIES_COLOURS[index % SERIES_COLOURS.length]!,
      }));
      return [
        {
          op: 'chart',
          id,
          sheet,
          row,
          column,
          ...CHART,
          type,
          title,
          finding,
          labels: wireArea(edit.labels),
          series,
        },
      ];
    }
    case 'page': {
      const { landscape, repeatRows, pagesHigh = 0 } = edit;
      return [
        {
          op: 'page',
          area: wireArea(edit.area),
          name: `Wandcount ${edit.area.sheet}`,
          landscape,
          repeatRows,
          pagesHigh,
          margin: PAGE_MARGIN,
        },
      ];
    }
    case 'freeze':
      return [{ op: 'freeze', sheet: edit.sheet, rows: edit.rows, columns: edit.columns }];
    case 'activate':
      return [{ op: 'active', sheet: edit.sheet, row: edit.row, column: edit.column }];
  }
};

/** What Calc keeps out of its undo comes last, when nothing else can fail any more. */
const KEPT_OUT: readonly Operation['op'][] = ['page', 'freeze', 'active'];

/** A change as the component's own steps. */
export const plannedWrites = (change: Change): readonly Operation[] => {
  const operations = change.edits.flatMap(planned);
  return [
    ...operations.filter(({ op }) => !KEPT_OUT.includes(op)),
    ...KEPT_OUT.flatMap((kept) => operations.filter(({ op }) => op === kept)),
  ];
};

import type { Field, Table } from '../../../taskpane/view';
import type { NativeChoice, Piece } from './wire/pieces';

type Entry = Extract<Field, { kind: 'number' | 'text' | 'date' | 'time' }>;

const unitOf = ({ unit, label, disabled }: Entry): { unit?: string | NativeChoice } => {
  if (unit === undefined) return {};
  if (typeof unit === 'string') return { unit };
  const { id, value, choices } = unit;
  const name = `Unit of ${label}`;
  return {
    unit: { key: id, field: id, label: name, spoken: name, value, values: choices, shown: choices, disabled },
  };
};

/** What a field is called where it is met alone: a table's heading is on many fields, and a unit stands beside. */
const spoken = (field: Field): string =>
  'unit' in field && typeof field.unit === 'string' ? `${field.label}, ${field.unit}` : field.label;

const control = (field: Field, indent: number, label: string): Piece => {
  const { id, value, disabled, help } = field;
  const shared = { key: id, field: id, indent, label, spoken: spoken(field), disabled };
  switch (field.kind) {
    case 'choice':
      return {
        ...shared,
        kind: 'choice',
        value,
        values: field.choices.map((choice) => choice.value),
        shown: field.choices.map((choice) => choice.label),
      };
    case 'toggle':
      return { kind: 'toggle', key: id, field: id, indent, label, on: value === 'yes', disabled };
    default:
      return { ...shared, kind: 'entry', value, help, words: field.kind === 'text', ...unitOf(field) };
  }
};

/**
 * A field: its label with the control, why its value is not accepted, and its help.
 *
 * @param label another label than the field's own, as a table's heading
 */
export const fieldPieces = (field: Field, indent: number, label = field.label): Piece[] => [
  control(field, indent, label),
  ...(field.error === undefined
    ? []
    : [{ kind: 'text', key: `${field.id} error`, indent, tone: 'error', text: field.error } as const]),
  ...(field.help === undefined
    ? []
    : [{ kind: 'text', key: `${field.id} help`, indent, tone: 'quiet', text: field.help } as const]),
];

const caption = ({ id, caption: text }: Table, indent: number): Piece => ({
  kind: 'text',
  key: `${id} caption`,
  indent,
  tone: 'heading',
  text,
});

const wordOf = (table: Table, row: number): string | undefined =>
  table.marked?.find((mark) => mark.row === row)?.word;

/** Keeps a number and its unit on one line. */
const together = (words: string): string => words.replace(/(\d) (?=[\d%\p{L}])/gu, '$1\u00a0');

/** A table of words and numbers. */
const readingPieces = (table: Table, indent: number): Piece[] => [
  caption(table, indent),
  {
    kind: 'table',
    key: table.id,
    indent,
    label: table.caption,
    columns: table.columns.map(({ label, numeric }) => ({ label, numeric: numeric ?? false })),
    rows: table.rows.map((row, index) => {
      const word = wordOf(table, index);
      const cells = row.map((cell) => together(typeof cell === 'string' ? cell : cell.value));
      return word === undefined
        ? cells
        : cells.map((cell, column) => (column === 0 ? `${cell} – ${word}` : cell));
    }),
  },
];

/** A table to type in: in a narrow pane each row stands by itself, its name and numbers first, then its fields. */
const cardPieces = (table: Table, indent: number): Piece[] => [
  caption(table, indent),
  ...table.rows.flatMap((row, index): Piece[] => {
    const told = (wanted: (column: number) => boolean): string[] =>
      row.flatMap((cell, column) => {
        if (typeof cell !== 'string' || cell === '' || !wanted(column)) return [];
        const heading = table.columns[column]?.label ?? '';
        return column === 0 || heading === '' ? [cell] : [`${heading}: ${cell}`];
      });
    const first = (column: number): boolean => column === 0 || (table.columns[column]?.numeric ?? false);
    const name = [...told(first), wordOf(table, index) ?? ''].filter((word) => word !== '').join(' – ');
    const rest = told((column) => !first(column)).join(' – ');
    const key = `${table.id} ${index}`;
    const fields = row.flatMap((cell, column) =>
      typeof cell === 'string'
        ? []
        : fieldPieces(cell, indent + 1, table.columns[column]?.label || cell.label),
    );
    return [
      ...(name === '' ? [] : [{ kind: 'text', key, indent, tone: 'answer', text: name } as const]),
      ...fields,
      ...(rest === ''
        ? []
        : [{ kind: 'text', key: `${key} rest`, indent: indent + 1, tone: 'quiet', text: rest } as const]),
    ];
  }),
];

export const tablePieces = (table: Table, indent: number): Piece[] =>
  table.rows.some((row) => row.some((cell) => typeof cell !== 'string'))
    ? cardPieces(table, indent)
    : readingPieces(table, indent);

import { h, type JSX } from 'preact';

import type { Field, Table } from '../view';

import { bareField } from './field';
import { documentId, type Send } from './hands';

// From this many columns on a table may be wider than the pane; its own strip then scrolls, and the keyboard must reach it.
const REACHED = 4;
// From this many on its numbers stay on one line and the strip is meant to scroll.
const WIDE = 6;

const holdsFields = ({ rows }: Table): boolean =>
  rows.some((row) => row.some((cell) => typeof cell !== 'string'));

const cellOf = (
  table: Table,
  send: Send,
  cell: string | Field,
  column: number,
  word: string | undefined,
): JSX.Element => {
  const numeric = table.columns[column]?.numeric ? 'numeric' : undefined;
  const tag = column === 0 && word !== undefined ? h('span', { class: 'tag' }, word) : undefined;
  if (typeof cell !== 'string') return h('td', { key: column, class: numeric }, bareField(cell, send), tag);
  return column === 0
    ? h('th', { key: column, scope: 'row', class: numeric }, cell, tag)
    : h('td', { key: column, class: numeric }, cell);
};

/** A table with its caption; marked rows carry the word that says why. */
export const tableBlock = (table: Table, send: Send): JSX.Element => {
  const captionId = documentId(table.id, 'caption');
  const words = new Map((table.marked ?? []).map(({ row, word }) => [row, word]));
  const strip =
    table.columns.length >= REACHED && !holdsFields(table)
      ? { tabIndex: 0, role: 'region', 'aria-labelledby': captionId }
      : {};
  return h(
    'div',
    { key: table.id, class: `table-strip${table.columns.length >= WIDE ? ' wide' : ''}`, ...strip },
    h(
      'table',
      null,
      h('caption', { id: captionId }, table.caption),
      h(
        'thead',
        null,
        h(
          'tr',
          null,
          table.columns.map(({ label, numeric }, column) =>
            h('th', { key: column, scope: 'col', class: numeric ? 'numeric' : undefined }, label),
          ),
        ),
      ),
      h(
        'tbody',
        null,
        table.rows.map((row, index) =>
          h(
            'tr',
            { key: index, class: words.has(index) ? 'marked' : undefined },
            row.map((cell, column) => cellOf(table, send, cell, column, words.get(index))),
          ),
        ),
      ),
    ),
  );
};

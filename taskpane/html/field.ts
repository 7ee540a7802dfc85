import { h, type JSX } from 'preact';

import type { Field } from '../view';

import { documentId, type Send } from './hands';

type Entry = Extract<Field, { kind: 'number' | 'text' | 'date' | 'time' }>;
type Choice = Extract<Field, { kind: 'choice' }>;
type Toggle = Extract<Field, { kind: 'toggle' }>;

const typed = (event: Event): string => (event.currentTarget as HTMLInputElement | HTMLSelectElement).value;

const describedBy = (field: Field): string | undefined => {
  const ids = [
    'unit' in field && typeof field.unit === 'string' ? documentId(field.id, 'unit') : '',
    field.error === undefined ? '' : documentId(field.id, 'error'),
    field.help === undefined ? '' : documentId(field.id, 'help'),
  ].filter((id) => id !== '');
  return ids.length > 0 ? ids.join(' ') : undefined;
};

const shared = (field: Field, bare: boolean) => ({
  id: documentId(field.id),
  disabled: field.disabled,
  'aria-label': bare ? field.label : undefined,
  'aria-invalid': field.error === undefined ? undefined : ('true' as const),
  'aria-describedby': describedBy(field),
});

const select = (field: Choice, send: Send, bare: boolean): JSX.Element =>
  h(
    'select',
    {
      ...shared(field, bare),
      value: field.value,
      onChange: (event: Event) => send({ kind: 'type', field: field.id, value: typed(event) }),
    },
    field.choices.map(({ value, label }) =>
      h('option', { key: value, value, selected: value === field.value }, label),
    ),
  );

const unitOf = (field: Entry, send: Send): JSX.Element | undefined => {
  const { unit } = field;
  if (unit === undefined) return undefined;
  if (typeof unit === 'string') return h('span', { class: 'unit', id: documentId(field.id, 'unit') }, unit);
  const choices = unit.choices.map((token) => ({ value: token, label: token }));
  const label = `Unit of ${field.label}`;
  return select(
    { kind: 'choice', id: unit.id, label, value: unit.value, choices, disabled: field.disabled },
    send,
    true,
  );
};

// A number is typed as text: a browser's own number field throws away what it cannot read.
const input = (field: Entry, send: Send, bare: boolean): JSX.Element =>
  h('input', {
    ...shared(field, bare),
    type: field.kind === 'number' ? 'text' : field.kind,
    inputMode: field.kind === 'number' ? 'decimal' : undefined,
    autoComplete: 'off',
    spellcheck: false,
    value: field.value,
    onInput: (event: Event) => send({ kind: 'type', field: field.id, value: typed(event) }),
  });

const box = (field: Toggle, send: Send, bare: boolean): JSX.Element =>
  h('input', {
    ...shared(field, bare),
    type: 'checkbox',
    checked: field.value === 'yes',
    onChange: (event: Event) => {
      const { checked } = event.currentTarget as HTMLInputElement;
      send({ kind: 'type', field: field.id, value: checked ? 'yes' : '' });
    },
  });

const entry = (field: Field, send: Send, bare: boolean): JSX.Element => {
  if (field.kind === 'choice') return select(field, send, bare);
  if (field.kind === 'toggle') return box(field, send, bare);
  return h('span', { class: 'entry' }, input(field, send, bare), unitOf(field, send));
};

const remarks = (field: Field): (JSX.Element | undefined)[] => [
  field.error === undefined
    ? undefined
    : h('span', { key: 'error', class: 'error', id: documentId(field.id, 'error') }, field.error),
  field.help === undefined
    ? undefined
    : h('span', { key: 'help', class: 'help', id: documentId(field.id, 'help') }, field.help),
];

/** A field with its label, unit, help and the reason why its value is not accepted. */
export const labelledField = (field: Field, send: Send): JSX.Element =>
  h(
    'div',
    { key: field.id, class: `field ${field.kind}${field.error === undefined ? '' : ' wrong'}` },
    h('label', { for: documentId(field.id) }, field.label),
    entry(field, send, false),
    remarks(field),
  );

/** A field in a table's cell: its label is read out, not shown. */
export const bareField = (field: Field, send: Send): JSX.Element =>
  h(
    'span',
    { key: field.id, class: `bare ${field.kind}${field.error === undefined ? '' : ' wrong'}` },
    entry(field, send, true),
    remarks(field),
  );

import { MEANINGS, MEANING_LABELS, SIZE_CLASSES, type ColumnGuess } from '../../addin/core';
import { columnLetters } from '../../addin/workbook/address';
import {
  BED_ABOVE_FIELD,
  COLUMN_FIELD,
  HEADER_FIELD,
  NO_HEADER,
  SIZE_FIELD,
  type Adoption,
  type ChosenList,
} from '../adoption';
import { askChoice, askToggle } from '../asked';
import { plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Button, Block, Field } from '../view';

import { fold } from './fold';

const HEADER_ROWS_OFFERED = 12;
const UNREAD_SHOWN = 50;
const UNSURE = 0.6;

const shortened = (text: string, most = 40): string =>
  text.length > most ? `${text.slice(0, most - 1)}…` : text;

const rowWords = ({ cells }: ChosenList, row: number): string => {
  const filled = (cells.cells[row] ?? []).flatMap((cell) =>
    cell === null || cell === '' ? [] : [String(cell)],
  );
  return shortened(`Row ${row + 1}: ${filled.join(', ') || 'blank'}`);
};

const headerField = (state: PaneState, list: ChosenList, { proposal }: Adoption): Field => {
  const rows = Array.from(
    { length: Math.min(HEADER_ROWS_OFFERED, list.cells.cells.length) },
    (_, row) => row,
  );
  const found = proposal.headerRow;
  const offered = found === null || rows.includes(found) ? rows : [...rows, found];
  return askChoice(state, {
    section: 'garden',
    id: HEADER_FIELD,
    label: 'The headings stand in',
    known: found === null ? NO_HEADER : String(found),
    choices: [
      ...offered.map((row) => ({ value: String(row), label: rowWords(list, row) })),
      { value: NO_HEADER, label: 'The list has no headings' },
    ],
  }).field;
};

const columnName = ({ header, index }: ColumnGuess): string =>
  header === '' ? `Column ${columnLetters(index)}` : header;

const columnRow = (state: PaneState, guess: ColumnGuess): (string | Field)[] => [
  columnName(guess),
  askChoice(state, {
    section: 'garden',
    id: `${COLUMN_FIELD}${guess.index}`,
    label: `${columnName(guess)} holds`,
    known: guess.meaning,
    choices: MEANINGS.map((meaning) => ({ value: meaning, label: MEANING_LABELS[meaning] })),
  }).field,
  shortened(guess.samples.join(', '), 60),
];

const columnsBlock = (state: PaneState, { proposal }: Adoption): Block => ({
  kind: 'table',
  table: {
    id: 'adopt.columns',
    caption: 'What each column holds',
    columns: [{ label: 'Column' }, { label: 'Holds' }, { label: 'For example' }],
    rows: proposal.columns.map((guess) => columnRow(state, guess)),
    marked: proposal.columns.flatMap(({ confidence }, row) =>
      confidence < UNSURE ? [{ row, word: 'please check' }] : [],
    ),
  },
});

const askedBlock = (state: PaneState, { asked }: Adoption): Block[] =>
  asked.length === 0
    ? []
    : [
        {
          kind: 'table',
          table: {
            id: 'adopt.sizes',
            caption: 'Which size are these?',
            columns: [{ label: 'The list says' }, { label: 'Plants', numeric: true }, { label: 'Size' }],
            rows: asked.map(({ key, given, plants }) => [
              given,
              String(plants),
              askChoice(state, {
                section: 'garden',
                id: `${SIZE_FIELD}${key}`,
                label: `Size of ${given}`,
                known: '',
                choices: [{ value: '', label: 'Choose' }, ...SIZE_CLASSES],
              }).field,
            ]),
          },
        },
      ];

const sizesBlock = ({ inventory }: Adoption): Block => ({
  kind: 'table',
  table: {
    id: 'adopt.found',
    caption: 'Sizes found',
    columns: [{ label: 'Size' }, { label: 'Plants', numeric: true }],
    rows: inventory.sizeClasses.map(({ sizeClass, plants }) => [sizeClass, plants.toLocaleString('en-US')]),
  },
});

const unreadBlock = (state: PaneState, { inventory: { unread } }: Adoption): Block[] => {
  if (unread.length === 0) return [];
  const shown = unread.slice(0, UNREAD_SHOWN);
  const rest = unread.length - shown.length;
  return [
    fold(state, 'adopt.unread', `${plural(unread.length, 'row')} not read, and why`, [
      {
        kind: 'table',
        table: {
          id: 'adopt.unread.rows',
          caption:
            rest > 0
              ? `The first ${UNREAD_SHOWN} of ${unread.length.toLocaleString('en-US')}`
              : 'Rows not read',
          columns: [{ label: 'Row', numeric: true }, { label: 'Why' }, { label: 'It holds' }],
          rows: shown.map(({ row, reason, text }) => [String(row + 1), reason, shortened(text)]),
        },
      },
    ]),
  ];
};

const remarkBlocks = (state: PaneState, { proposal, inventory }: Adoption): Block[] => {
  const remarks =
    inventory.problems.length > 0 && inventory.problems[0]?.kind === 'stop'
      ? inventory.problems
      : [...proposal.problems, ...inventory.problems];
  // Sizes that are asked have fields of their own below.
  const open = remarks.filter(
    ({ kind, sentence }) =>
      kind !== 'tell' && !inventory.asked.some(({ given }) => sentence.includes(`the list says ${given}`)),
  );
  const told = remarks.filter(({ kind }) => kind === 'tell');
  return [
    ...open.map(({ sentence }): Block => ({ kind: 'text', text: sentence, tone: 'warning' })),
    ...(told.length === 0
      ? []
      : [
          fold(state, 'adopt.told', `How it was read: ${plural(told.length, 'remark')}`, [
            { kind: 'steps', items: told.map(({ sentence }) => sentence) },
          ]),
        ]),
  ];
};

const wordsBlock = (state: PaneState, { inventory: { readings } }: Adoption): Block[] =>
  readings.length === 0
    ? []
    : [
        fold(state, 'adopt.words', 'How the words were understood', [
          {
            kind: 'table',
            table: {
              id: 'adopt.readings',
              caption: 'Words of the list',
              columns: [{ label: 'The list says' }, { label: 'Taken as' }, { label: 'Rows', numeric: true }],
              rows: readings.map(({ texts, reading, rows }) => [
                shortened(texts.join(', '), 80),
                reading,
                rows.toLocaleString('en-US'),
              ]),
            },
          },
        ]),
      ];

/** Roses without a size are taken over too; they wait for a dose of their own. */
const openQuestions = ({ inventory: { asked } }: Adoption): Block[] => {
  const plants = asked.reduce((sum, question) => sum + question.plants, 0);
  if (plants === 0) return [];
  const text = `${plural(plants, 'rose')} ${plants === 1 ? 'has' : 'have'} no size yet: choose it above, or give it on the sheet afterwards.`;
  return [{ kind: 'text', text }];
};

/** How the list was understood, for confirmation by the action; the questions first. */
export const adoptBlocks = (
  state: PaneState,
  list: ChosenList,
  adoption: Adoption,
  action: Button,
): Block[] => {
  const readable = adoption.inventory.plants.length > 0;
  const hasBeds = adoption.proposal.columns.some(({ meaning }) => meaning === 'bed');
  return [
    ...remarkBlocks(state, adoption),
    { kind: 'fields', fields: [headerField(state, list, adoption)] },
    ...(adoption.proposal.columns.length > 0 ? [columnsBlock(state, adoption)] : []),
    ...(hasBeds
      ? [
          {
            kind: 'fields',
            fields: [
              askToggle(state, {
                section: 'garden',
                id: BED_ABOVE_FIELD,
                label: 'A blank bed means the bed above it',
                known: adoption.proposal.bedFromAbove,
              }).field,
            ],
          } as const,
        ]
      : []),
    ...askedBlock(state, adoption),
    ...(readable ? [sizesBlock(adoption)] : []),
    { kind: 'actions', actions: [action] },
    ...openQuestions(adoption),
    {
      kind: 'text',
      tone: 'quiet',
      text: `The sheet “${list.sheet}” stays as it is; the inventory gets sheets of its own.`,
    },
    ...unreadBlock(state, adoption),
    ...wordsBlock(state, adoption),
  ];
};

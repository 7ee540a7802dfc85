import { cellAddress } from '../../../workbook/address';
import { only, type Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import { addNote, changeNote, deleteNote, NEEDS, noteAt, wordsOf } from '../later/notes';

import { byPiece, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

type Note = Extract<Edit, { kind: 'note' }>;

interface Remarks {
  readonly pieces: readonly Piece[];
  readonly putBack: readonly Piece[];
}

const addressOf = ({ row, column }: Note): string => cellAddress(row, column);

const asNotes = async (
  at: BookAt,
  edits: readonly Note[],
  isNew: (sheet: string) => boolean,
): Promise<Remarks> => {
  const found = edits.map((edit) => ({
    edit,
    note: isNew(edit.sheet) ? undefined : noteAt(at.sheet(edit.sheet), addressOf(edit)),
  }));
  await at.context.sync();
  const known = new Map<string, string | undefined>();
  const putBack: Piece[] = [];
  const pieces = found.map(({ edit, note }) => {
    const place = `${edit.sheet}!${addressOf(edit)}`;
    const first = !known.has(place);
    const before = first ? note && wordsOf(note) : known.get(place);
    if (first && !isNew(edit.sheet))
      putBack.push(
        piece(3, (now) => {
          const sheet = now.sheet(edit.sheet);
          if (before === undefined) deleteNote(sheet, addressOf(edit));
          else changeNote(sheet, addressOf(edit), before);
        }),
      );
    known.set(place, edit.text);
    return piece(3, (now) =>
      (before === undefined ? addNote : changeNote)(now.sheet(edit.sheet), addressOf(edit), edit.text),
    );
  });
  return { pieces, putBack };
};

interface FoundComment {
  readonly id: string;
  readonly content: string;
}

const commentsOn = async (at: BookAt, sheets: readonly string[]): Promise<Map<string, FoundComment>> => {
  const lists = sheets.map((name) => {
    const { comments } = at.sheet(name);
    comments.load('items/id,items/content');
    return { name, comments };
  });
  await at.context.sync();
  const places = lists.flatMap(({ name, comments }) =>
    comments.items.map((comment) => {
      const cell = comment.getLocation();
      cell.load('rowIndex,columnIndex');
      return { name, comment, cell };
    }),
  );
  await at.context.sync();
  return new Map(
    places.map(({ name, comment: { id, content }, cell }) => [
      `${name}!${cellAddress(cell.rowIndex, cell.columnIndex)}`,
      { id, content },
    ]),
  );
};

const asComments = async (
  at: BookAt,
  edits: readonly Note[],
  isNew: (sheet: string) => boolean,
): Promise<Remarks> => {
  const sheets = [...new Set(edits.map(({ sheet }) => sheet).filter((name) => !isNew(name)))];
  const found = await commentsOn(at, sheets);
  // Of several notes for one cell the last counts.
  const last = [...new Map(edits.map((edit) => [`${edit.sheet}!${addressOf(edit)}`, edit]))];
  const putBack: Piece[] = [];
  const pieces = last.map(([place, edit]) => {
    const before = found.get(place);
    if (!isNew(edit.sheet))
      putBack.push(
        piece(3, (now) => {
          const { comments } = now.sheet(edit.sheet);
          if (before) comments.getItem(before.id).content = before.content;
          else comments.getItemByCell(now.range({ ...edit, rows: 1, columns: 1 })).delete();
        }),
      );
    return piece(3, (now) => {
      const { comments } = now.sheet(edit.sheet);
      if (before) comments.getItem(before.id).content = edit.text;
      else comments.add(now.range({ ...edit, rows: 1, columns: 1 }), edit.text);
    });
  });
  return { pieces, putBack };
};

/** Notes where the program has them; comments, which it signs with the user's name, where it does not. */
export const prepareNotes: Prepare = async ({ at, book, supports, edits }) => {
  const notes = only(edits, 'note');
  if (notes.length === 0) return { pieces: [], putBack: [] };
  const isNew = (sheet: string): boolean => !book.ids.has(sheet);
  const { pieces, putBack } = await (supports(NEEDS) ? asNotes : asComments)(at, notes, isNew);
  return { pieces, putBack: putBack.map(byPiece) };
};

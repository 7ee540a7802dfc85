/** The set of the platform that brings notes. */
export const NEEDS = '1.18';

/** Asks for the note on a cell. */
export const noteAt = (sheet: Excel.Worksheet, address: string): Excel.Note => {
  const note = sheet.notes.getItemOrNullObject(address);
  note.load('content');
  return note;
};

/** What a note says that was asked for; undefined where there is none. */
export const wordsOf = (note: Excel.Note): string | undefined =>
  note.isNullObject ? undefined : note.content;

export const addNote = (sheet: Excel.Worksheet, address: string, text: string): void => {
  sheet.notes.add(address, text);
};

export const changeNote = (sheet: Excel.Worksheet, address: string, text: string): void => {
  sheet.notes.getItem(address).content = text;
};

export const deleteNote = (sheet: Excel.Worksheet, address: string): void => {
  sheet.notes.getItem(address).delete();
};

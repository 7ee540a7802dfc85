/** The set of the platform that brings notes. */
export const NEEDS = '1.18';

/** The note on a cell, where there is one. */
export const noteAt = (sheet: Excel.Worksheet, address: string): Excel.Note => {
  const note = sheet.notes.getItemOrNullObject(address);
  note.load('content');
  return note;
};

export const addNote = (sheet: Excel.Worksheet, address: string, text: string): void => {
  sheet.notes.add(address, text);
};

export const changeNote = (sheet: Excel.Worksheet, address: string, text: string): void => {
  sheet.notes.getItem(address).content = text;
};

export const deleteNote = (sheet: Excel.Worksheet, address: string): void => {
  sheet.notes.getItem(address).delete();
};

import { freshId, type BookData } from './bookData';

/** The same workbook under an id that the grid has not known yet. */
export const rehomed = (book: BookData): BookData => {
  const old = new RegExp(`${book.id}(?![\\w-])`, 'g');
  return JSON.parse(JSON.stringify(book).replace(old, freshId('book'))) as BookData;
};

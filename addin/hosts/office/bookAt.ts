import type { Area } from '../../workbook/change';

/** A workbook in one batch: its sheets by the names they had when it was read. */
export interface BookAt {
  readonly context: Excel.RequestContext;
  sheet(name: string): Excel.Worksheet;
  range(area: Area): Excel.Range;
}

/**
 * Finds sheets by their ids, so that one that the user renames meanwhile is still the one meant; a sheet without an
 * id is one that this batch adds.
 */
export const bookAt = (context: Excel.RequestContext, ids: ReadonlyMap<string, string>): BookAt => {
  const sheet = (name: string): Excel.Worksheet => context.workbook.worksheets.getItem(ids.get(name) ?? name);
  return {
    context,
    sheet,
    range: ({ sheet: name, row, column, rows, columns }) =>
      sheet(name).getRangeByIndexes(row, column, rows, columns),
  };
};

/** The set of the platform that tells when a sheet is renamed. */
export const NEEDS = '1.17';

export const onRename = (sheets: Excel.WorksheetCollection, listener: () => Promise<void>): void => {
  sheets.onNameChanged.add(listener);
};

import type { Workbook } from '@cj-tech-master/excelts';

const counted = (count: number, one: string, many: string): string[] =>
  count === 0 ? [] : [count === 1 ? `1 ${one}` : `${count} ${many}`];

/** What a file holds and the grid does not keep, in words, so that nobody saves over it unawares. */
export const leftBehind = (file: Workbook, unreadCharts: number): string[] => {
  const sum = (size: (sheet: Workbook['worksheets'][number]) => number): number =>
    file.worksheets.reduce((total, sheet) => total + size(sheet), 0);
  return [
    ...counted(
      sum((sheet) => sheet.getImages().length),
      'picture',
      'pictures',
    ),
    ...counted(unreadCharts + file.chartsheets.length, 'chart', 'charts'),
    ...counted(
      sum((sheet) => sheet.getShapes().length),
      'drawing',
      'drawings',
    ),
    ...counted(
      sum((sheet) => sheet.formControls.length),
      'button or box',
      'buttons or boxes',
    ),
    ...counted(
      sum((sheet) => sheet.threadedComments.length),
      'comment thread',
      'comment threads',
    ),
    ...counted(file.pivotTables.length, 'pivot table', 'pivot tables'),
    ...(sum((sheet) => sheet.conditionalFormattings.length) > 0 ? ['colours by rule'] : []),
    ...(sum((sheet) => (sheet.autoFilter ? 1 : 0) + sheet.getTables().length) > 0 ? ['filters'] : []),
    ...(file.worksheets.some((sheet) => sheet.sheetProtection) ? ['the protection of sheets'] : []),
  ];
};

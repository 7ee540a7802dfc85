import type { Grid } from '../grid/openGrid';
import { drawPage } from './drawPage';
import { fitPage } from './fitPage';
import { printedPage } from './printedPage';

/**
 * Lays the sheet out as a page and hands it to the system's printing.
 *
 * @throws WorkbookError where there is nothing to print
 */
export const printSheet = async (grid: Grid, name: string): Promise<void> => {
  await grid.settled();
  document.querySelector('#print-view')?.remove();
  const page = printedPage(grid, name);
  const view = drawPage(page);
  const title = document.title;
  document.body.append(view);
  fitPage(view, page);
  document.title = name;
  addEventListener(
    'afterprint',
    () => {
      view.remove();
      document.title = title;
    },
    { once: true },
  );
  window.print();
};

import '../../../taskpane/pane.css';

import { mountPane, type MountedPane } from '../../../taskpane/mount';
import { emptyBook } from './grid/bookData';
import { hostServices } from './hostServices';
import { loadSheets } from './loadSheets';
import { openWorkbook } from './openWorkbook';
import { openComing } from './page/coming';
import { takeDroppedFiles } from './page/droppedFiles';
import { keepDrafts } from './page/keepDrafts';
import { openNarrowTabs } from './page/narrowTabs';
import { openNotices } from './page/notices';
import { beginAtTop, keepKeysFrom, openRegionKeys } from './page/regionKeys';
import { openSplitter } from './page/splitter';
import { openTopBar, SAMPLES } from './page/topBar';
import { openPageBook, type PageBook } from './pageBook';
import { diskFile } from './saveToDisk';
import type { Sheets } from './sheets';
import { openWorkbench, type Workbench } from './workbench';

import './page/page.css';
import './print/print.css';

export interface StartedPage {
  readonly book: PageBook;
  readonly bench: Workbench;
}

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no #${id}.`);
  return found;
};

/** Which file the page opens by itself: the one its address names, or the sample list. */
const firstFile = (): string => new URLSearchParams(location.search).get('open') ?? SAMPLES[0].path;

/** Resolves once what was drawn last is to be seen; a page that is not looked at draws nothing, and is not waited for. */
const shown = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, 100);
    requestAnimationFrame(() => setTimeout(resolve));
  });

/** Builds the page, opens the first file for the steps, then brings the grid, which takes the work over. */
export const startPage = async (): Promise<StartedPage> => {
  const notices = openNotices(element('notices'));
  const coming = openComing(element('grid'));
  const darkness = matchMedia('(prefers-color-scheme: dark)');
  let bring: () => void = () => undefined;
  const drawn = new Promise<void>((resolve) => (bring = resolve));
  const build = async (): Promise<Sheets> => {
    await drawn;
    const refused = (text: string): void => void notices.show('sheet-name', { text, tone: 'warning' });
    const sheets = await loadSheets(element('grid'), { dark: darkness.matches, refused }, coming.progress);
    darkness.addEventListener('change', ({ matches }) => sheets.grid.dark(matches));
    return sheets;
  };
  const book = openPageBook(build(), emptyBook());
  const services = hostServices(book);
  const file = openWorkbook();

  let mounted: MountedPane | undefined;
  const replaced = (): void => {
    mounted?.unmount();
    mounted = mountPane(element('pane'), book.workbook, services);
  };
  const bench = openWorkbench({ book, file, disk: diskFile(), notices, replaced });
  openSplitter(element('splitter'), element('main'));
  const tabs = openNarrowTabs(element('main'), { pane: element('tab-pane'), grid: element('tab-grid') });
  keepKeysFrom(element('grid'));
  openRegionKeys(element('grid'), element('pane'), tabs);
  openTopBar(book, file, bench);
  takeDroppedFiles(bench);

  await bench.openServed(firstFile());
  if (!mounted) await bench.newGarden();
  beginAtTop();
  await keepDrafts(book, file, bench, notices);
  await shown();
  bring();
  book.whenThere.then(
    (sheets) => {
      coming.there();
      // What opening a file does to the grid is no change of the file.
      sheets.watch({ changed: () => sheets.grid.opening || file.changed(), selected: () => undefined });
    },
    (reason: unknown) => {
      console.error('The grid did not come.', reason);
      coming.failed();
    },
  );
  return { book, bench };
};

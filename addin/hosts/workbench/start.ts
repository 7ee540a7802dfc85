import '../../../taskpane/pane.css';

import { mountPane, type MountedPane } from '../../../taskpane/mount';
import { registerFeedFunctions } from './grid/feedFunctions';
import { keepRowsFitted } from './grid/fitRows';
import { watchGrid } from './grid/gridEvents';
import { openGrid, type Grid } from './grid/openGrid';
import { guardSheetNames } from './grid/sheetNames';
import { gridWorkbook, type GridWorkbook } from './gridWorkbook';
import { hostServices } from './hostServices';
import { openWorkbook } from './openWorkbook';
import { takeDroppedFiles } from './page/droppedFiles';
import { keepDrafts } from './page/keepDrafts';
import { nameControls } from './page/nameControls';
import { openNarrowTabs } from './page/narrowTabs';
import { openNotices } from './page/notices';
import { beginAtTop, openRegionKeys } from './page/regionKeys';
import { openSplitter } from './page/splitter';
import { openTopBar, SAMPLES } from './page/topBar';
import { diskFile } from './saveToDisk';
import { openWorkbench, type Workbench } from './workbench';

import './page/page.css';
import './print/print.css';

export interface StartedWorkbench {
  readonly grid: Grid;
  readonly workbook: GridWorkbook;
  readonly bench: Workbench;
}

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no #${id}.`);
  return found;
};

/** Which file the page opens by itself: the one its address names, or the sample list. */
const firstFile = (): string => new URLSearchParams(location.search).get('open') ?? SAMPLES[0].path;

/** Builds the page around the grid and opens the first file. */
export const startWorkbench = async (): Promise<StartedWorkbench> => {
  const darkness = matchMedia('(prefers-color-scheme: dark)');
  const grid = openGrid(element('grid'), { dark: darkness.matches });
  darkness.addEventListener('change', ({ matches }) => grid.dark(matches));
  nameControls(element('grid'));
  const workbook = gridWorkbook(grid);
  registerFeedFunctions(grid);
  const services = hostServices(grid, workbook);
  keepRowsFitted(grid);
  const file = openWorkbook();
  const notices = openNotices(element('notices'));
  guardSheetNames(
    grid,
    element('grid'),
    (text) => void notices.show('sheet-name', { text, tone: 'warning' }),
  );

  let mounted: MountedPane | undefined;
  const replaced = (): void => {
    mounted?.unmount();
    mounted = mountPane(element('pane'), workbook, services);
  };
  const bench = openWorkbench({ grid, workbook, file, disk: diskFile(), notices, replaced });
  openSplitter(element('splitter'), element('main'));
  const tabs = openNarrowTabs(element('main'), { pane: element('tab-pane'), grid: element('tab-grid') });
  openRegionKeys(element('grid'), element('pane'), tabs);
  openTopBar(grid, file, bench);
  takeDroppedFiles(bench);

  await bench.openServed(firstFile());
  if (!mounted) await bench.newGarden();
  beginAtTop();
  // What opening a file does to the grid is no change of the file.
  watchGrid(grid, { changed: () => grid.opening || file.changed(), selected: () => undefined });
  await keepDrafts(grid, file, bench, notices);
  return { grid, workbook, bench };
};

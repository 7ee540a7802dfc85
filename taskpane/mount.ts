import type { Workbook } from '../addin/workbook/port';

import { drawPane } from './html/drawPane';
import { createPane, type Pane } from './pane';
import type { HostServices } from './services';

/** A pane drawn in a page. */
export interface MountedPane {
  readonly pane: Pane;
  unmount(): void;
}

/**
 * Puts the side pane of a workbook into an element of a page. The page brings `pane.css`.
 *
 * @example mountPane(document.querySelector('#pane'), workbook, { today: () => '2026-05-03', measures: 'US' })
 */
export const mountPane = (element: HTMLElement, workbook: Workbook, services: HostServices): MountedPane => {
  const pane = createPane(workbook, services);
  const erase = drawPane(element, pane);
  return {
    pane,
    unmount: () => {
      erase();
      pane.close();
    },
  };
};

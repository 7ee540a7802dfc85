import { memoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import { drawPane } from '../../../taskpane/html/drawPane';
import { mountPane } from '../../../taskpane/mount';
import type { Pane } from '../../../taskpane/pane';
import type { View } from '../../../taskpane/view';
import { handPane } from '../../taskpane/handPane';
import { UNTIDY } from '../../taskpane/untidyList';

/** What the tests ask of the page. */
export interface PanePage {
  /** Draws one view, as it is. */
  show(view: View): void;
  /** Opens the pane on a workbook in memory that holds an untidy list. */
  open(): void;
  /** The workbook changes under the pane, again and again. */
  disturb(): void;
}

let pane: Pane | undefined;
let erase: () => void = () => undefined;

const element = (): HTMLElement => {
  erase();
  const found = document.querySelector<HTMLElement>('#pane');
  if (found === null) throw new Error('The page has no place for the pane.');
  return found;
};

const panePage: PanePage = {
  show: (view) => {
    const place = element();
    erase = drawPane(place, handPane(view).pane);
  },
  open: () => {
    const place = element();
    const workbook = memoryWorkbook({ sheets: { 'Roses 2026': UNTIDY } });
    const undo = (): Promise<void> => Promise.resolve(void workbook.undo());
    const mounted = mountPane(place, workbook, { today: () => '2026-05-03', measures: 'US', undo });
    erase = mounted.unmount;
    pane = mounted.pane;
  },
  disturb: () => {
    setInterval(() => void pane?.dispatch({ kind: 'workbookChanged' }), 3);
  },
};

Object.assign(window, { panePage });

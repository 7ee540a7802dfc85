import '../../../taskpane/pane.css';
import { mountPane } from '../../../taskpane/mount';

import { thisProgram } from './excelProgram';
import { hostServices } from './hostServices';
import { officeWorkbook, type OfficeWorkbook } from './officeWorkbook';
import type { RibbonButtonId } from './ribbon';
import { ribbonActions, type Said } from './ribbonActions';
import { followTheme } from './theme';

/** What the rest of the page needs of the pane. */
export interface OpenedPane {
  press(id: RibbonButtonId): Promise<Said>;
}

/** Once a workbook holds something of the program's, its functions are there as soon as it is opened. */
const startingWithTheWorkbook = (workbook: OfficeWorkbook): OfficeWorkbook => {
  let isSet = false;
  return {
    get writing() {
      return workbook.writing;
    },
    outline: () => workbook.outline(),
    read: (wanted) => workbook.read(wanted),
    apply: async (change, seen) => {
      await workbook.apply(change, seen);
      if (isSet) return;
      isSet = true;
      // The change is written, whether the program keeps this or not.
      await Office.addin
        .setStartupBehavior(Office.StartupBehavior.load)
        .catch((reason: unknown) => console.error('The functions wait for the pane to be opened.', reason));
    },
  };
};

/** Draws the pane of the program's workbook in the page. */
export const openPane = (element: HTMLElement): OpenedPane => {
  followTheme(document.documentElement, () => Office.context.officeTheme);
  const workbook = startingWithTheWorkbook(officeWorkbook(thisProgram));
  const { pane } = mountPane(element, workbook, hostServices(thisProgram, workbook));
  const actions = ribbonActions(pane, workbook);
  return { press: (id) => actions[id]() };
};

import { sheetNameRefusal } from '../../../workbook/validateChange';
import type { Grid } from './openGrid';

/**
 * Why a sheet of the grid may not have this name, or undefined where it may. The grid loses the cells that a formula
 * reads on a sheet whose name holds an exclamation mark, which other programs allow.
 */
export const gridNameRefusal = (name: string): string | undefined =>
  name.includes('!')
    ? `Formulas cannot find the sheet “${name}” here: leave out the exclamation mark.`
    : sheetNameRefusal(name);

/** A tab goes on showing what was typed into it, and the grid draws it anew only for another name. */
const restoreTab = (container: HTMLElement, typed: string, name: string): void => {
  const tabs = document.createTreeWalker(container, NodeFilter.SHOW_TEXT);
  for (let text = tabs.nextNode(); text; text = tabs.nextNode())
    if (text.nodeValue === typed && text.parentElement?.closest('[data-u-comp="slide-tab-item"]'))
      text.nodeValue = name;
};

/** Leaves a sheet its name where the user gives it one that it may not have, and says why. */
export const guardSheetNames = (
  grid: Grid,
  container: HTMLElement,
  refused: (sentence: string) => void,
): void => {
  grid.api.addEvent(grid.api.Event.BeforeSheetNameChange, (change) => {
    const refusal = gridNameRefusal(change.newName);
    if (refusal === undefined) return;
    change.cancel = true;
    setTimeout(() => restoreTab(container, change.newName, change.oldName));
    refused(refusal);
  });
};

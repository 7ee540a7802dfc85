import type { PaneLook } from '../../../taskpane/paneLook';

const NAME = 'pane';

/** How the pane stands, kept with the workbook where nobody sees it. What the garden is stands on its sheets. */
export interface KeptLook {
  /** As it was kept last; null where nothing was. */
  recall(): unknown;
  /** Keeps it: the program puts it into the workbook's file when the user saves. */
  keep(look: PaneLook): void;
}

/**
 * The settings that the program keeps for the add-in in a document. They are one copy in memory, which a save takes
 * over whole, so there is one save at a time, and one more where something came meanwhile.
 */
export const keptLook = (settings: Pick<Office.Settings, 'get' | 'set' | 'saveAsync'>): KeptLook => {
  let saving = false;
  let again = false;
  const save = (): void => {
    saving = true;
    again = false;
    settings.saveAsync(({ status, error }) => {
      saving = false;
      // A workbook that is open for reading keeps nothing; the pane works all the same.
      if (status === Office.AsyncResultStatus.Failed)
        console.warn('How the pane stands is not kept.', error?.message);
      if (again) save();
    });
  };
  return {
    recall: () => settings.get(NAME) as unknown,
    keep: (look) => {
      settings.set(NAME, look);
      if (saving) again = true;
      else save();
    },
  };
};

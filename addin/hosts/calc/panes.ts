import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import { createPane, type Pane } from '../../../taskpane/pane';
import type { HostServices, SelectedCell } from '../../../taskpane/services';
import type { PaneEvent } from '../../../taskpane/view';
import { calcWorkbook } from './calcWorkbook';
import { orFailedAt } from './componentRefused';
import { nativeView } from './nativeView';
import type { Ask } from './wire/requests';

const servicesOf = (ask: Ask, locale: string): HostServices => ({
  today: () => calendarDay(new Date()),
  measures: guessMeasures([locale]),
  print: async (sheet) =>
    void (await orFailedAt('The card could not be printed.', ask({ what: 'print', sheet }))),
  selected: async () =>
    ((await orFailedAt('The selected cell could not be read.', ask({ what: 'selected' }))) ?? undefined) as
      SelectedCell | undefined,
  undo: async () => void (await orFailedAt('The last step could not be taken back.', ask({ what: 'undo' }))),
});

/** The panes of the documents that are open. */
export interface Panes {
  open(doc: string, locale: string): void;
  happened(doc: string, event: PaneEvent): Promise<void>;
  close(doc: string): void;
}

/**
 * @param say   sends a message to the component
 * @param about asks the component about a document
 */
export const panes = (say: (message: object) => void, about: (doc: string) => Ask): Panes => {
  const open = new Map<string, Pane>();
  return {
    open: (doc, locale) => {
      open.get(doc)?.close();
      const ask = about(doc);
      const pane = createPane(calcWorkbook(ask), servicesOf(ask, locale));
      open.set(doc, pane);
      let soon = false;
      const show = (): void => {
        if (soon) return;
        soon = true;
        setImmediate(() => {
          soon = false;
          if (open.get(doc) === pane) say({ doc, view: nativeView(pane.view()) });
        });
      };
      pane.subscribe(show);
      show();
    },
    happened: async (doc, event) => open.get(doc)?.dispatch(event),
    close: (doc) => {
      open.get(doc)?.close();
      open.delete(doc);
    },
  };
};

import { render } from 'preact';

import type { Workbook } from '../addin/workbook/port';

import type { Send } from './html/hands';
import { paneView } from './html/paneView';
import { createPane, type Pane } from './pane';
import type { HostServices } from './services';

/** A pane drawn in a page. */
export interface MountedPane {
  readonly pane: Pane;
  unmount(): void;
}

/** Draws a pane in an element and keeps it drawn. */
export const drawPane = (element: HTMLElement, pane: Pane): (() => void) => {
  const heldFocus = (): boolean => element.contains(document.activeElement);

  const draw = (): void => {
    const hadFocus = heldFocus();
    render(paneView(pane.view(), send), element);
    // The button that was pressed may be gone; the keyboard then goes on from the section's title.
    if (hadFocus && !heldFocus()) element.querySelector<HTMLElement>('.section h2')?.focus();
  };

  const showFirstWrong = (): void => {
    const wrong = element.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (wrong !== null && heldFocus()) wrong.focus();
  };

  const send: Send = (event) => {
    const pressed = event.kind === 'press';
    void pane.dispatch(event).then(() => {
      if (pressed && pane.view().message?.tone === 'warning') showFirstWrong();
    });
  };

  const stop = pane.subscribe(draw);
  draw();
  return () => {
    stop();
    render(null, element);
  };
};

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

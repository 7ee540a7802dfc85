import { render } from 'preact';

import type { Pane } from '../pane';

import type { Send } from './hands';
import { paneView } from './paneView';

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

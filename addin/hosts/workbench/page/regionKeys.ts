import type { NarrowTabs } from './narrowTabs';

/** Where the grid takes what is typed. */
const TYPING = '[id^="__editor_"]';

/**
 * In the sheets Tab goes from cell to cell and never out, so F6 goes from the sheets to the steps, and from anywhere
 * else to the sheets.
 */
export const openRegionKeys = (grid: HTMLElement, pane: HTMLElement, tabs: NarrowTabs): void => {
  addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      event.stopPropagation();
      const leaving = grid.contains(document.activeElement);
      tabs.show(leaving ? 'pane' : 'grid');
      (leaving ? pane : grid.querySelector<HTMLElement>(TYPING))?.focus({ preventScroll: true });
    },
    { capture: true },
  );
};

/** A grid takes the keys when it is built; the page gives them to its own beginning, where everything is reached. */
export const beginAtTop = (): void => {
  document.body.tabIndex = -1;
  document.body.focus({ preventScroll: true });
};

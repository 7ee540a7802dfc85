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

/** The keys begin at the page's own top, where everything is reached. */
export const beginAtTop = (): void => {
  document.body.tabIndex = -1;
  document.body.focus({ preventScroll: true });
};

/** A grid that is built takes the keys, some time later too: whoever had them keeps them until the user goes there. */
export const keepKeysFrom = (grid: HTMLElement): void => {
  let invited = false;
  let holder: HTMLElement = document.body;
  const over = new AbortController();
  const options = { capture: true, signal: over.signal };
  // What a key or a press does follows in the same turn.
  const invite = (): void => {
    invited = true;
    setTimeout(() => (invited = false));
  };
  addEventListener('keydown', ({ key }) => (key === 'Tab' || key === 'F6') && invite(), options);
  for (const kind of ['pointerdown', 'keydown']) grid.addEventListener(kind, invite, options);
  addEventListener(
    'focusin',
    ({ target }) => {
      if (!(target instanceof HTMLElement)) return;
      if (!target.matches(TYPING)) holder = target;
      else if (invited) over.abort();
      else (holder.isConnected ? holder : document.body).focus({ preventScroll: true });
    },
    options,
  );
};

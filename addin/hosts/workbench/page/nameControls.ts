/** The grid's own controls that come without a name, and what they are called. */
const NAMES: readonly (readonly [selector: string, name: string])[] = [
  ['input[type="text"]:not([aria-label])', 'Selected cells'],
  ['a[aria-haspopup="dialog"]', 'Names in this workbook'],
  ['[aria-haspopup="menu"] > [data-u-comp="sheet-bar-append-button"]', 'All sheets'],
  ['[data-u-comp="sheet-bar-append-button"]:not([aria-label])', 'Add a sheet'],
  ['button:not([aria-label]):not([data-u-comp]):has(svg)', 'More'],
];

const nameAll = (grid: HTMLElement): void => {
  for (const [selector, name] of NAMES)
    for (const control of grid.querySelectorAll(selector))
      if (!control.textContent?.trim() && control.getAttribute('aria-label') !== name)
        control.setAttribute('aria-label', name);
  for (const control of grid.querySelectorAll('[type="button"]:not(button, [role])'))
    control.setAttribute('role', 'button');
  // Canvases would be reached before everything else on the page.
  for (const canvas of grid.querySelectorAll('canvas[tabindex="1"]')) canvas.setAttribute('tabindex', '0');
};

/** Names the grid's controls for those who hear the page, as they come. */
export const nameControls = (grid: HTMLElement): void => {
  let waiting = false;
  new MutationObserver(() => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      nameAll(grid);
    });
  }).observe(grid, { childList: true, subtree: true });
  nameAll(grid);
};

type Side = 'pane' | 'grid';

export interface NarrowTabs {
  show(side: Side): void;
}

/** On a narrow page the steps and the sheets take turns; on a wide one both are there and the tabs are not. */
export const openNarrowTabs = (main: HTMLElement, tabs: Readonly<Record<Side, HTMLElement>>): NarrowTabs => {
  const show = (side: Side): void => {
    main.dataset['side'] = side;
    for (const [name, tab] of Object.entries(tabs)) {
      tab.setAttribute('aria-selected', String(name === side));
      tab.tabIndex = name === side ? 0 : -1;
    }
  };
  for (const [name, tab] of Object.entries(tabs) as [Side, HTMLElement][]) {
    tab.addEventListener('click', () => show(name));
    tab.addEventListener('keydown', (event) => {
      if (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight') return;
      const other = name === 'pane' ? 'grid' : 'pane';
      show(other);
      tabs[other].focus();
    });
  }
  show('pane');
  return { show };
};

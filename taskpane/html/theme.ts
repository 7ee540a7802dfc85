/** Calls the listener when light turns dark or back, by the system or by the page's `data-theme`. */
export const whenThemeChanges = (listener: () => void): (() => void) => {
  const system = window.matchMedia('(prefers-color-scheme: dark)');
  const page = new MutationObserver(listener);
  system.addEventListener('change', listener);
  page.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => {
    system.removeEventListener('change', listener);
    page.disconnect();
  };
};

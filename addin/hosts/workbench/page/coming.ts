/** What stands in the place of the sheets until they are there. */
export interface Coming {
  /** @param share of the parts that have come, 0 to 1 */
  progress(share: number): void;
  there(): void;
  failed(): void;
}

export const openComing = (place: HTMLElement): Coming => {
  const holder = document.createElement('div');
  holder.className = 'coming';
  holder.setAttribute('role', 'status');
  const words = document.createElement('p');
  words.textContent = 'The sheets are coming. The steps answer already.';
  const bar = document.createElement('progress');
  bar.max = 1;
  bar.value = 0;
  bar.setAttribute('aria-label', 'Sheets that have come');
  holder.append(words, bar);
  place.append(holder);
  return {
    progress: (share) => {
      bar.value = share;
    },
    there: () => {
      holder.remove();
      place.removeAttribute('aria-busy');
    },
    failed: () => {
      bar.remove();
      holder.setAttribute('role', 'alert');
      words.textContent =
        'The sheets could not be loaded. The steps still tell what your file holds, but nothing can be written or saved. Load the page again.';
      place.removeAttribute('aria-busy');
    },
  };
};

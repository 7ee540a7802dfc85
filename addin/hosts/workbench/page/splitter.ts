/** Narrowest pane, and the least that is left to the grid beside it; pixels. */
const NARROWEST = 320;
const LEAST_BESIDE = 360;
const USUAL = 400;
const KEY_STEP = 24;
const KEPT = 'wandcount-pane-width';

const kept = (): number => {
  const width = Number(localStorage.getItem(KEPT));
  return width > 0 ? width : USUAL;
};

/** Lets the user set the width of the pane, by dragging or with the arrow keys; it is kept for the next time. */
export const openSplitter = (splitter: HTMLElement, main: HTMLElement): void => {
  let width = kept();
  const set = (wanted: number): void => {
    const most = Math.max(NARROWEST, main.clientWidth - LEAST_BESIDE);
    width = Math.round(Math.min(most, Math.max(NARROWEST, wanted)));
    main.style.setProperty('--pane-width', `${width}px`);
    splitter.setAttribute('aria-valuemin', String(NARROWEST));
    splitter.setAttribute('aria-valuemax', String(most));
    splitter.setAttribute('aria-valuenow', String(width));
  };
  const keep = (): void => localStorage.setItem(KEPT, String(width));

  splitter.addEventListener('pointerdown', (event) => {
    splitter.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  splitter.addEventListener('pointermove', (event) => {
    if (splitter.hasPointerCapture(event.pointerId)) set(main.getBoundingClientRect().right - event.clientX);
  });
  splitter.addEventListener('pointerup', keep);
  splitter.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: KEY_STEP, ArrowRight: -KEY_STEP }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    set(width + step);
    keep();
  });
  addEventListener('resize', () => set(kept()));
  set(width);
};

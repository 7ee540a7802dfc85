import type { openSheets, Sheets } from './sheets';

/**
 * The grid's parts in the order in which they need each other. Each begins by itself, so that the page answers in
 * between; together they are one file.
 */
const PARTS: readonly (() => Promise<unknown>)[] = [
  () => import(/* webpackChunkName: "grid" */ '@univerjs/core'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/engine-formula'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/engine-render'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/sheets'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/ui'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/docs-ui'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/sheets-formula'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/sheets-ui'),
  () => import(/* webpackChunkName: "grid" */ '@univerjs/preset-sheets-core'),
  () => import(/* webpackChunkName: "grid" */ './sheets'),
];

/** Lets the page do what has come up meanwhile. */
const pause = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve);
  });

/**
 * Fetches the grid and builds it.
 *
 * @param progress hears the share that is there, 0 to 1
 */
export const loadSheets = async (
  container: HTMLElement,
  options: Parameters<typeof openSheets>[1],
  progress: (share: number) => void,
): Promise<Sheets> => {
  for (const [index, part] of PARTS.entries()) {
    await part();
    progress((index + 1) / PARTS.length);
    await pause();
  }
  const sheets = await import(/* webpackChunkName: "grid" */ './sheets');
  return sheets.openSheets(container, options);
};

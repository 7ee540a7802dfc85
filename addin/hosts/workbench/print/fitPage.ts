import { PAGE_MARGIN } from '../../../workbook/change';

import type { PrintedPage } from './printedPage';

/** The narrower side of A4 and the shorter of Letter, mm: either may lie in the printer. */
const PAPER_SIDES = { short: 210, long: 279.4 } as const;
/** What is left for a printer that takes a hair more. */
const HAIR = 0.5;
const between = (side: number): number => side - 2 * PAGE_MARGIN - HAIR;
const PAPER = { short: between(PAPER_SIDES.short), long: between(PAPER_SIDES.long) } as const;
const PIXELS_A_MILLIMETRE = 96 / 25.4;
/** The sheet's ordinary eleven points print at eight at least, and are enlarged within reason. */
const SCALE = { least: 8 / 11, most: 1.5 } as const;
const STEPS = 7;

const heightOf = (element: Element | null): number => element?.getBoundingClientRect().height ?? 0;

/** Sets the size of the print: as the width of the paper gives it, and smaller where pages are to be saved. */
export const fitPage = (view: HTMLElement, { landscape, widths, pagesHigh }: PrintedPage): void => {
  const [wide, high] = landscape ? [PAPER.long, PAPER.short] : [PAPER.short, PAPER.long];
  view.style.width = `${wide}mm`;
  const total = widths.reduce((sum, width) => sum + width, 0);
  const byWidth = Math.min(SCALE.most, Math.max(SCALE.least, (wide * PIXELS_A_MILLIMETRE) / total));
  const pages = pagesHigh ?? Infinity;
  /** With what each further page begins with, and what the row that did not fit leaves of the page before. */
  const heightAt = (scale: number): number => {
    view.style.setProperty('--scale', scale.toFixed(4));
    const heads = heightOf(view.querySelector('thead'));
    const tallest = Math.max(...[...view.querySelectorAll('tr')].map(heightOf));
    return heightOf(view) + (pages > 1 ? (pages - 1) * (heads + tallest) : 0);
  };
  if (pages === Infinity) return void heightAt(byWidth);
  const most = high * PIXELS_A_MILLIMETRE * pages;
  let [low, top] = [SCALE.least as number, byWidth];
  if (heightAt(top) <= most) return;
  // Where the least does not fit either, it takes more pages, and the size that reads well.
  if (heightAt(low) > most) return void heightAt(top);
  for (let step = 0; step < STEPS; step += 1) {
    const middle = (low + top) / 2;
    if (heightAt(middle) <= most) low = middle;
    else top = middle;
  }
  heightAt(low);
};

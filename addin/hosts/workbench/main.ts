import { openGrid } from './grid/openGrid';
const t = performance.now();
const grid = openGrid(document.querySelector<HTMLElement>('#grid')!, { dark: false });
(window as any).grid = grid; (window as any).t0 = t;

/** The grid tells twelve figures. */
const SAME = 1e-9;

/** Whether two numbers are one but for the last figures. */
export const alike = (shown: unknown, wanted: number, scale = Math.abs(wanted)): boolean =>
  typeof shown === 'number' && Math.abs(shown - wanted) <= SAME * Math.max(scale, 1e-3);

/** Whether a number is told to so many decimals as it is. */
export const rounded = (shown: number, wanted: number, decimals: number): boolean =>
  Math.abs(shown - wanted) <= 0.5 * 10 ** -decimals + SAME * Math.max(1, Math.abs(wanted));

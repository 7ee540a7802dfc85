import { expect } from 'vitest';

/** Fails unless `actual` is within a share of `published`, such as 0.015 for 1.5 %. */
export const expectWithin = (actual: number | undefined, published: number, share: number): void => {
  expect(actual).toBeTypeOf('number');
  const off = Math.abs(actual! / published - 1);
  expect(off, `${actual} against ${published}`).toBeLessThanOrEqual(share);
};

/** Share of a printed figure that its last digit leaves open: half of it, such as 0.005 for 2.67. */
export const asPrinted = (figure: string): number => {
  const decimals = figure.split('.')[1]?.length ?? 0;
  // The smallest excess keeps a figure that was rounded from a tie.
  return (0.5 * 10 ** -decimals * (1 + 1e-9)) / Number(figure);
};

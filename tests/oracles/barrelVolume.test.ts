import { describe, test } from 'vitest';
import { barrelVolume, findUnit, fromCanonical, metres, toCanonical } from '../../addin/core';
import { asPrinted, expectWithin } from './within';

const TREES = 'Native Tree Society, nativetreesociety.org, measure/volume/frustrum1.htm';
const cubicMetres = (depth: number, bottom: number, surface?: number) =>
  barrelVolume(metres(depth), metres(bottom), surface === undefined ? undefined : metres(surface)) / 1000;

describe('tapered barrels', () => {
  // Any one unit of length gives its cube; metres here.
  test.each([
    { depth: 4.5, bottom: 4.8, surface: 4.1, figure: '70.13213', source: TREES },
    { depth: 4.5, bottom: 4.1, surface: 3.9, figure: '56.56045', source: TREES },
    { depth: 11, bottom: 3.9, surface: 3.2, figure: '109.2306', source: TREES },
  ])('depth $depth, $bottom to $surface across: $figure', ({ depth, bottom, surface, figure }) => {
    expectWithin(cubicMetres(depth, bottom, surface), Number(figure), asPrinted(figure));
  });

  test('28.54 m³ between 3.5 m and 2.5 m stand 4.001 m deep', () => {
    // hackmath.net, 11811; the printed depth is rounded up from 4.0005.
    expectWithin(cubicMetres(4.001, 3.5, 2.5), 28.54, 2e-4);
  });

  test('radii 1 and 0.25, height 5, with π as 3: 6.5625', () => {
    expectWithin((cubicMetres(5, 2, 0.5) / Math.PI) * 3, 6.5625, 1e-12); // byjus.com
  });
});

describe('garden barrels in gallons (computed)', () => {
  const inches = (n: number) => metres(toCanonical(n, findUnit('in')!));
  test.each([
    { depth: 33.5, bottom: 22.5, surface: 22.5, figure: '57.662' },
    { depth: 26, bottom: 20, surface: 24, figure: '42.903' },
  ])('$depth in deep, $bottom to $surface in across: $figure gal', ({ depth, bottom, surface, figure }) => {
    const volume = barrelVolume(inches(depth), inches(bottom), inches(surface));
    expectWithin(fromCanonical(volume, findUnit('gal')!), Number(figure), asPrinted(figure));
  });
});

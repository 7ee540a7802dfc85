import { describe, expect, test } from 'vitest';
import { PLANT_SIZES, ROSE_CLASSES, SIZE_CLASSES, sizeClassFor, type RoseClass } from '../../../addin/core';

// Common practice among growers, not a published table.
describe('the size class that decides the dose', () => {
  test.each([
    [{ roseClass: 'Hybrid tea' }, 'Large bush'],
    [{ roseClass: 'Floribunda' }, 'Bush'],
    [{ roseClass: 'Polyantha' }, 'Small bush'],
    [{ roseClass: 'Miniature' }, 'Miniature'],
    [{ roseClass: 'Miniature', pot: true }, 'Potted miniature'],
    [{ roseClass: 'Miniflora', pot: true }, 'Potted miniature'],
    [{ roseClass: 'Hybrid tea', pot: true }, 'Potted bush'],
    [{ roseClass: 'Hybrid tea', pot: false }, 'Large bush'],
    [{ roseClass: 'Climber', pot: true }, 'Climber'],
    [{ roseClass: 'Tree rose' }, 'Tree rose'],
    [{ size: 'large' }, 'Large bush'],
    [{ size: 'miniature', pot: true }, 'Potted miniature'],
    [{ roseClass: 'Hybrid tea', size: 'small' }, 'Small bush'],
    [{ roseClass: 'Floribunda', size: 'large' }, 'Large bush'],
    [{ roseClass: 'Miniature', size: 'large' }, 'Miniature'],
    [{ roseClass: 'Climber', size: 'small' }, 'Climber'],
  ] as const)('%j is a %s', (reading, sizeClass) => {
    expect(sizeClassFor(reading)).toBe(sizeClass);
  });

  test('a pot alone does not tell: it is asked', () => {
    expect(sizeClassFor({ pot: true })).toBeUndefined();
    expect(sizeClassFor({})).toBeUndefined();
  });

  test('every class with every size, in a pot or not, has one of the closed list', () => {
    for (const roseClass of Object.keys(ROSE_CLASSES) as RoseClass[])
      for (const size of [undefined, ...PLANT_SIZES])
        for (const pot of [true, false])
          expect(SIZE_CLASSES).toContain(sizeClassFor({ roseClass, pot, ...(size && { size }) }));
  });
});

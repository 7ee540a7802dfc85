import { describe, expect, test } from 'vitest';

import { withFacts } from '../../taskpane/facts';

import { paneOn, readyGarden } from './gardens';
import { UNTIDY } from './untidyList';

describe('what follows from what the pane knows', () => {
  test('is what is missing, or the round as it is planned', () => {
    expect(paneOn('round').facts).toMatchObject({ missing: [], planned: { plan: expect.anything() } });
    const unmixed = paneOn('round', { ...readyGarden, products: [], mix: [] }).facts;
    expect(unmixed.missing.map(({ section }) => section)).toEqual(['mix']);
    expect(unmixed.planned).toEqual({ refusals: [] });
  });

  test('is not worked out again for what it does not follow from', () => {
    const before = paneOn('round');
    const after = withFacts({ ...before, typed: { 'rig.barrel': '70' }, section: 'rig' }, before);
    expect(after.facts.planned).toBe(before.facts.planned);
  });

  test.each([
    { garden: { ...readyGarden, plants: readyGarden.plants.slice(0, 1) } },
    { typed: { 'round.style': 'equal' } },
  ])('is worked out again where %j is new', (more) => {
    const before = paneOn('round');
    const after = withFacts({ ...before, ...more }, before);
    expect(after.facts.planned).not.toEqual(before.facts.planned);
  });

  test('is how the list is understood, read once for each decision of the user', () => {
    const cells = UNTIDY.map((line) => line.map((cell) => cell as string | number | null));
    const list = { sheet: 'List', cells: { cells, merges: [] } };
    const before = paneOn('garden', { ...readyGarden, has: { ...readyGarden.has, plants: false } }, { list });
    const drawn = withFacts({ ...before, busy: { text: 'Reading', canStop: true } }, before);
    expect(drawn.facts.adopted).toBe(before.facts.adopted);
    const again = { ...list };
    const ready = { ...before.facts.adopted!, list: again };
    const handed = withFacts({ ...before, list: again, facts: { ...before.facts, adopted: ready } }, before);
    expect(handed.facts.adopted).toBe(ready);
    const decided = withFacts({ ...before, typed: { 'adopt.column.4': 'leftOut' } }, before);
    expect(decided.facts.adopted?.adoption.inventory.outcome).not.toBe(
      before.facts.adopted?.adoption.inventory.outcome,
    );
  });
});

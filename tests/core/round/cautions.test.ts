import { expect, test } from 'vitest';
import { grams } from '../../../addin/core';
import { group, liquid, planned, powder, round } from './garden';

const idsOf = (mix: Parameters<typeof round>[0]) => planned(round(mix)).cautions.map(({ id }) => id);

const ALWAYS = [
  'ground-fault',
  'pump',
  'barrel-weight',
  'level-ground-covered',
  'backflow',
  'dry-plants',
  'runoff',
];

test('powders bring the dust mask and hot water, any product the label and gloves, water neither', () => {
  expect(idsOf({ mix: [powder, liquid] })).toEqual([
    'label-rate',
    'gloves-eyes',
    'dust-mask',
    'hot-water',
    ...ALWAYS,
  ]);
  expect(idsOf({ mix: [liquid] })).toEqual(['label-rate', 'gloves-eyes', ...ALWAYS]);
  expect(idsOf({ mix: [] })).toEqual(['plain-water', ...ALWAYS]);
});

test('each safety caution defers to a label, sheet, manual, code or trade, or to plain care of the barrel', () => {
  for (const { id, text } of planned(round()).cautions) {
    if (id === 'level-ground-covered') continue;
    expect(text, id).toMatch(/label|safety sheet|manual|local code|[Ll]ocal .* code|licensed/);
  }
});

test('the weight is that of the heaviest fill, in the measures of the user', () => {
  const text = (measures: 'metric' | 'US') =>
    planned(round({ measures, groups: [group('Gate', 'Tap', 'large', 30)] })).cautions.find(
      ({ id }) => id === 'barrel-weight',
    )?.text;
  // 102 L × 998.2 g/L + 9 kg; the last fill has 20 L.
  expect(text('metric')).toContain('up to 111 kg, and what the products add');
  expect(text('US')).toContain('up to 245 lb');
});

test('plain water adds nothing to the weight, and whole kilograms are not rounded up', () => {
  const rigChanges = { emptyWeight: grams(120_000 - 102 * 998.2) };
  const groups = [group('Gate', 'Tap', 'large', 25)];
  const said = planned(round({ mix: [], groups, rigChanges })).cautions.find(
    ({ id }) => id === 'barrel-weight',
  );
  expect(said?.text).toMatch(/^A filled barrel weighs up to 120 kg\. Move it only empty;/);
});

test('a product whose label’s greatest rate is not given is named as not checked', () => {
  const unchecked = { ...liquid, greatestRate: undefined };
  const said = planned(round({ mix: [powder, unchecked] })).cautions.find(
    ({ id }) => id === 'label-rate',
  )?.text;
  expect(said).toContain('Not checked, as no greatest rate is given: “Fish and kelp”.');
  const checked = planned(round()).cautions.find(({ id }) => id === 'label-rate')?.text;
  expect(checked).not.toContain('Not checked');
});

test('counts that give far more than the doses warn that barrels run out', () => {
  const changes = {
    doses: [{ sizeClass: 'large', dose: 2.3 as never }],
    rigChanges: { countStep: 5 as never },
  };
  const said = planned(round(changes)).cautions.find(({ id }) => id === 'count-rounding')?.text;
  expect(said).toMatch(/plants get 8\.7 % more than their doses, and the last go short/);
});

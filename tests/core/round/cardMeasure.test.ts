import { describe, expect, test } from 'vitest';
import { cardMeasure, density, findUnit, litres, productFor } from '../../../addin/core';
import { expectSame, gallons, rate } from './garden';

const unit = (token: string) => findUnit(token)!;

describe('measures on the card', () => {
  test('the nearest measure where the label gives no greatest rate', () => {
    // 100 mL are 20.288 tsp; the nearest quarter is 20 1/4.
    const amount = productFor(rate(1, 'mL/L'), litres(100));
    const measure = cardMeasure(amount, unit('tsp'), rate(1, 'mL/L'), undefined, litres(100));
    expect(measure).toMatchObject({
      words: '1/3 cup 1 tbsp 1 1/4 tsp',
      measured: 20.25,
      rounding: 'nearest',
    });
  });

  test('the nearest measure is kept where it stays within the label', () => {
    const asked = rate(1.01, 'mL/L');
    const measure = cardMeasure(
      productFor(asked, litres(100)),
      unit('mL'),
      asked,
      rate(1.5, 'mL/L'),
      litres(100),
    );
    expect(measure).toMatchObject({ words: '101 mL', rounding: 'nearest' });
  });

  test('it is rounded down where the nearest would pass the label’s greatest rate', () => {
    const asked = rate(1.008, 'mL/L');
    const amount = productFor(asked, litres(100));
    const near = cardMeasure(amount, unit('mL'), asked, undefined, litres(100));
    expect(near).toMatchObject({ words: '101 mL', rounding: 'nearest' });
    const down = cardMeasure(amount, unit('mL'), asked, asked, litres(100));
    expect(down).toMatchObject({ words: '100 mL', rounding: 'down' });
    expectSame('error' in down ? down.error : undefined, 100 / 100.8 - 1);
  });

  test('a rate planned above the label with a reason is not passed either', () => {
    const asked = rate(1.008, 'mL/L');
    const measure = cardMeasure(
      productFor(asked, litres(100)),
      unit('mL'),
      asked,
      rate(0.9, 'mL/L'),
      litres(100),
    );
    expect(measure).toMatchObject({ words: '100 mL', rounding: 'down' });
    const lower = rate(1.004, 'mL/L');
    const near = cardMeasure(
      productFor(lower, litres(100)),
      unit('mL'),
      lower,
      rate(0.9, 'mL/L'),
      litres(100),
    );
    expect(near).toMatchObject({ words: '100 mL', rounding: 'nearest' });
  });

  test('an exact measure at the label’s greatest rate is not rounded down', () => {
    const asked = rate(1, 'tbsp/gal');
    const measure = cardMeasure(productFor(asked, gallons(60)), unit('cup'), asked, asked, gallons(60));
    expect(measure).toMatchObject({ words: '3 3/4 cups', rounding: 'nearest' });
  });

  test('a powder by mass is measured by the spoon through its density, never guessed', () => {
    const asked = rate(1, 'g/L');
    const amount = productFor(asked, litres(100));
    const guess = cardMeasure(amount, unit('mL'), asked, undefined, litres(100));
    expect(guess).toEqual({
      refused:
        'Density: nothing was given, and measuring in mL goes between volume and mass; ' +
        'use the grams that one millilitre weighs.',
      place: 'mix',
    });
    const known = cardMeasure(amount, unit('mL'), asked, undefined, litres(100), density(0.8));
    expect(known).toMatchObject({ words: '125 mL' });
  });

  test('a label in the other kind of rate is never passed, with or without a density', () => {
    const asked = rate(1.008, 'mL/L');
    const amount = productFor(asked, litres(100));
    const known = cardMeasure(amount, unit('mL'), asked, rate(1.2, 'g/L'), litres(100), density(1.2));
    // 101 mL × 1.2 g/mL = 121.2 g, above 120 g.
    expect(known).toMatchObject({ words: '100 mL', rounding: 'down' });
    const unknown = cardMeasure(amount, unit('mL'), asked, rate(1.2, 'g/L'), litres(100));
    expect(unknown).toMatchObject({ words: '100 mL', rounding: 'down' });
  });

  test('too little to measure is a sentence, also where rounding down leaves nothing', () => {
    const asked = rate(0.02, 'mL/L');
    const small = cardMeasure(productFor(asked, litres(10)), unit('mL'), asked, undefined, litres(10));
    expect(small).toEqual({
      refused:
        'Amount: 0.2 mL was given, less than the finest measure that keeps to the label; use an amount of 1 mL or more.',
      place: 'mix',
    });
    const most = rate(0.08, 'mL/L');
    const atLabel = cardMeasure(productFor(most, litres(10)), unit('mL'), most, most, litres(10));
    expect(atLabel).toHaveProperty('refused');
    expect(cardMeasure(productFor(most, litres(10)), unit('mL'), most, undefined, litres(10))).toMatchObject({
      words: '1 mL',
    });
  });
});

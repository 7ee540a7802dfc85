import { describe, expect, test } from 'vitest';
import { cardMeasure, density, findUnit, litres, productFor, stockMeasure } from '../../../addin/core';
import { expectSame, gallons, rate } from './garden';

const unit = (token: string) => findUnit(token)!;

describe('measures on the card', () => {
  test('the nearest measure where the label gives no greatest rate', () => {
    // 100 mL are 20.288 tsp; the nearest quarter is 20 1/4.
    const amount = productFor(rate(1, 'mL/L'), litres(100));
    const measure = cardMeasure(amount, unit('tsp'), undefined, litres(100));
    // Three measures: two of them, 1/3 cup 4 tsp or 1/3 cup 2 tbsp, would be off by 3 % and more.
    expect(measure).toMatchObject({
      words: '1/3 cup 1 tbsp 1 1/4 tsp',
      measured: 20.25,
      rounding: 'nearest',
    });
  });

  test('the nearest measure is kept where it stays within the label', () => {
    const asked = rate(1.01, 'mL/L');
    const measure = cardMeasure(productFor(asked, litres(100)), unit('mL'), rate(1.5, 'mL/L'), litres(100));
    expect(measure).toMatchObject({ words: '101 mL', rounding: 'nearest', tooLittle: false });
  });

  test('it is rounded down where the nearest would pass the label’s greatest rate', () => {
    const asked = rate(1.008, 'mL/L');
    const amount = productFor(asked, litres(100));
    const near = cardMeasure(amount, unit('mL'), undefined, litres(100));
    expect(near).toMatchObject({ words: '101 mL', rounding: 'nearest' });
    const down = cardMeasure(amount, unit('mL'), asked, litres(100));
    expect(down).toMatchObject({ words: '100 mL', rounding: 'down' });
    expectSame(down?.error, 100 / 100.8 - 1);
  });

  test('a rate planned above the label with a reason is not passed either', () => {
    const asked = rate(1.008, 'mL/L');
    const measure = cardMeasure(productFor(asked, litres(100)), unit('mL'), rate(0.9, 'mL/L'), litres(100));
    expect(measure).toMatchObject({ words: '100 mL', rounding: 'down' });
    const lower = rate(1.004, 'mL/L');
    const near = cardMeasure(productFor(lower, litres(100)), unit('mL'), rate(0.9, 'mL/L'), litres(100));
    expect(near).toMatchObject({ words: '100 mL', rounding: 'nearest' });
  });

  test('an exact measure at the label’s greatest rate is not rounded down', () => {
    const asked = rate(1, 'tbsp/gal');
    const measure = cardMeasure(productFor(asked, gallons(60)), unit('cup'), asked, gallons(60));
    expect(measure).toMatchObject({ words: '3 3/4 cups', rounding: 'nearest' });
    for (let many = 1; many <= 100; many += 1) {
      const [amount, label] = [productFor(asked, gallons(many)), rate(1, 'tbsp/gal')];
      const free = cardMeasure(amount, unit('cup'), undefined, gallons(many))!;
      const held = cardMeasure(amount, unit('cup'), label, gallons(many))!;
      if (free.words === held.words) expect(held.rounding, `${many} gal`).toBe('nearest');
      else expect([held.rounding, held.measured < free.measured], `${many} gal`).toEqual(['down', true]);
    }
  });

  test('a powder by mass is measured by the spoon through its density, never guessed', () => {
    const asked = rate(1, 'g/L');
    const amount = productFor(asked, litres(100));
    const guess = cardMeasure(amount, unit('mL'), undefined, litres(100));
    expect(guess).toBeUndefined();
    const known = cardMeasure(amount, unit('mL'), undefined, litres(100), density(0.8));
    expect(known).toMatchObject({ words: '125 mL' });
  });

  test('a label in the other kind of rate is never passed, with or without a density', () => {
    const asked = rate(1.008, 'mL/L');
    const amount = productFor(asked, litres(100));
    const known = cardMeasure(amount, unit('mL'), rate(1.2, 'g/L'), litres(100), density(1.2));
    // 101 mL × 1.2 g/mL = 121.2 g, above 120 g.
    expect(known).toMatchObject({ words: '100 mL', rounding: 'down' });
    const unknown = cardMeasure(amount, unit('mL'), rate(1.2, 'g/L'), litres(100));
    expect(unknown).toMatchObject({ words: '100 mL', rounding: 'down' });
  });

  test('too little to measure is told as a part of a stock, never above the label', () => {
    const asked = rate(0.02, 'mL/L');
    const small = cardMeasure(productFor(asked, litres(10)), unit('mL'), undefined, litres(10))!;
    expect(small.words).toBe('too little to measure: 5 mL in 1 L of water, 40 mL of that');
    expect(small.tooLittle).toBe(true);
    expectSame(small.measured, 0.2);
    // 0.8 mL may not be rounded up to 1 mL, but is measurable where no label is known.
    const most = rate(0.08, 'mL/L');
    const amount = productFor(most, litres(10));
    const atLabel = cardMeasure(amount, unit('mL'), most, litres(10))!;
    expect(atLabel.words).toBe('too little to measure: 5 mL in 1 L of water, 160 mL of that');
    expectSame(atLabel.measured, 0.8);
    expect(cardMeasure(amount, unit('mL'), undefined, litres(10))).toMatchObject({ words: '1 mL' });
  });

  test('a part of a stock tells how far it is off; what no stock helps is told as nothing', () => {
    // 0.0588 tsp in a quart, 192 tsp: 11.29 tsp of that, measured as 11 1/4.
    const part = productFor(rate(0.0588, 'tsp/gal'), gallons(1));
    const little = cardMeasure(part, unit('tsp'), undefined, gallons(1));
    expectSame(little?.error, 11.25 / 192 / 0.0588 - 1);
    const least = cardMeasure(
      productFor(rate(1e-7, 'tsp/gal'), gallons(1)),
      unit('tsp'),
      undefined,
      gallons(1),
    );
    expect(least).toEqual({
      words: 'too little to measure',
      measured: 0,
      error: -1,
      rounding: 'nearest',
      tooLittle: true,
    });
  });

  test.each([
    [0.0588, 'tsp', '1 tsp in 1 qt of water, 3 tbsp 2 1/4 tsp of that'],
    [0.005, 'tsp', '1 tsp in 5 gal of water, 1/3 cup 1 tbsp of that'],
    [0.1, 'oz', '1 oz in 1 qt of water, 1/3 cup 1 tbsp of that'],
    [0.05, 'imp fl oz', '1 imp fl oz in 1 imp gal of water, 8 imp fl oz of that'],
    [0.4, 'g', '5 g in 1 L of water, 80 mL of that'],
    [0.01, 'mL', '5 mL in 10 L of water, 20 mL of that'],
  ])('%d %s is measured as %s', (amount, token, words) => {
    expect(stockMeasure(amount, unit(token))?.words).toBe(words);
  });

  test('a stock holds what it says, to the error of its part, and nothing where the part is too little too', () => {
    const stock = stockMeasure(0.0588, unit('tsp'))!;
    expectSame(stock.measured, 11.25 / 192);
    expect(stockMeasure(1e-6, unit('tsp'))).toBeUndefined();
  });
});

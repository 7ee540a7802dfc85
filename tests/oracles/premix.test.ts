import { describe, test } from 'vitest';
import { findUnit, fromCanonical, grams, leastWater, toCanonical, waterMass, litres } from '../../addin/core';
import { asPrinted, expectWithin } from './within';

const pounds = (n: number) => grams(toCanonical(n, findUnit('lb')!));

/** Grams for a litre of water at 20 °C, from the share by mass that a saturated solution holds. */
const gramsPerLitre = (percent: number) => (percent / (100 - percent)) * waterMass(litres(1));

// Shares: CRC Handbook of Chemistry and Physics, 98th ed. (2017), Aqueous Solubility of Inorganic Compounds at Various
// Temperatures, read in the public transcription chicolucio/solutions. The gallons are computed from them, with no
// margin and a litre of water taken as 998.2 g at every temperature.
describe('least water for salts of known solubility (computed)', () => {
  test.each([
    { salt: 'potassium nitrate', lb: 5, celsius: 10, percent: 17.6, figure: '2.810' },
    { salt: 'potassium nitrate', lb: 5, celsius: 20, percent: 24.2, figure: '1.880' },
    { salt: 'potassium nitrate', lb: 5, celsius: 30, percent: 31.3, figure: '1.317' },
    { salt: 'potassium sulfate', lb: 2, celsius: 10, percent: 8.46, figure: '2.598' },
    { salt: 'potassium sulfate', lb: 2, celsius: 20, percent: 9.95, figure: '2.173' },
    { salt: 'potassium sulfate', lb: 2, celsius: 30, percent: 11.4, figure: '1.866' },
  ])('$lb lb of $salt at $celsius °C take $figure gal', ({ lb, percent, figure }) => {
    const water = leastWater(pounds(lb), gramsPerLitre(percent), 1);
    expectWithin(fromCanonical(water, findUnit('gal')!), Number(figure), asPrinted(figure));
  });
});

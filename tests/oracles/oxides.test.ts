import { describe, expect, test } from 'vitest';
import { convertShare } from '../../addin/core';
import { expectWithin } from './within';

const VT = 'Virginia Tech, SPES-201NP, Conversion Factors Needed for Common Fertilizer Calculations';
const IFA = 'International Fertilizer Industry Association, fertilizer.sgs.com/conversion-tables.htm';
const NDSU = 'North Dakota State Univ., PLSC 210 homework sheet';

// The two sources round differently in the fourth figure: VT 0.05 %, IFA 0.01 %. NDSU prints two figures.
test.each([
  { from: 'P2O5', to: 'P', factor: 0.4365, tolerance: 5e-4, source: VT },
  { from: 'P', to: 'P2O5', factor: 2.291, tolerance: 5e-4, source: VT },
  { from: 'K2O', to: 'K', factor: 0.8301, tolerance: 5e-4, source: VT },
  { from: 'K', to: 'K2O', factor: 1.2051, tolerance: 5e-4, source: VT },
  { from: 'CaO', to: 'Ca', factor: 0.7147, tolerance: 5e-4, source: VT },
  { from: 'Ca', to: 'CaO', factor: 1.3992, tolerance: 5e-4, source: VT },
  { from: 'MgO', to: 'Mg', factor: 0.6032, tolerance: 5e-4, source: VT },
  { from: 'Mg', to: 'MgO', factor: 1.6578, tolerance: 5e-4, source: VT },
  { from: 'P2O5', to: 'P', factor: 0.4364, tolerance: 1e-4, source: IFA },
  { from: 'P', to: 'P2O5', factor: 2.2914, tolerance: 1e-4, source: IFA },
  { from: 'K2O', to: 'K', factor: 0.8302, tolerance: 1e-4, source: IFA },
  { from: 'K', to: 'K2O', factor: 1.2046, tolerance: 1e-4, source: IFA },
  { from: 'P2O5', to: 'P', factor: 0.44, tolerance: 0.012, source: NDSU },
  { from: 'K2O', to: 'K', factor: 0.83, tolerance: 0.006, source: NDSU },
])('$from to $to: $factor ($source)', ({ from, to, factor, tolerance }) => {
  expectWithin(convertShare(1, from, to), factor, tolerance);
});

describe('worked examples', () => {
  test('49.8 % K is 60 % K2O', () => {
    expectWithin(convertShare(49.8, 'K', 'K2O'), 60, 5e-4); // Virginia Tech, SPES-201NP
  });

  test('50 lb of 20-20-20 holds 4.364 lb P and 8.302 lb K', () => {
    // Computed from the atomic weights.
    expectWithin(convertShare(10, 'P2O5', 'P'), 4.364, 2e-4);
    expectWithin(convertShare(10, 'K2O', 'K'), 8.302, 1e-4);
  });

  test('oxides of one element are not those of another', () => {
    expect(convertShare(20, 'P2O5', 'K')).toBeUndefined();
    expect(convertShare(20, 'P2O5', 'P2O5')).toBeUndefined();
  });
});

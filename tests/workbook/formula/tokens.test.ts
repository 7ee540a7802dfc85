import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { callsFeed } from '../../../addin/workbook/formula/feedSpelling';
import { respelled, tokensOf } from '../../../addin/workbook/formula/tokens';

/** The pieces of a kind. */
const pieces = (kind: string, formula: string): string[] =>
  tokensOf(formula).flatMap((token) => (token.kind === kind ? [token.text] : []));

describe('a formula is read piece by piece', () => {
  test.each([
    [
      'cells',
      "=A1+$b$2:C9+Rig!B4+'It''s mine'!A1&\"A1\"&B5.5&rate_B5",
      ['A1', '$b$2:C9', 'Rig!B4', "'It''s mine'!A1"],
    ],
    ['columns', "=SUM(B:$C,'My list'!A:A)+A1:B2", ['B:$C', "'My list'!A:A"]],
    ['rows', '=SUM($5:6)+5', ['$5:6']],
    ['function', '=LOG10 (A1)+_xldudf_FEED_DOSE(1)+sum+B2(1)', ['LOG10', '_xldudf_FEED_DOSE', 'B2']],
    ['name', '=Rig_flow*TRUE+Rig!total+"flow"+SUM(1)', ['Rig_flow', 'TRUE', 'Rig!total']],
    ['text', '="say ""five"""&"A1"', ['"say ""five"""', '"A1"']],
    ['error', '=IF(#N/A,#DIV/0!,#REF!)', ['#N/A', '#DIV/0!', '#REF!']],
    ['number', '=1.5E-3+.5+60', ['1.5E-3', '.5', '60']],
    ['other', '=A1#+@A2+Roses[Bed]', ['#', '@', '[', ']']],
    ['cells', '=[1]Rig!A1', ['[1]Rig!A1']],
  ])('its %s: %s', (kind, formula, expected) => {
    expect(pieces(kind, formula)).toEqual(expected);
  });

  test('and nothing of it is lost, whatever it is', () => {
    const scraps = fc.constantFrom(
      '"',
      "'",
      'A1',
      '$B$2',
      ':',
      '!',
      '(',
      ')',
      'Rig',
      '#N/A',
      ' ',
      ',',
      '=',
      '7',
      '[',
      'é',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'grapheme' }),
          fc.array(scraps).map((all) => all.join('')),
        ),
        (formula) => {
          expect(respelled(formula, ({ text }) => text)).toBe(formula);
        },
      ),
    );
  });
});

test.each([
  ['=FEED.DOSE(1)', true],
  ['=1+_xldudf_feed_dose (1)', true],
  ['="FEED.DOSE(1)"', false],
  ['=MYFEED.DOSE(1)', false],
  ["='FEED.DOSE(1)'!A1", false],
])('%s calls a FEED function: %s', (formula, calls) => {
  expect(callsFeed(formula)).toBe(calls);
});

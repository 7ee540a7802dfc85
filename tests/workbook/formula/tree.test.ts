import { describe, expect, test } from 'vitest';

import { treeOf, type Part } from '../../../addin/workbook/formula/tree';

/** A formula taken apart, told with a bracket round each operation. */
const told = (part: Part): string => {
  switch (part.kind) {
    case 'value':
      return part.value === null ? '' : JSON.stringify(part.value);
    case 'array':
      return `{${part.rows.map((row) => row.map(told).join(',')).join(';')}}`;
    case 'read':
      return part.text;
    case 'call':
      return `${part.name}(${part.args.map(told).join(',')})`;
    case 'negative':
      return `(-${told(part.of)})`;
    case 'percent':
      return `(${told(part.of)}%)`;
    case 'joined':
      return `(${told(part.left)}${part.operator}${told(part.right)})`;
  }
};

describe('a formula is taken apart', () => {
  test.each([
    ['=1+2*3^2', '(1+(2*(3^2)))'],
    ['=2^3^2', '((2^3)^2)'],
    ['=-2^2', '((-2)^2)'],
    ['=8-4-2', '((8-4)-2)'],
    ['=1+2&"x"=B2', '(((1+2)&"x")=B2)'],
    ['=50%*B2', '((50%)*B2)'],
    ['=(1+2)*3', '((1+2)*3)'],
    ['=1.5E-3+.5', '(0.0015+0.5)'],
    ['="say ""five"""', '"say \\"five\\""'],
    ["='Round card'!$A$2:C9", "'Round card'!$A$2:C9"],
    ["='It''s mine'!A1", "'It''s mine'!A1"],
    ['=feed.fills(need,60,"gal",,TRUE)', 'FEED.FILLS(need,60,"gal",,true)'],
    ['=_xlfn.IFS(A1>1,2)', 'IFS((A1>1),2)'],
    ['=SUM({1,2;3,-4})', 'SUM({1,2;3,(-4)})'],
    ['=IF(#N/A,1,#DIV/0!)', 'IF({"error":"#N/A"},1,{"error":"#DIV/0!"})'],
    ['=LOG10(A1)', 'LOG10(A1)'],
    ['=TODAY()', 'TODAY()'],
    ["=NEED(B:$C,'My list'!2:3)", "NEED(B:$C,'My list'!2:3)"],
    ['= 1 +\n2', '(1+2)'],
  ])('%s', (formula, parts) => {
    expect(told(treeOf(formula)!)).toBe(parts);
  });
});

test.each([
  '=SUM((A1:A2~C1))',
  '=SUM(1',
  '=1+',
  '=1)',
  '=A1#',
  '=Roses[Bed]',
  '=A1:INDEX(B1,1)',
  '=',
  '={1,2',
])('%s is not followed here', (formula) => expect(treeOf(formula)).toBeUndefined());

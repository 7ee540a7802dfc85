import { expect, test } from 'vitest';

import { cameOf } from '../../../addin/workbook/formula/sameFormula';

const TEMPLATE = `=IF($A5="","",SUMIFS('Plants'!$D$4:$D$1003,'Plants'!$B$4:$B$1003,$A5)*(1+1E-9))`;

test.each([
  ['as it is', TEMPLATE],
  [
    'spelled by another program',
    `=if($A5="", "", sumifs(Plants!$D$4:$D$1003,Plants!$B$4:$B$1003,$A5)*(1+1E-09))`,
  ],
  ['looking less far down', TEMPLATE.replaceAll('1003', '503')],
  ['with a column lost', `=IF($A5="","",SUMIFS(#REF!,'Plants'!$B$4:$B$1003,$A5)*(1+1E-9))`],
  ['with its sheet named', `=IF($A5="","",SUMIFS('Plants'!#REF!,Plants!$B$4:$B$1003,$A5)*(1+1E-9))`],
  [
    'with parts of it kept',
    `=IF($A5="","",SUMIFS($Plants!$#REF!$4:$#REF!$1003,Plants!$B$4:$B$1003,$A5)*(1+1E-9))`,
  ],
])('the formula %s came of its template', (_how, now) => {
  expect(cameOf(now, TEMPLATE)).toBe(true);
});

test.each([
  ['another row', TEMPLATE.replaceAll('$A5', '$A6')],
  ['another column', TEMPLATE.replaceAll('$D', '$E')],
  ['another sheet', TEMPLATE.replaceAll('Plants', 'Beds')],
  ['another first row', TEMPLATE.replaceAll('$4', '$5')],
  ['another number', TEMPLATE.replace('1E-9', '0.01')],
  ['another text', TEMPLATE.replace('"",S', '"-",S')],
  ['something more', `${TEMPLATE}*2`],
  ['a lost reference of its own', '=#REF!*2'],
  ['a lost reference in its place and more', TEMPLATE.replace("'Plants'!$D$4:$D$1003", '2*#REF!')],
])('a formula with %s is the user’s own', (_how, now) => {
  expect(cameOf(now, TEMPLATE)).toBe(false);
});

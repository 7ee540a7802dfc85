import { expect, test } from 'vitest';
import { freshSite } from '../../addin/workbook/tables/site';
import { fillTemplate, type Places } from '../../addin/workbook/tables/template';
import { sameFormula } from '../../addin/workbook/formula/sameFormula';
import { dosesTable } from '../../addin/workbook/sheets/doses';

const places: Places = {
  sites: { doses: freshSite(dosesTable, 'Doses', 4, 0) },
  added: {},
  cells: { Rig_flow: { sheet: 'Rig', row: 7, column: 1, rows: 1, columns: 1 } },
};

test.each([
  ['={dose}*2', '=$B10*2'],
  ['=SUM({doses.dose!})', '=SUM(Doses!$B$6:$B$205)'],
  ['=MATCH("x",{doses.sizeClass},0)', '=MATCH("x",Doses!$A$5:$A$205,0)'],
  ['={Rig_flow}', '=Rig!$B$8'],
])('the template %s is filled in for its row', (template, formula) => {
  expect(fillTemplate(template, places, places.sites['doses'])(9)).toBe(formula);
});

test('a template that names nothing known is a mistake of the program and is thrown', () => {
  expect(() => fillTemplate('={Rig_flw}', places)).toThrow('Rig_flw');
  expect(() => fillTemplate('={doses.dosis}', places)).toThrow('dosis');
});

test.each([
  ["='Rig'!$B$9*2", '=Rig!$B$9 * 2', true],
  ['=feed.seconds(A1,"gal")', '=FEED.SECONDS(A1,"gal")', true],
  ['=A1&"x y"', '=A1&"xy"', false],
  ['=A1&"Gal"', '=A1&"gal"', false],
  ['=A1', '=$A1', false],
])('%s and %s are the same formula: %s', (a, b, same) => {
  expect(sameFormula(a, b)).toBe(same);
});

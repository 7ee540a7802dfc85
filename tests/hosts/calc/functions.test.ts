import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { catalogue, formulaOf, NAMESPACE } from '../../../functions';
import { DIVISION, inCalc, NOT_AVAILABLE, sheetOf, VALUE, type Sheet, WRONG_ARGUMENT } from './cells';
import { processorSeconds } from './engine/engines';
import { sharedOffice, type Office } from './office';

/** What Calc shows as Err:504: it cannot hand over a parameter. */
const REFUSED_BY_CALC = 504;

/** Processor seconds that the office has used. */
const used = (): number => processorSeconds(office.pids().at(-1)!);

let office: Office;
let sheet: Sheet;
beforeAll(async () => {
  office = await sharedOffice();
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
});
afterAll(async () => office.end());

const examples = catalogue.flatMap((entry) =>
  entry.examples.map((example, index) => ({ entry, example, index })),
);

describe('every example of the catalogue, computed by Calc', () => {
  test.each(examples)('$entry.name, example $index', async ({ entry, example }) => {
    const formula = inCalc(formulaOf(entry.name, example.args));
    const rows = typeof example.answer === 'object' ? example.answer : [[example.answer]];
    const area = `A1:${String.fromCharCode(64 + rows[0]!.length)}${rows.length}`;
    const array = { do: 'put_array', doc: sheet.doc, sheet: 'Sheet1', cells: area };
    if (entry.result.kind === 'rows') await office.ask({ ...array, formula });
    else await sheet.put('A1', [formula]);
    const shown = await sheet.cells(area);
    for (const [r, row] of rows.entries())
      for (const [c, wanted] of row.entries()) {
        const { value, error } = shown[r]![c]!;
        expect(error, formula).toBe(0);
        if (typeof wanted === 'number') expect(value).toBeCloseTo(wanted, 9);
        else expect(value).toBe(wanted);
      }
    if (entry.result.kind === 'rows') await office.ask({ ...array, formula: '' });
  });
});

describe('the function wizard', () => {
  test.each(catalogue)('knows $name with its arguments', async (entry) => {
    const told = await office.ask<{ description: string; arguments: [string, string][] }>({
      do: 'described',
      name: `${NAMESPACE}.${entry.name}`,
    });
    expect(told.description).toContain(entry.summary);
    expect(told.arguments.map(([name]) => name)).toEqual(entry.parameters.map(({ name }) => name));
    for (const [index, [, description]] of told.arguments.entries())
      expect(description).toContain(entry.parameters[index]!.description);
  });
});

describe('arguments as cells hold them', () => {
  test('a reference, a blank cell and a number in a formula are one value each', async () => {
    await sheet.values('B1:B2', [[0.7], ['']]);
    expect((await sheet.shows('=FEED.SECONDS(B1;"gal";2.8;"gal/min")')).value).toBeCloseTo(15, 9);
    expect((await sheet.shows('=FEED.SECONDS(B1;"gal";2.8;"gal/min";B2)')).value).toBeCloseTo(15, 9);
    expect((await sheet.shows('=FEED.SECONDS(B2;"gal";2.8;"gal/min")')).error).toBe(VALUE);
  });

  test('an argument may be left out at the end and in the middle', async () => {
    expect((await sheet.shows('=FEED.FILLS(200;60;"gal")')).value).toBe(4);
    expect((await sheet.shows('=FEED.FILLS(200;60;"gal";;0.9)')).value).toBe(4);
    expect((await sheet.shows('=FEED.FILLS(;60;"gal")')).error).toBe(VALUE);
  });

  test('TRUE and FALSE count as 1 and 0', async () => {
    expect((await sheet.shows('=FEED.SECONDS(TRUE();"gal";2;"gal/min")')).value).toBeCloseTo(30, 9);
  });

  test('blank cells of a range are left out', async () => {
    await sheet.values('B1:B5', [[46], [''], [47], [''], [45]]);
    const flow = await sheet.shows('=FEED.FLOW(2;"gal";B1:B5;"gal/min")');
    expect(flow.value).toBeCloseTo((2 * 3 * 60) / (46 + 47 + 45), 9);
  });

  test('a whole column is read as far as it is used', async () => {
    await sheet.values('D1:E3', [
      [10, 0.5],
      [20, 0.25],
      [3, 1],
    ]);
    expect((await sheet.shows('=FEED.NEED(D:D;E:E;"gal";"gal")')).value).toBeCloseTo(13, 9);
    expect((await sheet.shows('=FEED.NEED(D:D;E1:E2000;"gal";"gal")')).error).toBe(VALUE);
  });

  test('long ranges of one height need not be equally full', async () => {
    await sheet.values('D1:E3', [
      [10, 0.5],
      [20, 0.25],
      [3, ''],
    ]);
    expect((await sheet.shows('=FEED.NEED(D1:D3000;E1:E3000;"gal";"gal")')).value).toBeCloseTo(10, 9);
    expect((await sheet.shows('=FEED.SECONDS(D1:D3000;"gal";2;"gal/min")')).error).toBe(VALUE);
  });

  test('a long range with blank cells, and one with a text', async () => {
    const rows = Array.from({ length: 2_000 }, (_, row) => [row % 3 ? row % 40 : '', 0.5]);
    await sheet.values('D1:E2000', rows);
    const plants = rows.reduce((sum, [count]) => sum + Number(count), 0);
    const formula = '=FEED.NEED(D1:D2000;E1:E2000;"gal";"gal")';
    expect((await sheet.shows(formula)).value).toBeCloseTo(plants / 2, 9);
    await sheet.values('D1500', [['ten']]);
    expect((await sheet.shows(formula)).error).toBe(VALUE);
    await sheet.values('D1500', [['']]);
    expect((await sheet.shows(formula)).value).toBeCloseTo((plants - (1_499 % 40)) / 2, 9);
  });

  test('two whole columns hold Calc for a second or two', async () => {
    const rows = Array.from({ length: 10_000 }, (_, row) => [1 + (row % 40), 0.1 + row / 1000]);
    await sheet.values('D1:E10000', rows);
    const need = rows.reduce((sum, [plants, dose]) => sum + plants! * dose!, 0);
    const began = used();
    const { value } = await sheet.shows('=FEED.NEED(D:D;E:E;"gal";"gal")');
    const took = used() - began;
    await sheet.values(
      'D1:E10000',
      rows.map(() => ['', '']),
    );
    expect(value).toBeCloseTo(need, 6);
    expect(took).toBeLessThan(4);
  });

  test('a function takes what another one gives', async () => {
    const nested = await sheet.shows('=FEED.DOSE(FEED.SECONDS(0.7;"gal";2.8;"gal/min");2.8;"gal/min";"gal")');
    expect(nested.value).toBeCloseTo(0.7, 9);
    expect((await sheet.shows('=SUM(FEED.FILLPLAN(200;60;"gal"))')).value).toBeCloseTo(
      1 + 2 + 3 + 4 + 400,
      9,
    );
  });
});

describe('errors are the spreadsheet’s own', () => {
  test.each([
    ['a wrong kind', '=FEED.SECONDS("much";"gal";2.8;"gal/min")', VALUE],
    ['out of range', '=FEED.SECONDS(-1;"gal";2.8;"gal/min")', VALUE],
    ['an unknown unit', '=FEED.SECONDS(1;"gallon or so";2.8;"gal/min")', NOT_AVAILABLE],
    ['too few repeats', '=FEED.FLOWSPREAD(46)', NOT_AVAILABLE],
    ['an error that came in', '=FEED.SECONDS(1/0;"gal";2.8;"gal/min")', DIVISION],
    ['a missing argument', '=FEED.SECONDS()', VALUE],
    ['an array function that refuses', '=FEED.FILLPLAN(0;60;"gal")', VALUE],
    ['any cell of it', '=INDEX(FEED.FILLPLAN(0;60;"gal");20;3)', VALUE],
    ['its size', '=ROWS(FEED.FILLPLAN(0;60;"gal"))', VALUE],
    ['an array function that does not know the unit', '=FEED.FILLPLAN(200;60;"gallon or so")', NOT_AVAILABLE],
    ['its first cell', '=INDEX(FEED.FILLPLAN(200;60;"gallon or so");1;1)', NOT_AVAILABLE],
    ['below its first cell', '=INDEX(FEED.FILLPLAN(200;60;"gallon or so");2;1)', WRONG_ARGUMENT],
  ])('%s', async (_what, formula, error) => {
    expect((await sheet.shows(formula)).error).toBe(error);
    expect((await sheet.shows(`=ISERROR(${formula.slice(1)})`)).value).toBe(1);
    expect((await sheet.shows(`=IFERROR(${formula.slice(1)};"caught")`)).value).toBe('caught');
  });

  test('one cell that holds an error gives it on', async () => {
    await sheet.put('B1:B2', ['=1/0'], ['=NA()']);
    expect((await sheet.shows('=FEED.FLOW(2;"gal";B1;"gal/min")')).error).toBe(DIVISION);
    expect((await sheet.shows('=FEED.FLOW(2;"gal";B2;"gal/min")')).error).toBe(NOT_AVAILABLE);
  });

  test('Calc itself refuses a range of cells that holds an error, and asks no add-in', async () => {
    await sheet.put('B1:B3', ['46'], ['=1/0'], ['47']);
    expect((await sheet.shows('=FEED.FLOW(2;"gal";B1:B3;"gal/min")')).error).toBe(REFUSED_BY_CALC);
    // So it does with its own add-in functions.
    const own = '=COM.SUN.STAR.SHEET.ADDIN.ANALYSIS.GETMULTINOMIAL(B1:B3)';
    expect((await sheet.shows(own)).error).toBe(REFUSED_BY_CALC);
  });

  test.each([
    ['short', 'K1:K3*1'],
    ['long', 'K1:K900*1'],
  ])('an error in %s computed rows comes out as it is', async (_length, rows) => {
    await sheet.put('K1:K3', ['46'], ['=1/0'], ['47']);
    const array = { do: 'put_array', doc: sheet.doc, sheet: 'Sheet1', cells: 'J1' };
    await office.ask({ ...array, formula: `=FEED.FLOW(2;"gal";${rows};"gal/min")` });
    expect((await sheet.cell('J1')).error).toBe(DIVISION);
    await office.ask({ ...array, formula: `=FEED.FLOW(2;"gal";IFERROR(${rows};"");"gal/min")` });
    expect((await sheet.cell('J1')).value).toBeCloseTo((2 * 2 * 60) / (46 + 47), 9);
    await office.ask({ ...array, formula: '' });
  });
});

describe('the pane explains the selected cell', () => {
  interface TextPiece {
    readonly kind: string;
    readonly text?: string;
    readonly buttons?: readonly { readonly key: string; readonly label: string }[];
  }
  const view = async (event: object): Promise<string[]> => {
    const { pieces } = await office.ask<{ pieces: TextPiece[] }>({
      do: 'job',
      doc: sheet.doc,
      request: { event },
    });
    return pieces.flatMap(({ text, buttons = [] }) => [
      ...(text === undefined ? [] : [text]),
      ...buttons.map(({ label }) => label),
    ]);
  };
  const explained = async (formula: string): Promise<string> => {
    await sheet.put('G1', [formula]);
    await office.ask({ do: 'select', doc: sheet.doc, sheet: 'Sheet1', cells: 'G1' });
    await view({ kind: 'selected', sheet: 'Sheet1', row: 0, column: 6 });
    return (await view({ kind: 'fold', block: 'cell', open: true })).join('\n');
  };

  test('the working in steps, with the values of its cells', async () => {
    await sheet.values('B1', [[0.7]]);
    const told = await explained('=ROUND(FEED.SECONDS(B1*2;"gal";SUM(1;1.8);"gal/min");0)');
    expect(told).toContain('Sheet1, G1 shows 30');
    expect(told).toContain('SECONDS: Seconds to hold the wand on one plant.');
    expect(told).toContain('=ROUND(FEED.SECONDS(B1*2,"gal",SUM(1,1.8),"gal/min"),0)');
    expect(told).toContain('1.4 gal ÷ 2.8 gal/min × 60 s/min = 30 s');
    expect(told).toContain('Source:');
  });

  test('the sentence of an error', async () => {
    const told = await explained('=IF(TRUE();FEED.SECONDS(1;"gallon or so";2.8;"gal/min");0)');
    expect(told).toContain('G1 shows #N/A');
    expect(told).toMatch(/gallon or so/);
  });

  test('a branch that is not taken is not told', async () => {
    expect(await explained('=IF(FALSE();FEED.SECONDS(1;"gal";2;"gal/min");7)')).not.toContain('SECONDS:');
  });

  test('whole columns are told as far as anything stands in them', async () => {
    const told = await explained('=FEED.NEED(B1:B1;B:B;"gal";"gal")');
    expect(told).toMatch(/plants: 0\.7, from B1/);
    expect(told).toMatch(/dose: .*, from B:B/);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { sheetOf, type Sheet } from './cells';
import { startOffice, type Office } from './office';

/* What the pane says of the selected cell, where Calc and the extension do not say it themselves. */

let office: Office;
let sheet: Sheet;
/** The engine of the cells: no pane is open when they first ask. */
let cellsEngine: number;
beforeAll(async () => {
  office = await startOffice();
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  expect((await sheet.shows('=FEED.SECONDS(0.7;"gal";2.8;"gal/min")')).value).toBe(15);
  cellsEngine = engines()[0]!;
});
afterAll(async () => office?.end());

interface TextPiece {
  readonly text?: string;
  readonly buttons?: readonly { readonly label: string }[];
}

const view = async (event: object): Promise<string> => {
  const { pieces } = await office.ask<{ pieces: TextPiece[] }>({
    do: 'job',
    doc: sheet.doc,
    request: { event },
  });
  return pieces
    .flatMap(({ text = '', buttons = [] }) => [text, ...buttons.map(({ label }) => label)])
    .join('\n');
};

const selected = async (): Promise<string> => {
  await office.ask({ do: 'select', doc: sheet.doc, sheet: 'Sheet1', cells: 'G1' });
  await view({ kind: 'selected', sheet: 'Sheet1', row: 0, column: 6 });
  return view({ kind: 'fold', block: 'cell', open: true });
};

const explained = async (formula: string): Promise<string> => {
  await sheet.put('G1', [formula]);
  return selected();
};

const log = (): string => readFileSync(join(office.userFolder, 'wandcount.log'), 'utf8');
const engines = (): number[] =>
  [...log().matchAll(/engine (\d+) started/g)].map(([, number]) => Number(number));

const FROM_C2 = 'C2 shows an error, and this formula uses it. Put that cell right first.';

test('an error that an argument passes on, and Calc’s refusal of a range with one in it, name the cell', async () => {
  await sheet.put('C1:C3', ['0.5'], ['=1/0'], ['0.7']);
  const passed = await explained('=FEED.SECONDS(C2;"gal";2.8;"gal/min")');
  expect(passed).toContain('G1 shows #DIV/0!');
  expect(passed).toContain(FROM_C2);
  const range = await explained('=FEED.FLOWSPREAD(C1:C3)');
  expect(range).toContain('G1 shows Err:504');
  expect(range).toContain(FROM_C2);
  expect(await explained('=C2*2')).toContain(FROM_C2);
  expect(await explained('=FEED.SECONDS(C1;"gal";2.8;"gal/min")')).not.toContain('shows an error');
});

test('a working that cannot be told says at which part, and leaves no fault in the log', async () => {
  const offset = await explained('=FEED.SECONDS(OFFSET(C1;2;0);"gal";2.8;"gal/min")');
  expect(offset).toContain('G1 shows 15');
  expect(offset).toContain('dose: not worked out here, from C1 (0.5)');
  expect(offset).toContain('because dose cannot be followed here');
  expect(log()).not.toContain('Traceback');
});

test('arithmetic and Calc’s own functions are told by the cells that go in', async () => {
  const told = await explained('=ROUND(C1*2;1)+C3');
  expect(told).toContain('=ROUND(C1*2,1)+C3');
  expect(told).toContain('C1: 0.5');
  expect(told).toContain('C3: 0.7');
});

test('IFS tells the branch that it takes', async () => {
  const told = await explained(
    '=IFS(C1>1;FEED.SECONDS(1;"gal";2;"gal/min");TRUE();FEED.SECONDS(C3;"gal";2.8;"gal/min"))',
  );
  expect(told).toContain('G1 shows 15');
  expect(told).toContain('=IFS(');
  expect(told).toContain('0.7 gal ÷ 2.8 gal/min × 60 s/min = 15 s');
  expect(told).not.toContain('1 gal ÷');
});

test('while the cells’ engine does not answer and the pane’s does, the pane says why a cell shows #N/A', async () => {
  await explained('=FEED.SECONDS(C1;"gal";2.8;"gal/min")');
  expect(engines()).toHaveLength(2);
  process.kill(cellsEngine, 'SIGSTOP');
  await sheet.values('C1', [[0.55]]);
  const told = await selected();
  expect(told).toContain('G1 shows #N/A');
  expect(told).toMatch(/The feeding engine (did not answer in time and was stopped|is still starting)/);
});

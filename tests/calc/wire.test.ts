import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { wireRecords } from '../../addin/build/calc/wireRecords';
import { root } from '../../addin/build/paths.mjs';
import { nativeView } from '../../addin/hosts/calc/nativeView';
import { plannedWrites } from '../../addin/hosts/calc/plannedWrites';
import { operation } from '../../addin/hosts/calc/wire/operations';
import { nativeView as viewSchema, piece, type NativeView } from '../../addin/hosts/calc/wire/pieces';
import { readAnswer, request } from '../../addin/hosts/calc/wire/requests';
import type { Area, Change, Edit } from '../../addin/workbook/change';
import { PYTHON } from '../hosts/calc/office';
import { rigView } from '../taskpane/handPane';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-wire-'));
  writeFileSync(join(folder, 'wire.py'), wireRecords());
});
afterAll(() => rmSync(folder, { recursive: true }));

const AREA: Area = { sheet: 'Card', row: 1, column: 2, rows: 3, columns: 1 };
const PLACE = { sheet: 'Card', row: 1, column: 2 };
const FORMULAS = Array.from({ length: 12 }, (_, row) => [{ formula: `=A${row + 1}*2` }]);

const edits: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'Card' },
  { kind: 'write', ...PLACE, cells: [['x', 3, null, true, { formula: '=1+1' }]] },
  { kind: 'write', ...PLACE, cells: FORMULAS },
  { kind: 'format', area: AREA, format: '0.0' },
  { kind: 'style', area: AREA, style: 'total' },
  { kind: 'width', sheet: 'Card', column: 2, columns: 1, characters: 12.5 },
  { kind: 'wrap', area: AREA },
  { kind: 'merge', area: AREA },
  { kind: 'list', area: AREA, source: ['a', 'b'], message: 'a or b' },
  { kind: 'list', area: AREA, source: AREA, message: 'one of those' },
  { kind: 'name', name: 'Need', area: AREA },
  { kind: 'note', ...PLACE, text: 'why' },
  {
    kind: 'chart',
    id: 'fills',
    ...PLACE,
    type: 'bar',
    title: 'Fills',
    finding: 'Fewer.',
    labels: AREA,
    series: [{ name: 'Fills', values: AREA }],
  },
  { kind: 'page', area: AREA, landscape: true, repeatRows: 1 },
  { kind: 'freeze', sheet: 'Card', rows: 1, columns: 0 },
  { kind: 'activate', ...PLACE },
];
const change: Change = { title: 'Make the card', edits };

const applying = {
  what: 'apply',
  title: change.title,
  touched: { workbook: true, structure: true, sheets: ['Card'] },
  operations: plannedWrites(change),
} as const;

/** The view of a pane, and what no view of it has. */
const view: NativeView = {
  ...nativeView(rigView),
  pieces: [
    ...nativeView(rigView).pieces,
    { kind: 'progress', key: 'busy', indent: 0, label: 'Reading', share: 0.5 },
    { kind: 'picture', key: 'chart', indent: 1, label: 'Fills', drawn: [{ width: 139, svg: '<svg/>' }] },
    {
      kind: 'table',
      key: 'fills',
      indent: 0,
      label: 'Fills',
      columns: [{ label: 'Fill', numeric: true }],
      rows: [['1']],
    },
  ],
};

const asSent = (told: unknown): unknown => JSON.parse(JSON.stringify(told));

const TELL = `
import json, sys
from wire import *
def plain(told):
    if isinstance(told, list):
        return [plain(one) for one in told]
    if not hasattr(told, "_asdict"):
        return told
    return {name: plain(value) for name, value in told._asdict().items() if value is not None}
kind, told = json.load(sys.stdin)
print(json.dumps(plain(read(globals()[kind], told))))
`;

/** What the component makes of what it is told, told again. */
const heard = (kind: 'REQUESTS' | 'OPERATIONS' | 'View', told: unknown): unknown => {
  const { stdout, stderr } = spawnSync(PYTHON, ['-B', '-c', TELL], {
    cwd: folder,
    input: JSON.stringify([kind, told]),
    encoding: 'utf8',
  });
  return stdout === '' ? stderr.trim().split('\n').at(-1) : JSON.parse(stdout);
};

const words = (union: { readonly options: readonly unknown[] }, tag: string): string[] =>
  (union.options as { shape: Record<string, { value: string }> }[]).map(({ shape }) => shape[tag]!.value);

describe('what the engine tells', () => {
  test('is here every kind of step, and nearly every piece of a view', () => {
    expect(new Set(applying.operations.map(({ op }) => op))).toEqual(new Set(words(operation, 'op')));
    expect(new Set(view.pieces.map(({ kind }) => kind))).toEqual(new Set(words(piece, 'kind')));
  });

  test('is as its description says', () => {
    expect(request.parse(asSent(applying))).toEqual(asSent(applying));
    expect(viewSchema.parse(asSent(view))).toEqual(asSent(view));
  });

  test('comes to the component whole', () => {
    expect(heard('REQUESTS', applying)).toEqual(asSent(applying));
    expect(heard('View', view)).toEqual(asSent(view));
  });

  test.each([
    [{ op: 'width', sheet: 'Card', column: 2, characters: 3 }, 'columns'],
    [{ op: 'sheet', sheet: 'Card', colour: 3 }, 'colour'],
  ])('is refused by the component where it is %j', (told, name) => {
    expect(heard('OPERATIONS', told)).toMatch(new RegExp(`^TypeError: .*'${name}'`));
  });
});

describe('what the component tells', () => {
  test('is refused where it is not what was asked for', () => {
    expect(
      readAnswer('apply', { readOnly: false, structure: false, sheets: [], moved: false }).sheets,
    ).toEqual([]);
    expect(() => readAnswer('apply', { readOnly: false, structure: false, moved: false })).toThrow('sheets');
    expect(() => readAnswer('read', null)).toThrow();
  });

  test('leaves the engine running where nobody says such a thing, and whoever waits gets an answer', async () => {
    const engine = join(folder, 'engine.cjs');
    await build({
      entryPoints: [join(root, 'addin', 'hosts', 'calc', 'engine.ts')],
      outfile: engine,
      bundle: true,
      platform: 'node',
      format: 'cjs',
      logLevel: 'error',
    });
    const child = spawn(process.execPath, [engine], { stdio: ['pipe', 'pipe', 'ignore'] });
    const said: unknown[] = [];
    createInterface({ input: child.stdout }).on('line', (line) => said.push(JSON.parse(line)));
    const ended = new Promise((resolve) => child.once('exit', resolve));
    for (const told of [
      { id: 1, call: 'SECONDS', args: [true] },
      { id: 2, doc: '1' },
      { nothing: 'known' },
      { id: 3, call: 'SECONDS', args: [0.7, 'gal', 2.8, 'gal/min'] },
    ])
      child.stdin.write(`${JSON.stringify(told)}\n`);
    child.stdin.end();
    await ended;
    expect(said.slice(1)).toEqual([
      { id: 1, code: 519 },
      { id: 2, done: true },
      { id: 3, value: 15 },
    ]);
  });
});

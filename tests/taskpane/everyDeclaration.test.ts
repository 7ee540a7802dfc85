import { describe, expect, test } from 'vitest';

import type { Ask, Entry, Holds } from '../../addin/workbook/fields/holds';
import type { Garden } from '../../addin/workbook/garden';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { gardenChange } from '../../addin/workbook/useCases/gardenChange';
import { inId } from '../../taskpane/named';
import { createPane } from '../../taskpane/pane';
import type { Block, Field, View } from '../../taskpane/view';
import { trialOf } from '../fieldTrials';
import { act, gardenOf } from '../workbook/gardens';

type Row = Readonly<Record<string, unknown>>;

interface Asked {
  readonly section: string;
  readonly action: string;
  /** What the pane calls the field of a key. */
  readonly id: (garden: Garden, key: string) => string;
  /** The row that it belongs to. */
  readonly row: (garden: Garden) => Row;
}

const product = (garden: Garden) => garden.products[0]!;
const bed = (garden: Garden) => garden.beds[0]!;
const dose = (garden: Garden) => garden.doses[1]!;

/** Where the pane asks the fields of a sheet. A sheet whose fields it asks and that is not here fails its test. */
const ASKED: Readonly<Record<string, Asked>> = {
  rig: { section: 'rig', action: 'rig.keep', id: (_, key) => `rig.${key}`, row: ({ rig }) => rig },
  timedBuckets: {
    section: 'rig',
    action: 'rig.keep',
    id: () => 'rig.time.1',
    row: ({ timedBuckets: [seconds] }) => ({ seconds }),
  },
  products: {
    section: 'mix',
    action: 'product.keep',
    id: (garden, key) => `product.${inId(product(garden).name)}.${key}`,
    row: product,
  },
  beds: {
    section: 'garden',
    action: 'beds.keep',
    id: (garden, key) => `bed.${inId(bed(garden).bed)}.${key}`,
    row: bed,
  },
  doses: {
    section: 'garden',
    action: 'doses.keep',
    id: (garden, key) => `dose.${inId(dose(garden).sizeClass)}.${key}`,
    row: dose,
  },
};

const fields = gardenSheets.sheets.flatMap((entry) => {
  const { key: sheet } = entry.kind === 'form' ? entry.form : entry.table;
  const declared: Row = entry.kind === 'form' ? entry.form.lines : entry.table.fields;
  return Object.entries(declared as Readonly<Record<string, { holds?: Holds; ask?: Ask }>>).flatMap(
    ([key, { holds, ask }]) => (holds && ask ? [{ sheet, key, holds, ask }] : []),
  );
});

const smallGarden = async () => {
  const workbook = memoryWorkbook();
  await act(workbook, (snapshot) =>
    gardenChange(snapshot, {
      title: 'A small garden',
      measures: 'US',
      forms: {
        rig: { barrel: { value: 60, unit: 'gal' }, flow: { value: 2.5, unit: 'gal/min' } },
      },
      tables: {
        plants: { add: [{ plant: 'Ada', bed: 'Front', sizeClass: 'Bush', howMany: 3 }] },
        products: { add: [{ name: 'Powder', form: 'powder' }] },
      },
    }),
  );
  const pane = createPane(workbook, { today: () => '2026-05-03', measures: 'US' });
  await pane.dispatch({ kind: 'workbookChanged' });
  return { workbook, pane };
};

const shownIn = ({ section }: View, id: string): Field | undefined => {
  const inside = (blocks: readonly Block[]): Field[] =>
    blocks.flatMap((block): Field[] => {
      if (block.kind === 'fields') return [...block.fields];
      if (block.kind === 'more') return inside(block.blocks);
      return block.kind === 'table'
        ? block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string'))
        : [];
    });
  return inside(section.blocks).find((field) => field.id === id);
};

/** What is typed for a value, and into the unit beside it. */
const typedFor = (holds: Holds, { times = 1 }: Ask, value: unknown): { text: string; unit?: string } => {
  if (holds.kind === 'measure') {
    const { value: number, unit } = value as Entry;
    return { text: String(number), unit };
  }
  if (holds.kind === 'yesNo') return { text: value === true ? 'yes' : '' };
  return { text: typeof value === 'number' ? String(Number((value * times).toPrecision(6))) : String(value) };
};

test('the pane asks for something', () => {
  expect(fields.length).toBeGreaterThan(20);
});

describe.each(fields)('$sheet: $key', ({ sheet, key, holds, ask }) => {
  test('typed in the pane, it is kept, read back and shown, and nothing else changes', async () => {
    const asked = ASKED[sheet];
    if (asked === undefined) throw new Error(`Say in ASKED where the pane asks for the sheet ${sheet}.`);
    const { workbook, pane } = await smallGarden();
    const before = await gardenOf(workbook);
    const trial = trialOf(holds);
    const { text, unit } = typedFor(holds, ask, trial);
    const id = asked.id(before, key);
    const pick = (garden: Garden) =>
      pane.dispatch({ kind: 'type', field: 'product.pick', value: inId(product(garden).name) });
    const type = (field: string, value: string) => pane.dispatch({ kind: 'type', field, value });

    await pane.dispatch({ kind: 'open', section: asked.section });
    await pick(before);
    expect(shownIn(pane.view(), id)?.value, 'shown before').not.toBe(text);
    await type(id, text);
    if (unit !== undefined) await type(`${id}.unit`, unit);
    expect(shownIn(pane.view(), id)).toMatchObject({ value: text });
    await pane.dispatch({ kind: 'press', action: asked.action });
    expect(pane.view().message).toMatchObject({ tone: 'good' });

    const kept = await gardenOf(workbook);
    const after = asked.row(kept);
    const read = after[key];
    if (typeof trial === 'number') expect(read).toBeCloseTo(trial, 12);
    else expect(read).toEqual(trial);
    expect({ ...after, [key]: trial }).toEqual({ ...asked.row(before), [key]: trial });

    await pick(kept);
    const shown = shownIn(pane.view(), asked.id(kept, key));
    expect(shown).toMatchObject({ value: text });
    if (unit !== undefined) expect(shown).toMatchObject({ unit: { value: unit } });
  });
});

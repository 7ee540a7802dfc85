import type { PaneEvent } from '../../../taskpane/view';
import { untidyList } from '../../../sample-workbooks/untidyList';
import type { Office } from './office';

const press = (action: string): PaneEvent => ({ kind: 'press', action });
const open = (section: string): PaneEvent => ({ kind: 'open', section });
const type = (fields: Readonly<Record<string, string>>): PaneEvent[] =>
  Object.entries(fields).map(([field, value]) => ({ kind: 'type', field, value }));

/** What a grower does in the pane from an untidy list to card, log and what-if. */
export const MAIN_JOB: readonly PaneEvent[] = [
  press('garden.adopt'),
  open('rig'),
  ...type({ 'rig.time.1': '45', 'rig.time.2': '47', 'rig.time.3': '46', 'rig.barrel': '60' }),
  press('rig.keep'),
  open('mix'),
  ...type({
    'product.new.name': 'Soluble powder 20-20-20',
    'product.new.greatestRate': '1',
    'product.new.N': '20',
    'product.new.P2O5': '20',
    'product.new.K2O': '20',
    'product.new.density': '0.9',
    'product.new.solubility': '450',
    'product.new.pack': '25',
    'product.new.price': '60',
  }),
  press('product.keep'),
  ...type({ 'mix.rate.1': '1' }),
  press('mix.keep'),
  open('round'),
  ...type({ 'round.date': '2026-05-03', 'round.start': '07:00' }),
  press('round.card'),
  open('log'),
  press('log.write'),
  open('tanks'),
  press('tanks.write'),
];

export const LIST = 'My roses';

/** Cells of the untidy list, a rectangle; null is an empty cell. */
export const listCells = (): (string | number | null)[][] => {
  const { cells } = untidyList();
  const columns = Math.max(...cells.map((row) => row.length));
  return cells.map((row) =>
    Array.from({ length: columns }, (_, column) => {
      const cell = row[column] ?? null;
      return typeof cell === 'boolean' ? String(cell) : cell;
    }),
  );
};

/** The untidy list in a document of its own, as a grower has it. */
export const writeList = async (office: Office): Promise<string> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  await office.ask({ do: 'rename_first', doc, to: LIST });
  const cells = listCells();
  const area = `A1:${String.fromCharCode(64 + cells[0]!.length)}${cells.length}`;
  const values = cells.map((row) => row.map((cell) => cell ?? ''));
  await office.ask({ do: 'put_values', doc, sheet: LIST, cells: area, values });
  for (const { row, column, rows, columns } of untidyList().merges) {
    const letter = (index: number): string => String.fromCharCode(65 + index);
    const merged = `${letter(column)}${row + 1}:${letter(column + columns - 1)}${row + rows}`;
    await office.ask({ do: 'merge', doc, sheet: LIST, cells: merged });
  }
  return doc;
};

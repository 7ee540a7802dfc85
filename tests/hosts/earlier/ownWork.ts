import { cellAddress } from '../../../addin/workbook/address';
import { cardParts } from '../../../addin/workbook/card/cardNames';
import { labelOf } from '../../../addin/workbook/snapshot';
import type { OwnCells } from '../../workbook/earlierFiles';
import { ROSES } from './garden';
import type { Sheets } from './program';

const RENAMED: Readonly<Record<string, string>> = {
  Plants: 'All my roses',
  'Round card': 'Sunday card',
  'Feed log': "Gran's log",
};

/** The first cell of a sheet that shows just this text. */
const placeOf = async ({ workbook }: Sheets, sheet: string, text: string) => {
  const { sheets } = await workbook.outline();
  const { rows, columns } = sheets.find(({ name }) => name === sheet)!;
  const { blocks } = await workbook.read([{ sheet, row: 0, column: 0, rows, columns }]);
  for (const [row, line] of blocks[0]!.cells.entries())
    for (const [column, cell] of line.entries()) if (labelOf(cell) === text) return { row, column };
  throw new Error(`${sheet} has no cell “${text}”.`);
};

/**
 * What users do with sheets that are theirs: columns of their own between and beside ours, remarks above and beside,
 * a sheet for a diary, other names for sheets and another order of them.
 *
 * @returns the cells that are then the user's own
 */
export const workOnSheets = async (sheets: Sheets): Promise<OwnCells> => {
  const own: Record<string, string | number> = {};
  const type = async (sheet: string, row: number, column: number, typed: string | number) => {
    await sheets.type(sheet, row, column, typed);
    own[`${RENAMED[sheet] ?? sheet}!${cellAddress(row, column)}`] = typed;
  };
  /** A column under a heading of the user's own. */
  const column = async (sheet: string, row: number, at: number, cells: readonly (string | number)[]) => {
    for (const [down, typed] of cells.entries()) await type(sheet, row + down, at, typed);
  };
  const between = async (sheet: string, before: string, cells: readonly (string | number)[]) => {
    const at = await placeOf(sheets, sheet, before);
    await sheets.insertColumns(sheet, at.column, 1);
    await column(sheet, at.row, at.column, cells);
    return at;
  };
  const beside = async (sheet: string, last: string, cells: readonly (string | number)[]) => {
    const at = await placeOf(sheets, sheet, last);
    await column(sheet, at.row, at.column + 1, cells);
  };

  const planted = ROSES.flatMap(([number, , , , , , year]) =>
    typeof number === 'number' && typeof year === 'number' ? [year] : [],
  );
  const { row, column: at } = await between('Plants', 'Class', ['Planted', ...planted]);
  const ages = planted.map((_, down) => `=2026-${cellAddress(row + 1 + down, at)}`);
  await beside('Plants', 'Notes', ['Age', ...ages]);
  await beside('Beds', 'Position y', ['Soil', 'clay', 'potting mix', 'loam']);
  await sheets.insertRows('Mix', 0, 1);
  await type('Mix', 0, 0, 'Ask Edda before you change this');
  await between('Products', 'Density, g/mL', ['Shop', 'Mill Lane', 'the harbour']);
  await between('Feed log', 'Notes', ['Weather', 'cloudy, 14 C']);

  const card = cardParts(await sheets.workbook.outline()).at(-1)!;
  await type('Round card', 3, card.column + card.columns + 2, 'pump oil in the shed');
  await sheets.addSheet('Diary');
  await column('Diary', 0, 0, ['Diary', 'Pruned on 1 March', 'Aphids on Paper Kite', 17.5]);

  for (const [from, to] of Object.entries(RENAMED)) await sheets.renameSheet(from, to);
  await sheets.moveSheet('Sunday card', 0);
  const { length } = (await sheets.workbook.outline()).sheets;
  await sheets.moveSheet('All my roses', length - 1);
  return own;
};

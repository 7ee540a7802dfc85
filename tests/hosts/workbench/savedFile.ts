import { Workbook as FileBook } from '@cj-tech-master/excelts';

import { cellAddress } from '../../../addin/workbook/address';
import type { Area } from '../../../addin/workbook/change';
import { areaOfReference } from '../../../addin/workbook/references';

/** What a file holds, read by other means than the page's own. */
export interface SavedFile {
  readonly bytes: Buffer;
  readonly sheets: readonly string[];
  /** What each cell in use shows, and its formula, by sheet and address: "Doses!B6". */
  readonly cells: Readonly<Record<string, string>>;
  number(address: string): number;
  /** The number in the one cell of a workbook name. */
  named(name: string): number;
  area(name: string): Area;
  /** What the cells of a workbook name hold, row by row, as texts; numbers as they are, not as they show. */
  texts(name: string): string[][];
  /** The first cell of a sheet with just this text. */
  find(sheet: string, text: string): { readonly row: number; readonly column: string };
}

interface FileCell {
  readonly formula?: string;
  readonly value: unknown;
}

const told = ({ formula, value }: FileCell): string =>
  `${formula === undefined ? '' : `=${formula} gives `}${JSON.stringify(value)}`;

export const savedFile = async (bytes: Buffer): Promise<SavedFile> => {
  const file = new FileBook();
  await file.xlsx.load(bytes as never);
  const cells = new Map<string, FileCell>();
  for (const sheet of file.worksheets)
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        const { value, formula } = cell;
        if (formula !== undefined)
          cells.set(`${sheet.name}!${cell.address}`, { formula, value: cell.result });
        else if (value !== null) cells.set(`${sheet.name}!${cell.address}`, { value });
      }),
    );
  const number = (address: string): number => {
    const value = cells.get(address)?.value;
    if (value instanceof Date) return value.getTime() / 86_400_000;
    if (typeof value !== 'number')
      throw new Error(`${address} holds no number but ${JSON.stringify(value)}.`);
    return value;
  };
  const area = (name: string): Area => {
    const [range = ''] = file.definedNames.getRanges(name).ranges;
    const found = areaOfReference(range);
    if (!found) throw new Error(`The file has no area ${name}.`);
    return found;
  };
  const placed = (sheet: string, row: number, column: number) => `${sheet}!${cellAddress(row, column)}`;
  return {
    bytes,
    sheets: file.worksheets.map(({ name }) => name),
    cells: Object.fromEntries([...cells].map(([address, cell]) => [address, told(cell)])),
    number,
    named: (name) => {
      const { sheet, row, column } = area(name);
      return number(placed(sheet, row, column));
    },
    area,
    texts: (name) => {
      const { sheet, row, column, rows, columns } = area(name);
      return Array.from({ length: rows }, (_, down) =>
        Array.from({ length: columns }, (_, across) => {
          const value = cells.get(placed(sheet, row + down, column + across))?.value ?? '';
          return typeof value === 'string' ? value : JSON.stringify(value);
        }),
      );
    },
    find: (sheet, text) => {
      const address = [...cells].find(([at, { value }]) => at.startsWith(`${sheet}!`) && value === text)?.[0];
      const [, column = '', row = ''] = /!([A-Z]+)(\d+)$/.exec(address ?? '') ?? [];
      if (!address) throw new Error(`${sheet} has no cell “${text}”.`);
      return { row: Number(row), column };
    },
  };
};

import type { IDataValidationRule } from '@univerjs/core';

import type { BookData } from './bookData';

/** A name of the workbook as the grid keeps it. */
export interface KeptName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
}

export interface KeptNote {
  readonly id: string;
  readonly row: number;
  readonly col: number;
  readonly note: string;
  readonly width: number;
  readonly height: number;
  readonly show: boolean;
}

/** Something that lies over the cells, such as a chart. */
export interface KeptDrawing {
  readonly drawingId: string;
  readonly [property: string]: unknown;
}

/** What a workbook holds besides cells; by sheet id. The grid keeps each part as a text of its own. */
export interface BookParts {
  readonly names: readonly KeptName[];
  readonly rules: Readonly<Record<string, readonly IDataValidationRule[]>>;
  readonly notes: Readonly<Record<string, readonly KeptNote[]>>;
  readonly drawings: Readonly<Record<string, readonly KeptDrawing[]>>;
}

const NAMES = 'SHEET_DEFINED_NAME_PLUGIN';
const RULES = 'SHEET_DATA_VALIDATION_PLUGIN';
const NOTES = 'SHEET_NOTE_PLUGIN';
const DRAWINGS = 'SHEET_DRAWING_PLUGIN';

type Nested<Kept> = Record<string, Record<string, Record<string, Kept>>>;

const bySheet = <From, To>(kept: Record<string, From>, change: (part: From) => To): Record<string, To> =>
  Object.fromEntries(Object.entries(kept).map(([sheet, part]) => [sheet, change(part)]));

const nested = (notes: readonly KeptNote[]): Record<number, Record<number, KeptNote>> => {
  const rows: Record<number, Record<number, KeptNote>> = {};
  for (const note of notes) (rows[note.row] ??= {})[note.col] = note;
  return rows;
};

export const partsOf = (book: BookData): BookParts => {
  const part = <Kept>(name: string): Kept => {
    const text = book.resources?.find((resource) => resource.name === name)?.data;
    return (text ? JSON.parse(text) : {}) as Kept;
  };
  return {
    names: Object.values(part<Record<string, KeptName>>(NAMES)),
    rules: part<Record<string, IDataValidationRule[]>>(RULES),
    notes: bySheet(part<Nested<KeptNote>>(NOTES), (rows) =>
      Object.values(rows).flatMap((line) => Object.values(line)),
    ),
    drawings: bySheet(part<Record<string, { data?: Record<string, KeptDrawing> }>>(DRAWINGS), ({ data }) =>
      Object.values(data ?? {}),
    ),
  };
};

export const resourcesOf = ({
  names,
  rules,
  notes,
  drawings,
}: BookParts): NonNullable<BookData['resources']> => [
  { name: NAMES, data: JSON.stringify(Object.fromEntries(names.map((name) => [name.id, name]))) },
  { name: RULES, data: JSON.stringify(rules) },
  { name: NOTES, data: JSON.stringify(bySheet(notes, nested)) },
  {
    name: DRAWINGS,
    data: JSON.stringify(
      bySheet(drawings, (list) => ({
        data: Object.fromEntries(list.map((drawing) => [drawing.drawingId, drawing])),
        order: list.map(({ drawingId }) => drawingId),
      })),
    ),
  },
];

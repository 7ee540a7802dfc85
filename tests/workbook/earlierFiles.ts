import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { root } from '../../addin/build/paths.mjs';
import { columnNumber } from '../../addin/workbook/address';

/** Cells of the user's own by place, such as "My roses!C5", as they were typed; a formula begins with '='. */
export type OwnCells = Readonly<Record<string, string | number>>;

/** What a user had put into a workbook by the time it was saved, in the user's words and units. */
export interface Kept {
  readonly own: OwnCells;
  /** Plant, bed, size class, how many. */
  readonly plants: readonly (readonly [string, string, string, number])[];
  /** Bed, place in the walk, station. */
  readonly beds: readonly (readonly [string, number, string])[];
  /** By size class; sizes that have no plants are not told. */
  readonly doses: Readonly<Record<string, number>>;
  /** "60 gal"; left out while the rig was not kept. */
  readonly barrel?: string;
  readonly seconds: readonly number[];
  /** Name, form, the label's greatest rate. */
  readonly products: readonly (readonly [string, string, string])[];
  readonly mix: readonly (readonly [string, string])[];
  readonly card?: {
    /** yyyy-mm-dd. */
    readonly day: string;
    readonly mix: string;
    readonly plants: number;
    readonly products: readonly string[];
  };
  /** The oldest first. */
  readonly log: readonly { readonly day: string; readonly leftOver: number; readonly notes: string }[];
}

/** @example placeIn('My roses!C5') // { sheet: 'My roses', row: 4, column: 2 } */
export const placeIn = (place: string): { sheet: string; row: number; column: number } => {
  const [, sheet = '', column = '', row = ''] = /^(.*)!([A-Z]+)(\d+)$/.exec(place) ?? [];
  return { sheet, row: Number(row) - 1, column: columnNumber(column) };
};

/** A workbook as an earlier program saved it. */
export interface EarlierFile {
  /** "before-live-card/whole-garden.calc.ods". */
  readonly name: string;
  readonly path: string;
  readonly ending: string;
  /** The garden in it, such as "whole-garden". */
  readonly garden: string;
}

export const EARLIER = join(root, 'tests', 'workbook', 'earlier');
/** What stands in the gardens of a folder. */
export const KEPT = 'gardens.json';

/** Every workbook of every earlier program; a new file or folder is a new test. */
export const earlierFiles = (endings: readonly string[]): EarlierFile[] =>
  readdirSync(EARLIER, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name: folder }) =>
      readdirSync(join(EARLIER, folder)).map((file) => ({
        name: `${folder}/${file}`,
        path: join(EARLIER, folder, file),
        ending: file.slice(file.lastIndexOf('.') + 1),
        garden: file.slice(0, file.indexOf('.')),
      })),
    )
    .filter(({ ending }) => endings.includes(ending));

/** @throws Error where the folder does not tell what stands in this garden */
export const keptIn = ({ name, path, garden }: EarlierFile): Kept => {
  const told = JSON.parse(readFileSync(join(path, '..', KEPT), 'utf8')) as Record<string, Kept>;
  const kept = told[garden];
  if (kept === undefined) throw new Error(`${KEPT} beside ${name} does not tell what is in it.`);
  return kept;
};

import type { Workbook } from '../../../addin/workbook/port';
import type { Grower } from '../../taskpane/grower';
import type { GardenName } from './garden';

/** The sheets of an open workbook under a user's own hands. Rows and columns count from 0. */
export interface Sheets {
  readonly workbook: Workbook;
  type(sheet: string, row: number, column: number, typed: string | number): Promise<void>;
  insertRows(sheet: string, at: number, count: number): Promise<void>;
  insertColumns(sheet: string, at: number, count: number): Promise<void>;
  addSheet(name: string): Promise<void>;
  renameSheet(from: string, to: string): Promise<void>;
  moveSheet(name: string, to: number): Promise<void>;
}

/** A program that a user has before him: at its pane, at its sheets, and saving as that program saves. */
export interface Program {
  /** A workbook with the grower's list on its only sheet. */
  list(): Promise<Grower>;
  emptyWorkbook(): Promise<Grower>;
  /** A garden that was saved before. */
  open(garden: GardenName): Promise<Grower>;
  /** Saves what is open, in each of the program's kinds of file. */
  save(garden: GardenName): Promise<void>;
  /** Opens a garden that was saved before, works on its sheets, and saves it as another. */
  rework(garden: GardenName, as: GardenName, work: (sheets: Sheets) => Promise<void>): Promise<void>;
  end(): Promise<void>;
}

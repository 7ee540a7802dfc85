import type { Area, Edit } from '../../../addin/workbook/change';
import type { Workbook } from '../../../addin/workbook/port';

/** What a host can tell of what the port does not read back. Leave out what it cannot. */
export interface HostInspection {
  /** The number format of a cell. */
  format?(sheet: string, row: number, column: number): Promise<string>;
  /** Width of a column in characters; the contract allows one character of rounding. */
  width?(sheet: string, column: number): Promise<number>;
  /** Anything that tells the look of one style token from another's, such as its font and fill as text. */
  look?(sheet: string, row: number, column: number): Promise<string>;
  wrapped?(sheet: string, row: number, column: number): Promise<boolean>;
  frozen?(sheet: string): Promise<{ rows: number; columns: number }>;
  list?(
    sheet: string,
    row: number,
    column: number,
  ): Promise<{ source: readonly string[] | Area; message: string } | undefined>;
  note?(sheet: string, row: number, column: number): Promise<string | undefined>;
  charts?(sheet: string): Promise<readonly { id: string; title: string; series: number }[]>;
  page?(
    sheet: string,
  ): Promise<
    | { readonly landscape: boolean; readonly repeatRows: number; readonly pagesHigh?: number | undefined }
    | undefined
  >;
}

/** One open workbook of a host, with nothing in it that the contract would trip over. */
export interface HostUnderTest {
  readonly workbook: Workbook;
  /** Takes back one step of the host's own undo. */
  readonly undo?: () => Promise<void>;
  /** Kinds of edits that the host keeps out of its undo, as its README says. */
  readonly notUndone?: readonly Edit['kind'][];
  /** False where formulas are kept and not computed. */
  readonly computes?: boolean;
  readonly inspect?: HostInspection;
  /** What a user does by hand. */
  readonly user?: {
    renameSheet?(from: string, to: string): Promise<void>;
    insertRows?(sheet: string, at: number, count: number): Promise<void>;
    insertColumns?(sheet: string, at: number, count: number): Promise<void>;
  };
  readonly close?: () => Promise<void>;
}

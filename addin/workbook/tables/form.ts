import type * as z from 'zod';
import type { Family, Refusal, System } from '../../core';
import type { CellInput } from '../change';

/** The unit beside a value: chosen by the user within a family, or always the same words. */
export type LineUnit =
  | { readonly kind: 'chosen'; readonly name: string; readonly family: Family }
  | { readonly kind: 'fixed'; readonly words: string };

/** One line of a form: what it is called, its value, its unit, and what it is. */
export interface Line {
  readonly key: string;
  /** Workbook name of the value's cell. */
  readonly name: string;
  readonly label: string;
  readonly what: string;
  readonly schema: z.ZodType<unknown>;
  readonly unit?: LineUnit;
  readonly format?: string;
  readonly list?: readonly string[];
  /** Where the sheet works the value out; a value typed over it is taken instead. */
  readonly formula?: string;
  /** What stands there in a new garden. */
  readonly start?: Readonly<Record<System, { readonly value?: CellInput; readonly unit?: string }>>;
}

/** A sheet of single values. Each value is found by its workbook name, so that lines may be moved about. */
export interface Form {
  readonly key: string;
  /** Workbook name of the header row. */
  readonly name: string;
  readonly title: string;
  readonly purpose: string;
  readonly place: Refusal['place'];
  /** True where a line that the user deleted is told as a problem, because a blank there would be a guess. */
  readonly complete: boolean;
  readonly lines: readonly Line[];
}

export const FORM_HEADERS = ['What', 'Value', 'Unit', 'What it is'] as const;
export const FORM_WIDTHS = [30, 14, 12, 70] as const;

/** A value of a form as it is read or kept. */
export interface LineValue {
  readonly value?: unknown;
  readonly unit?: string;
}

import * as z from 'zod';

/** Several of a kind. */
export const list = <Of extends z.ZodType>(of: Of) => z.array(of).readonly();

/** Counts rows and columns, or numbers one from 0. */
export const whole = z.int();

/** Row, column, rows, columns. */
export const corner = z.tuple([whole, whole, whole, whole]).readonly();
export type Corner = z.infer<typeof corner>;

/** Sheet, row, column, rows, columns. */
export const wireArea = z.tuple([z.string(), whole, whole, whole, whole]).readonly();
export type WireArea = z.infer<typeof wireArea>;

/** One cell. */
export const place = { sheet: z.string(), row: whole, column: whole };

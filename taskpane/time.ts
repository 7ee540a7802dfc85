import { clock, howLong } from '../addin/core';

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;

/**
 * A long time as a sentence says it, to five minutes.
 *
 * @param time s, ≥ 0
 * @example aboutTime(5640) // 'about 1 h 35 min'
 */
export const aboutTime = (time: number): string => `about ${howLong(time / MINUTE)}`;

/**
 * A time on the clock, 24 hours; a later day says so.
 *
 * @param time s after midnight, ≥ 0
 * @example clockTime(25_560) // '7:06'
 */
export const clockTime = (time: number): string => clock(time / DAY);

/**
 * Seconds after midnight of a time as a field holds it.
 *
 * @returns undefined for no time of the day
 * @example readClock('7:05') // 25500
 */
export const readClock = (typed: string): number | undefined => {
  const found = /^(\d{1,2})[:.](\d{2})(?::\d{2})?$/.exec(typed.trim());
  if (!found) return undefined;
  const [hours, minutes] = [Number(found[1]), Number(found[2])];
  return hours < 24 && minutes < 60 ? hours * HOUR + minutes * MINUTE : undefined;
};

/**
 * A calendar day as a field holds it, yyyy-mm-dd.
 *
 * @returns undefined for no day of the calendar
 * @example readDay('2026-02-30') // undefined
 */
export const readDay = (typed: string): string | undefined => {
  const text = typed.trim();
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined;
  const day = new Date(`${text}T00:00:00Z`);
  return Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text ? undefined : text;
};

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/**
 * A calendar day as a sentence says it.
 *
 * @param day yyyy-mm-dd, a day of the calendar
 * @example dayInWords('2026-05-03') // '3 May 2026'
 */
export const dayInWords = (day: string): string => {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[(month ?? 1) - 1]} ${year}`;
};

// Spreadsheets count days from 1899-12-30.
const EPOCH = Date.UTC(1899, 11, 30);

/**
 * The spreadsheet's serial day of a calendar day.
 *
 * @param day yyyy-mm-dd, a day of the calendar
 * @example serialDay('2026-05-03') // 46145
 */
export const serialDay = (day: string): number =>
  Math.round((Date.parse(`${day}T00:00:00Z`) - EPOCH) / (DAY * 1000));

/**
 * The calendar day of a serial day, yyyy-mm-dd.
 *
 * @example dayOfSerial(46145) // '2026-05-03'
 */
export const dayOfSerial = (serial: number): string =>
  new Date(EPOCH + Math.floor(serial) * DAY * 1000).toISOString().slice(0, 10);

const DAY = 86_400_000;
/** Day 0 of a spreadsheet's calendar, so that its day 60, which never was, leaves later days in step. */
const EPOCH = Date.UTC(1899, 11, 30);

/** The spreadsheet's serial day of a date that a file's reader gives in UTC. */
export const serialDay = (date: Date): number => (date.getTime() - EPOCH) / DAY;

const HOUR = 60;
const DAY = 1440;
/** Minutes to which a long time is told. */
export const USUAL_STEP = 5;
// A share of the day comes with noise of its last digit.
const NOISE = 1e-6;

const nearest = (minutes: number): number => Math.floor(minutes + 0.5 + NOISE);

/**
 * A time in words, to the nearest step; never nothing for more than none.
 *
 * Definition: hours and minutes.
 *
 * @param minutes ≥ 0
 * @param step    minutes, > 0
 * @example howLong(94) // '1 h 35 min'
 */
export const howLong = (minutes: number, step = USUAL_STEP): string => {
  const steps = nearest(minutes / step);
  const told = steps === 0 && minutes > 0 ? step : steps * step;
  const hours = Math.floor(told / HOUR);
  const rest = Number((told - hours * HOUR).toPrecision(6));
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
};

/**
 * A time on the clock, 24 hours, to the nearest minute; a later day says so.
 *
 * Definition: days as spreadsheets count them, hours and minutes.
 *
 * @param days since midnight of the first day, ≥ 0
 * @example clock(7.1 / 24) // '7:06'
 */
export const clock = (days: number): string => {
  const minutes = nearest(days * DAY);
  const day = Math.floor(minutes / DAY);
  const past = minutes - day * DAY;
  const time = `${Math.floor(past / HOUR)}:${String(past % HOUR).padStart(2, '0')}`;
  if (day === 0) return time;
  return day === 1 ? `${time} next day` : `${time}, ${day} days on`;
};

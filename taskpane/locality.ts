/** Regions that measure in gallons and pounds. */
const US_MEASURES: ReadonlySet<string> = new Set(['US', 'LR', 'MM']);

const two = (value: number): string => String(value).padStart(2, '0');

/** A moment's day on the user's own calendar, yyyy-mm-dd. */
export const calendarDay = (date: Date): string =>
  `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;

const regionOf = (language: string): string | undefined => {
  try {
    return new Intl.Locale(language).maximize().region;
  } catch {
    // Not the name of a language.
    return undefined;
  }
};

/** A first guess at the user's measures from the languages the user asks for, in their order. */
export const guessMeasures = (languages: readonly (string | undefined)[]): 'US' | 'metric' => {
  const region = languages.flatMap((language) => (language ? (regionOf(language) ?? []) : []))[0];
  return region !== undefined && US_MEASURES.has(region) ? 'US' : 'metric';
};

/**
 * Regions where cans are filled in gallons and labels are read in pounds and spoons: the United States with the
 * territories where the same labels are sold, Liberia and Myanmar. Common practice; a first guess only.
 */
const US_MEASURES: ReadonlySet<string> = new Set(['US', 'PR', 'VI', 'GU', 'AS', 'MP', 'LR', 'MM']);

const two = (value: number): string => String(value).padStart(2, '0');

/** A moment's day on the user's own calendar, yyyy-mm-dd. */
export const calendarDay = (date: Date): string =>
  `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;

const regionOf = (language: string): string | undefined => {
  try {
    return new Intl.Locale(language.replaceAll('_', '-')).maximize().region;
  } catch {
    // Not the name of a language.
    return undefined;
  }
};

/**
 * A first guess at the user's measures from the languages the user asks for, in their order; what names no language
 * is passed over.
 *
 * @example guessMeasures(['de_AT', 'en-US']) // 'metric'
 */
export const guessMeasures = (languages: readonly (string | undefined)[]): 'US' | 'metric' => {
  const region = languages.flatMap((language) => (language ? (regionOf(language) ?? []) : []))[0];
  return region !== undefined && US_MEASURES.has(region) ? 'US' : 'metric';
};

/**
 * Phrases parted by commas, so that a word list reads as prose and not as one string a line.
 *
 * @example phrases('half barrel, tub') // ['half barrel', 'tub']
 */
export const phrases = (list: string): readonly string[] =>
  list
    .split(',')
    .map((phrase) => phrase.trim().replace(/\s+/g, ' '))
    .filter((phrase) => phrase !== '');

import { outsideQuotes } from './outsideQuotes';

const FEED_CALL = /(?<![\w.])(?:_xlfn\.|_xlws\.)?(?:_xldudf_)?feed[._]([a-z]+)(?=\s*\()/gi;

/**
 * The formula with every FEED function spelled as the program spells it. Other programs write unknown functions in
 * small letters, or with a mark of their own before the name.
 *
 * @example feedSpelling('=feed.seconds(B3,C3)+_xldudf_FEED_FILLS(B4,60,"gal")')
 * // '=FEED.SECONDS(B3,C3)+FEED.FILLS(B4,60,"gal")'
 */
export const feedSpelling = (formula: string): string =>
  /feed[._]/i.test(formula)
    ? outsideQuotes(formula, (part) =>
        part.replace(FEED_CALL, (_call, name: string) => `FEED.${name.toUpperCase()}`),
      )
    : formula;

import { respelled, tokensOf } from './tokens';

const STORED = /^(?:_xlfn\.|_xlws\.)?(?:_xldudf_)?feed[._]([a-z]+)$/i;

/**
 * The formula with every FEED function spelled as the program spells it. Other programs write unknown functions in
 * small letters, or with a mark of their own before the name.
 *
 * @example feedSpelling('=feed.seconds(B3,C3)+_xldudf_FEED_FILLS(B4,60,"gal")')
 * // '=FEED.SECONDS(B3,C3)+FEED.FILLS(B4,60,"gal")'
 */
export const feedSpelling = (formula: string): string =>
  /feed[._]/i.test(formula)
    ? respelled(formula, ({ kind, text }) =>
        kind === 'function'
          ? text.replace(STORED, (_stored, name: string) => `FEED.${name.toUpperCase()}`)
          : text,
      )
    : formula;

/** True where a formula calls a FEED function, however it is stored. */
export const callsFeed = (formula: string): boolean =>
  tokensOf(formula).some(({ kind, text }) => kind === 'function' && STORED.test(text));

import { wordsOf } from './cellText';
import { nearWord } from './nearWord';
import { PLANT_SIZES, ROSE_CLASSES, type PlantSize, type RoseClass, type RoseReading } from './sizeClass';
import { GROUND_WORDS, NO_WORDS, POT_LETTERS, POT_MEASURES, POT_WORDS, YES_WORDS } from './words/potWords';
import { IDLE_WORDS, ROSE_CLASS_WORDS } from './words/roseClassWords';
import { SIZE_LETTERS, SIZE_WORDS } from './words/sizeWords';

/** Which column the words stand in; it decides what an M, an S or a 5 means. */
export type RoseColumn = 'class' | 'size' | 'pot';

const CLASSES: ReadonlyMap<string, RoseClass> = new Map(
  (Object.keys(ROSE_CLASSES) as RoseClass[]).flatMap((name) =>
    ROSE_CLASS_WORDS[name].map((word): [string, RoseClass] => [word, name]),
  ),
);
const SIZES: ReadonlyMap<string, PlantSize> = new Map(
  PLANT_SIZES.flatMap((size) => SIZE_WORDS[size].map((word): [string, PlantSize] => [word, size])),
);
const POTS: ReadonlyMap<string, boolean> = new Map([
  ...POT_WORDS.map((word): [string, boolean] => [word, true]),
  ...GROUND_WORDS.map((word): [string, boolean] => [word, false]),
]);
const IDLE: ReadonlySet<string> = new Set(IDLE_WORDS);
const MEASURES: ReadonlySet<string> = new Set(POT_MEASURES);
const VOCABULARY: ReadonlySet<string> = new Set(
  [...CLASSES.keys(), ...SIZES.keys(), ...POTS.keys(), ...IDLE, ...MEASURES].flatMap((phrase) =>
    phrase.split(' '),
  ),
);
const LONG_WORDS: readonly string[] = [...VOCABULARY].filter((word) => word.length >= 5);
const LONGEST_PHRASE = 5;
const PLURAL_ENDINGS = ['s', 'es', 'n', 'en', 'x'];

const rightSpelling = (word: string): string => {
  if (VOCABULARY.has(word) || PLURAL_ENDINGS.some((ending) => VOCABULARY.has(word.slice(0, -ending.length))))
    return word;
  return nearWord(word, LONG_WORDS) ?? word;
};

const classOf = (phrase: string): RoseReading | undefined => {
  const roseClass = CLASSES.get(phrase);
  return roseClass && { roseClass };
};
const sizeOf = (phrase: string): RoseReading | undefined => {
  const size = SIZES.get(phrase);
  return size && { size };
};
const potOf = (phrase: string): RoseReading | undefined => {
  const pot = POTS.get(phrase);
  return pot === undefined ? undefined : { pot };
};
const letterOf = (phrase: string, column: RoseColumn): RoseReading | undefined => {
  if (phrase.length !== 1) return undefined;
  if (column === 'size' && SIZE_LETTERS[phrase]) return { size: SIZE_LETTERS[phrase] };
  if (column === 'pot' && POT_LETTERS[phrase] !== undefined) return { pot: POT_LETTERS[phrase] };
  return column === 'class' ? classOf(phrase) : undefined;
};

const lookUp = (phrase: string, column: RoseColumn): RoseReading | undefined => {
  if (phrase.length === 1) return letterOf(phrase, column);
  if (column === 'size') return sizeOf(phrase) ?? classOf(phrase) ?? potOf(phrase);
  if (column === 'pot') return potOf(phrase) ?? classOf(phrase) ?? sizeOf(phrase);
  return classOf(phrase) ?? sizeOf(phrase) ?? potOf(phrase);
};

const singularOrPlural = (phrase: string, column: RoseColumn): RoseReading | undefined => {
  const found = lookUp(phrase, column);
  if (found || phrase.length < 3) return found;
  for (const ending of PLURAL_ENDINGS) {
    // 'HTs' and 'minis', but not 'Ms': a stem of one letter means something else in each column.
    const stem = phrase.slice(0, -ending.length);
    if (!phrase.endsWith(ending) || stem.length < 2) continue;
    const single = lookUp(stem, column);
    if (single) return single;
  }
  return undefined;
};

/** Climbers and tree roses are made from other classes ('Cl HT', 'standard floribunda'); they decide the size. */
const joinClasses = (classes: ReadonlySet<RoseClass>): RoseClass | undefined | 'at odds' => {
  const [first, ...others] = classes;
  if (!first || others.length === 0) return first;
  for (const form of ['Tree rose', 'Climber', 'Rambler'] as const) if (classes.has(form)) return form;
  return others.every((other) => ROSE_CLASSES[other] === ROSE_CLASSES[first]) ? first : 'at odds';
};

/**
 * What a cell of a class, size or pot column says: all its words must be known, and they must not contradict one
 * another. A misspelt longer word counts as the one it is near to.
 *
 * @returns undefined where it is not understood
 * @example readRoseWords('pot. mini', 'class') // { roseClass: 'Miniature', pot: true }
 * @example readRoseWords('M', 'size') // { size: 'medium' }
 */
export const readRoseWords = (text: string, column: RoseColumn): RoseReading | undefined => {
  if (text.length > 80) return undefined;
  const words = wordsOf(text)
    .replace(/(\d)([a-z])/g, '$1 $2')
    .split(' ')
    .filter((word) => word !== '')
    .map(rightSpelling);
  const classes = new Set<RoseClass>();
  let size: PlantSize | undefined;
  let pot: boolean | undefined;
  let measured = false;
  for (let at = 0; at < words.length;) {
    let taken = 0;
    let found: RoseReading | undefined;
    for (let span = Math.min(LONGEST_PHRASE, words.length - at); span > 0 && !found; span--) {
      found = singularOrPlural(words.slice(at, at + span).join(' '), column);
      taken = span;
    }
    const word = words[at]!;
    // 'bush' is a size by itself and says nothing in 'large bush'.
    if (IDLE.has(word) && (taken === 1 || !found) && (words.length > 1 || !found)) {
      at += 1;
      continue;
    }
    if (!found && /^\d+$/.test(word)) {
      measured = true;
      at += MEASURES.has(words[at + 1] ?? '') ? 2 : 1;
      continue;
    }
    if (!found) return undefined;
    if (found.roseClass) classes.add(found.roseClass);
    if (found.size !== undefined) {
      if (size !== undefined && size !== found.size) return undefined;
      size = found.size;
    }
    if (found.pot !== undefined) {
      if (pot !== undefined && pot !== found.pot) return undefined;
      pot = found.pot;
    }
    at += taken;
  }
  if (measured && pot !== true) {
    if (column !== 'pot' || pot === false) return undefined;
    pot = true;
  }
  const roseClass = joinClasses(classes);
  if (roseClass === 'at odds') return undefined;
  if (roseClass === undefined && size === undefined && pot === undefined) return undefined;
  return {
    ...(roseClass && { roseClass }),
    ...(size !== undefined && { size }),
    ...(pot !== undefined && { pot }),
  };
};

const YES: ReadonlySet<string> = new Set(YES_WORDS);
const NO: ReadonlySet<string> = new Set(NO_WORDS);

/** True for yes, false for no, as growers tick a column; undefined for anything else. */
export const yesOrNo = (text: string): boolean | undefined => {
  const word = text.trim().toLowerCase().replace(/[.!]$/, '');
  if (YES.has(word)) return true;
  return NO.has(word) ? false : undefined;
};

/**
 * What a pot column says under its heading: words, ticks, or the pot's size; 0 is no pot. Under a heading that
 * asks for the ground alone ('In ground?') a yes is the ground.
 *
 * @example readPotCell('x', 'Potted') // { pot: true }
 */
export const readPotCell = (text: string, heading: string): RoseReading | undefined => {
  const answer = yesOrNo(text) ?? (/^0+$/.test(text) ? false : /^1$/.test(text) ? true : undefined);
  if (answer === undefined) return readRoseWords(text, 'pot');
  const about = readRoseWords(heading, 'pot');
  return { pot: about?.pot === false ? !answer : answer };
};

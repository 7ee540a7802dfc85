import { describe, expect, test } from 'vitest';
import { ROSE_CLASSES } from '../../../addin/core';
import { wordsOf } from '../../../addin/core/adopt/cellText';
import { readHeading } from '../../../addin/core/adopt/headings';
import { nearWord } from '../../../addin/core/adopt/nearWord';
import { readPotCell, readRoseWords } from '../../../addin/core/adopt/roseWords';
import * as counts from '../../../addin/core/adopt/words/countWords';
import { HEADING_WORDS } from '../../../addin/core/adopt/words/headingWords';
import { GROUND_WORDS, POT_WORDS } from '../../../addin/core/adopt/words/potWords';
import { ROSE_CLASS_WORDS } from '../../../addin/core/adopt/words/roseClassWords';
import { SIZE_WORDS } from '../../../addin/core/adopt/words/sizeWords';

// The abbreviations are common practice among growers and rose societies; no publication is quoted.
describe('words for the class', () => {
  test.each([
    ['HT', 'Hybrid tea'],
    ['H.T.', 'Hybrid tea'],
    ['ht', 'Hybrid tea'],
    ['HTs', 'Hybrid tea'],
    ['Hybrid Teas', 'Hybrid tea'],
    ['hyb. tea', 'Hybrid tea'],
    ['hybird tea', 'Hybrid tea'],
    ['large-flowered bush', 'Hybrid tea'],
    ['F', 'Floribunda'],
    ['FL', 'Floribunda'],
    ['Flori', 'Floribunda'],
    ['floribundas', 'Floribunda'],
    ['flouribunda', 'Floribunda'],
    ['Gr', 'Grandiflora'],
    ['grandiflora', 'Grandiflora'],
    ['M', 'Miniature'],
    ['Min', 'Miniature'],
    ['mini', 'Miniature'],
    ['Minis', 'Miniature'],
    ['minature', 'Miniature'],
    ['MinFl', 'Miniflora'],
    ['Mini-flora', 'Miniflora'],
    ['CL', 'Climber'],
    ['LCl', 'Climber'],
    ['climbing rose', 'Climber'],
    ['Cl. HT', 'Climber'],
    ['S', 'Shrub'],
    ['English', 'Shrub'],
    ['hybrid musk', 'Shrub'],
    ['Pol', 'Polyantha'],
    ['polyanthas', 'Polyantha'],
    ['OGR', 'Old garden rose'],
    ['Old Garden Roses', 'Old garden rose'],
    ['Bourbon', 'Old garden rose'],
    ['rambler', 'Rambler'],
    ['tree rose', 'Tree rose'],
    ['HT standard', 'Tree rose'],
    ['Edelrosen', 'Hybrid tea'],
    ['Beetrose', 'Floribunda'],
    ['Kletterrose', 'Climber'],
    ['Hybride de thé', 'Hybrid tea'],
    ['Rosier grimpant', 'Climber'],
    ['Híbrido de té', 'Hybrid tea'],
    ['trepador', 'Climber'],
    ['Theehybride', 'Hybrid tea'],
    ['klimrozen', 'Climber'],
    ['Ibrido di tè', 'Hybrid tea'],
    ['rampicante', 'Climber'],
  ])('“%s” is a %s', (text, roseClass) => {
    expect(readRoseWords(text, 'class')).toEqual({ roseClass });
  });

  test.each(['shrublet', 'HT/F', 'see label', 'rose', '?', '3', 'large mini small'])(
    '“%s” is not understood',
    (text) => {
      expect(readRoseWords(text, 'class')?.roseClass).toBeUndefined();
    },
  );

  test('two classes of one size agree: “Gr/HT” is a large bush either way', () => {
    expect(readRoseWords('Gr/HT', 'class')).toEqual({ roseClass: 'Grandiflora' });
  });

  test('a class may come with the pot', () => {
    expect(readRoseWords('pot. mini', 'class')).toEqual({ roseClass: 'Miniature', pot: true });
    expect(readRoseWords('mini in a pot', 'class')).toEqual({ roseClass: 'Miniature', pot: true });
  });
});

describe('words for the size', () => {
  test.each([
    ['L', 'large'],
    ['lg', 'large'],
    ['Big', 'large'],
    ['large bush', 'large'],
    ['M', 'medium'],
    ['med.', 'medium'],
    ['bush', 'medium'],
    ['S', 'small'],
    ['small', 'small'],
    ['mini', 'miniature'],
    ['groß', 'large'],
    ['moyenne', 'medium'],
    ['pequeño', 'small'],
    ['klein', 'small'],
  ])('“%s” is %s', (text, size) => {
    expect(readRoseWords(text, 'size')).toEqual({ size });
  });

  test('an M is a miniature under “Class” and medium under “Size”', () => {
    expect(readRoseWords('M', 'class')).toEqual({ roseClass: 'Miniature' });
    expect(readRoseWords('M', 'size')).toEqual({ size: 'medium' });
    expect(readRoseWords('M', 'pot')).toBeUndefined();
  });

  test('a height is not a size', () => {
    expect(readRoseWords('3 ft', 'size')).toBeUndefined();
  });
});

describe('words for pot or ground', () => {
  test.each([
    'pot',
    'Potted',
    'in pot',
    '5 gal pot',
    '5gal',
    '#5',
    '30 cm',
    'tub',
    'container',
    'Topf',
    'en maceta',
    'in vaso',
    'x',
    'yes',
    '✓',
    '7',
    '1',
  ])('“%s” is a pot', (text) => expect(readPotCell(text, 'Pot')).toEqual({ pot: true }));
  test.each(['ground', 'In ground', 'bed', 'border', 'Freiland', 'pleine terre', 'no', 'n', '-', '0'])(
    '“%s” is the ground',
    (text) => expect(readPotCell(text, 'Pot')).toEqual({ pot: false }),
  );
  test('under “In ground?” a yes is the ground', () => {
    expect(readPotCell('yes', 'In ground?')).toEqual({ pot: false });
    expect(readPotCell('no', 'In ground?')).toEqual({ pot: true });
    expect(readPotCell('yes', 'Pot or ground')).toEqual({ pot: true });
  });
  test('“windowsill” is not understood', () => expect(readPotCell('windowsill', 'Pot')).toBeUndefined());
});

describe('misspelt words', () => {
  test('are taken for the nearest known word with the same first letter', () => {
    expect(nearWord('grandifloar', ['grandiflora', 'floribunda'])).toBe('grandiflora');
  });
  test('are left alone where two known words are equally near, or none is', () => {
    expect(nearWord('cater', ['caver', 'cager'])).toBeUndefined();
    expect(nearWord('shrublet', ['shrub', 'species'])).toBeUndefined();
    expect(nearWord('ht', ['hp'])).toBeUndefined();
  });
});

describe('the word lists', () => {
  const owners = (lists: Readonly<Record<string, readonly string[]>>) => {
    const owner = new Map<string, string[]>();
    for (const [name, words] of Object.entries(lists))
      for (const word of words) owner.set(word, [...(owner.get(word) ?? []), name]);
    return [...owner].filter(([, names]) => names.length > 1);
  };
  const everyWord = [
    ...Object.values(ROSE_CLASS_WORDS).flat(),
    ...Object.values(SIZE_WORDS).flat(),
    ...POT_WORDS,
    ...GROUND_WORDS,
    ...HEADING_WORDS.flatMap(({ words }) => words),
    ...counts.PIECE_WORDS,
    ...counts.ABOUT_WORDS,
    ...counts.TOTAL_WORDS,
    ...counts.NUMBER_WORDS.keys(),
  ];
  test('hold each word as it is looked up', () => {
    expect(everyWord.filter((word) => wordsOf(word) !== word)).toEqual([]);
  });
  test('give a word one class, one size, and pot or ground', () => {
    expect(owners(ROSE_CLASS_WORDS)).toEqual([]);
    expect(owners(SIZE_WORDS)).toEqual([]);
    expect(owners({ pot: POT_WORDS, ground: GROUND_WORDS })).toEqual([]);
  });
  test('have words for every class, and every listed word of a class is read as it', () => {
    expect(Object.keys(ROSE_CLASS_WORDS).sort()).toEqual(Object.keys(ROSE_CLASSES).sort());
    for (const [roseClass, words] of Object.entries(ROSE_CLASS_WORDS))
      for (const word of words) expect([word, readRoseWords(word, 'class')]).toEqual([word, { roseClass }]);
  });
  test('weigh a word inside a longer heading less', () => {
    expect(readHeading('Bed / corner')).toEqual({ weights: { bed: 0.7 }, exact: false });
  });
  test('point every heading somewhere', () => {
    for (const word of HEADING_WORDS.flatMap(({ words }) => words))
      expect([word, readHeading(word)?.exact]).toEqual([word, true]);
  });
});

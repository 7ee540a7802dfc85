import type { WordReading } from './adoption';
import { remembered } from './cellText';
import type { ListColumns } from './listColumns';
import { readPotCell, readRoseWords, type RoseColumn } from './roseWords';
import type { RoseReading } from './sizeClass';

const COLUMNS = ['class', 'size', 'pot'] as const;

/** What the class, size and pot cells of a row say together; rows with the same words share one. */
export interface PlantWords {
  /** The grower's own words. */
  readonly texts: Readonly<Record<RoseColumn, string>>;
  readonly rose: RoseReading;
  /** Columns whose words are not understood. */
  readonly unknown: readonly RoseColumn[];
}

export interface WordReader {
  /** The class that a word means, if it means one. */
  readonly classWord: (text: string) => RoseReading | undefined;
  /** @param inPot whether the row stands among pots; a column that says pot or ground counts before it */
  readonly plantWords: (roseClass: string, size: string, pot: string, inPot: boolean) => PlantWords;
  /** How each word was understood, and in how many rows it stood. */
  readonly readings: () => readonly WordReading[];
}

const join = (
  texts: PlantWords['texts'],
  said: Readonly<Record<RoseColumn, RoseReading | undefined>>,
  inPot: boolean,
): PlantWords => {
  const roseClass = said.class?.roseClass ?? said.size?.roseClass ?? said.pot?.roseClass;
  const size = said.size?.size ?? said.class?.size ?? said.pot?.size;
  const pot = said.pot?.pot ?? said.size?.pot ?? said.class?.pot ?? (inPot ? true : undefined);
  return {
    texts,
    rose: { ...(roseClass && { roseClass }), ...(size && { size }), ...(pot !== undefined && { pot }) },
    unknown: COLUMNS.filter((column) => texts[column] !== '' && !said[column]),
  };
};

const spelledOut = ({ roseClass, size, pot }: RoseReading): string =>
  [roseClass, size, pot === undefined ? undefined : pot ? 'in a pot' : 'in the ground']
    .filter((word) => word !== undefined)
    .join(', ');

/** Reads the words of a list, each different combination once. */
export const wordReader = (columns: ListColumns): WordReader => {
  const heading = columns.pot?.header ?? '';
  const readers: Readonly<Record<RoseColumn, (text: string) => RoseReading | undefined>> = {
    class: remembered((text) => readRoseWords(text, 'class')),
    size: remembered((text) => readRoseWords(text, 'size')),
    pot: remembered((text) => readPotCell(text, heading)),
  };
  const said = (texts: PlantWords['texts'], column: RoseColumn) =>
    texts[column] === '' ? undefined : readers[column](texts[column]);
  const combinations = new Map<string, { words: PlantWords; rows: number }>();
  return {
    classWord: readers.class,
    plantWords: (roseClass, size, pot, inPot) => {
      const key = `${roseClass}\n${size}\n${pot}\n${inPot}`;
      const known = combinations.get(key);
      if (known) {
        known.rows++;
        return known.words;
      }
      const texts = { class: roseClass, size, pot };
      const words = join(
        texts,
        { class: said(texts, 'class'), size: said(texts, 'size'), pot: said(texts, 'pot') },
        inPot,
      );
      combinations.set(key, { words, rows: 1 });
      return words;
    },
    readings: () => {
      const readings = new Map<
        string,
        { meaning: RoseColumn; reading: string; texts: Set<string>; rows: number }
      >();
      for (const column of COLUMNS)
        for (const { words, rows } of combinations.values()) {
          const reading = said(words.texts, column);
          if (!reading) continue;
          const told = spelledOut(reading);
          const entry = readings.get(`${column}|${told}`) ?? {
            meaning: column,
            reading: told,
            texts: new Set(),
            rows: 0,
          };
          entry.texts.add(words.texts[column]);
          entry.rows += rows;
          readings.set(`${column}|${told}`, entry);
        }
      return [...readings.values()].map((entry) => ({ ...entry, texts: [...entry.texts] }));
    },
  };
};

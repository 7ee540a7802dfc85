import { referenceConvert } from '../../oracles/referenceUnits';

/** An amount of product that a card tells a person to measure: g or mL. */
export interface PrintedAmount {
  readonly kind: 'mass' | 'volume';
  readonly amount: number;
}

/** What a card prints of a product for a fill. */
export interface PrintedMeasure {
  /** What is measured of the product; 0 where it is said to be too little. */
  readonly amount: PrintedAmount;
  readonly words: string;
  /** Share by which it is said to be off, with its sign. */
  readonly off?: number;
}

const VOLUMES = ['cups', 'cup', 'tbsp', 'tsp', 'imp fl oz', 'imp pt', 'imp gal', 'qt', 'gal', 'mL', 'L'];
const MASSES = ['lb', 'oz', 'kg', 'g'];
const PIECE = new RegExp(
  `^(?:(\\d+(?:\\.\\d+)?)(?: (\\d+)/(\\d+))?|(\\d+)/(\\d+)) (${[...VOLUMES, ...MASSES].join('|')})(?: |$)`,
);

/** "3 1/4 cups 3 tbsp" as one amount; undefined for words that are no measure. */
export const amountOf = (words: string): PrintedAmount | undefined => {
  let rest = words;
  let sum = 0;
  const kinds = new Set<PrintedAmount['kind']>();
  while (rest !== '') {
    const found = PIECE.exec(rest);
    if (!found) return undefined;
    const [all, whole, above, below, onlyAbove, onlyBelow, unit = ''] = found;
    const part = (over?: string, under?: string) => (over === undefined ? 0 : Number(over) / Number(under));
    const number = Number(whole ?? 0) + part(above, below) + part(onlyAbove, onlyBelow);
    const kind = VOLUMES.includes(unit) ? 'volume' : 'mass';
    kinds.add(kind);
    sum += referenceConvert(number, unit === 'cups' ? 'cup' : unit, kind === 'volume' ? 'mL' : 'g');
    rest = rest.slice(all.length);
  }
  const [kind, ...others] = kinds;
  return kind === undefined || others.length > 0 ? undefined : { kind, amount: sum };
};

const OFF = / \(([+\u2212])(\d+(?:\.\d+)?)\u00a0%\)$/;
const STOCK = /^too little to measure: (.+) in (.+) of water, (.+) of that$/;

/** What stands in a cell of measures; undefined where it tells no measure. */
export const printedMeasure = (cell: string, kind: PrintedAmount['kind']): PrintedMeasure | undefined => {
  const off = OFF.exec(cell);
  const words = cell.replace(OFF, '');
  const told = off === null ? {} : { off: (Number(off[2]) / 100) * (off[1] === '+' ? 1 : -1) };
  if (words === 'too little to measure') return { amount: { kind, amount: 0 }, words, ...told };
  const stock = STOCK.exec(words);
  if (!stock) {
    const amount = amountOf(words);
    return amount && { amount, words, ...told };
  }
  const [product, water, part] = stock.slice(1).map((one) => amountOf(one));
  if (!product || water?.kind !== 'volume' || part?.kind !== 'volume') return undefined;
  return {
    amount: { kind: product.kind, amount: (product.amount * part.amount) / water.amount },
    words,
    ...told,
  };
};

/** A label's rate, such as 8 oz/100 gal, as g or mL in a litre. */
export const rateInLitre = (value: number, unit: string): PrintedAmount | undefined => {
  const found = /^(.+?) ?\/ ?(\d+(?:\.\d+)?)? ?(\S.*)$/.exec(unit.trim());
  if (!found) return undefined;
  const [, measure = '', per = '1', volume = ''] = found;
  const kind = ['mg', ...MASSES].includes(measure) ? 'mass' : 'volume';
  const amount = referenceConvert(value, measure, kind === 'volume' ? 'mL' : 'g');
  return { kind, amount: amount / referenceConvert(Number(per), volume, 'L') };
};

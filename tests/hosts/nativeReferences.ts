/*
 * The spreadsheets' own formulas as an independent reference, as Calc spells them. Measures by their definitions: 1 gal = 256 tbsp = 16 cups =
 * 231 cubic inches, 1 lb = 453.59237 g (NIST Handbook 44, Appendix C); the density of water at 20 °C is
 * 998.2 g/L, as the core takes it.
 */

/** Numbers between two bounds, the same on every run (the 32 bit generator mulberry32). */
const numbers = (seed: number) => {
  let state = seed;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return (least: number, most: number): number => least + next() * (most - least);
};

export interface Reference {
  readonly name: string;
  /** Bounds of the inputs, in columns A, B, C … */
  readonly inputs: readonly (readonly [least: number, most: number])[];
  readonly whole?: readonly number[];
  readonly ours: string;
  readonly native: string;
  /** Another sum for the workbench's grid, whose CONVERT rounds degrees to hundredths. */
  readonly inGrid?: string;
}

export const REFERENCES: readonly Reference[] = [
  {
    name: 'DILUTE',
    inputs: [
      [0.1, 8],
      [0.5, 120],
    ],
    ours: 'FEED.DILUTE(A1;"tbsp/gal";B1;"gal";"cup")',
    native: 'A1*B1/16',
  },
  {
    name: 'DILUTE between mass and volume',
    inputs: [
      [0.1, 8],
      [0.5, 400],
      [0.3, 1.5],
    ],
    ours: 'FEED.DILUTE(A1;"mL/L";B1;"L";"lb";C1)',
    native: 'A1*B1*C1/453.59237',
  },
  {
    name: 'STRENGTH',
    inputs: [
      [1, 900],
      [1, 300],
    ],
    ours: 'FEED.STRENGTH(A1;"g";B1;"L";"oz/100 gal")',
    native: 'A1/B1/28.349523125*378.5411784',
  },
  {
    name: 'STOCK',
    inputs: [
      [1, 500],
      [1, 500],
    ],
    ours: 'FEED.STOCK(A1;B1;"gal";"plus")',
    native: 'B1/(A1+1)',
  },
  {
    name: 'FORPPM',
    inputs: [
      [10, 500],
      [1, 60],
      [1, 500],
    ],
    ours: 'FEED.FORPPM(A1;B1;C1;"L";"g")',
    native: 'A1*C1/1000/(B1/100)',
  },
  {
    name: 'PPM',
    inputs: [
      [1, 900],
      [1, 60],
      [1, 500],
    ],
    ours: 'FEED.PPM(A1;"g";B1;C1;"L")',
    native: 'A1*1000*B1/100/C1',
  },
  {
    name: 'BARREL',
    inputs: [
      [1, 48],
      [6, 40],
    ],
    ours: 'FEED.BARREL(A1;B1;"in";"gal")',
    native: 'PI()*(B1/2)^2*A1/231',
  },
  {
    name: 'WEIGHT',
    inputs: [
      [1, 300],
      [0, 50],
    ],
    ours: 'FEED.WEIGHT(A1;"L";"kg";B1)',
    native: 'A1*0.9982+B1',
  },
  {
    name: 'FILLS',
    inputs: [
      [1, 900],
      [15, 120],
      [0.1, 5],
    ],
    ours: 'FEED.FILLS(A1;B1;"gal";C1)',
    native: 'ROUNDUP(A1/(B1-C1);0)',
  },
  {
    name: 'FILLTIME',
    inputs: [
      [1, 300],
      [0.5, 12],
    ],
    ours: 'FEED.FILLTIME(A1;"gal";B1;"gal/min")',
    native: 'A1/B1',
  },
  {
    name: 'FLOW',
    inputs: [
      [0.5, 5],
      [20, 80],
      [20, 80],
      [20, 80],
    ],
    ours: 'FEED.FLOW(A1;"gal";B1:D1;"gal/min")',
    native: 'A1*COUNT(B1:D1)*60/SUM(B1:D1)',
  },
  {
    name: 'FLOWSPREAD',
    inputs: [
      [20, 80],
      [20, 80],
      [20, 80],
    ],
    ours: 'FEED.FLOWSPREAD(A1:C1)',
    native: 'STDEV(A1:C1)/AVERAGE(A1:C1)*100',
  },
  {
    name: 'SECONDS',
    inputs: [
      [0.05, 3],
      [0.5, 8],
    ],
    ours: 'FEED.SECONDS(A1;"gal";B1;"gal/min")',
    native: 'A1/B1*60',
  },
  {
    name: 'DOSE',
    inputs: [
      [1, 90],
      [0.5, 8],
    ],
    ours: 'FEED.DOSE(A1;B1;"gal/min";"gal")',
    native: 'A1*B1/60',
  },
  {
    name: 'NEED',
    inputs: [
      [0, 40],
      [0, 40],
      [0, 40],
      [0.1, 2],
      [0.1, 2],
      [0.1, 2],
    ],
    whole: [0, 1, 2],
    ours: 'FEED.NEED(A1:C1;D1:F1;"gal";"gal")',
    native: 'SUMPRODUCT(A1:C1;D1:F1)',
  },
  {
    name: 'SERVES',
    inputs: [
      [1, 300],
      [0.05, 3],
    ],
    ours: 'FEED.SERVES(A1;"gal";B1;"gal")',
    native: 'INT(A1/B1)',
  },
  {
    name: 'PERPLANT',
    inputs: [
      [10, 400],
      [0.1, 6],
    ],
    ours: 'FEED.PERPLANT(A1;B1;"L")',
    native: 'A1*B1',
  },
  {
    name: 'COST',
    inputs: [
      [1, 900],
      [1, 90],
      [1, 50],
    ],
    ours: 'FEED.COST(A1;"g";B1;C1;"lb")',
    native: 'A1/453.59237*B1/C1',
  },
  {
    name: 'INUNITS of temperature',
    inputs: [[-20, 110]],
    ours: 'FEED.INUNITS(A1;"F";"C")',
    native: 'COM.SUN.STAR.SHEET.ADDIN.ANALYSIS.GETCONVERT(A1;"F";"C")',
    inGrid: '(A1-32)*5/9',
  },
  {
    name: 'INUNITS of length',
    inputs: [[0.1, 900]],
    ours: 'FEED.INUNITS(A1;"ft";"cm")',
    native: 'COM.SUN.STAR.SHEET.ADDIN.ANALYSIS.GETCONVERT(A1;"ft";"m")*100',
  },
];

/** Rows of inputs between a reference's bounds, the same on every run. */
export const inputsFor = ({ name, inputs, whole = [] }: Reference, rows: number): number[][] => {
  const number = numbers(name.length * 7919);
  return Array.from({ length: rows }, () =>
    inputs.map(([least, most], index) => {
      const value = number(least, most);
      return whole.includes(index) ? Math.round(value) : value;
    }),
  );
};

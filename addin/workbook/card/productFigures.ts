import { PRODUCT_LIMITS } from '../../core';
import type { CellInput } from '../change';
import type { PageCell } from '../page';
import type { CardContext, ProductColumn } from './cardContext';
import { PRODUCT_COLUMNS, PRODUCT_HEADS, measureIndex, place, workings } from './cardContext';
import { cells, formula, quoted } from './cardFormulas';
import type { CardProduct } from './cardLayout';

/** Any other figure is General; an office reads TRUE and FALSE with that as numbers. */
const FORMATS: Partial<Readonly<Record<ProductColumn, string | undefined>>> = {
  over: undefined,
  total: '0.0##',
  cost: '0.00',
  madeTotal: '0.0##',
  madeCost: '0.00',
  each: '0.0##',
  greatestEach: '0.0##',
};

/** How a rate of the product's kind is told for a litre. */
export const perLitreUnit = ({ unit }: CardProduct): string => (['oz', 'g'].includes(unit) ? 'g/L' : 'mL/L');

/** Hot water for one unit of the barrel; words where the powder's solubility, or the density it takes, is not known. */
const hotWater = (context: CardContext, index: number, one: CardProduct): string => {
  const { product } = workings(context);
  if (one.form !== 'powder') return '0';
  const [density, solubility] = [product(index, 'density'), product(index, 'solubility')];
  const weighed = perLitreUnit(one) === 'g/L' ? '' : `,N(${density})>0`;
  const water = quoted(context.request.hotWaterUnit);
  const least = `FEED.PREMIX(${product(index, 'each')},${quoted(one.unit)},${solubility},${water},0,${density})`;
  return `IF(AND(N(${solubility})>0${weighed}),${least},"not known")`;
};

type Odd = Extract<ProductColumn, `odd${string}`>;

/** 1 where a cell of the product is one that the program refuses to read, though the measures may not need it. */
const odd = (
  context: CardContext,
  index: number,
  inProducts: (column: string) => string,
): Record<Odd | 'unread', string> => {
  const { products } = context.sources;
  const { density, solubility, price } = PRODUCT_LIMITS;
  const { work, product } = workings(context);
  // What a blank cell comes to is 0 in one program and blank in another, so that it is counted.
  const number = (column: string, value: string, least: string, most: number) =>
    `IF(AND(COUNTA(${inProducts(column)})>0,OR(ISTEXT(${value}),${value}${least},${value}>${most})),1,0)`;
  const unit = (column: string, answer: string) =>
    `IF(AND(COUNTA(${inProducts(column)})>0,ISERROR(${answer})),1,0)`;
  const of = (what: ProductColumn) => product(index, what);
  const [greatest, greatestUnit, packUnit] = [of('greatest'), of('greatestUnit'), of('packUnit')];
  const share = `IFERROR(FEED.INUNITS(${greatest},${greatestUnit},"mL/L"),FEED.INUNITS(${greatest},${greatestUnit},"g/L")/2)`;
  const [first, last] = [work.product(index, 'oddDensity'), work.product(index, 'oddShare')];
  return {
    oddDensity: number(products.density, of('density'), `<${density.least}`, density.most),
    oddGreatest: number(products.greatestRate, greatest, '<=0', 1e9),
    oddSolubility: number(products.solubility, of('solubility'), `<${solubility.least}`, solubility.most),
    oddPack: number(products.pack, of('pack'), '<=0', 1e9),
    oddPrice:
      `IF(COUNT(${inProducts(products.price)})=0,IF(COUNTA(${inProducts(products.price)})>0,1,0),` +
      `IF(OR(${of('price')}<${price.least},${of('price')}>${price.most}),1,0))`,
    oddPackUnit: unit(products.packUnit, `FEED.UNITCOST(1,1,${packUnit},${packUnit})`),
    oddGreatestUnit: unit(products.greatestRateUnit, `FEED.INUNITS(1,${greatestUnit},"g/L",1)`),
    // A label allows a litre, or two kilograms, of a product in a litre at most.
    oddShare: `IF(${greatest}>0,IF(ABS(${share}-500.0000005)>499.9999995,1,0),0)`,
    unread: `IF(SUM(${cells(first.row, first.column, last.row, last.column)})=0,0,1)`,
  };
};

/** The figures of one product, looked up once, and what keeps its measures from being shown. */
const formulas = (
  context: CardContext,
  index: number,
  one: CardProduct,
): Partial<Record<ProductColumn, string>> => {
  const { sources, request } = context;
  const { work, at, product, rig } = workings(context);
  const of = (what: ProductColumn) => product(index, what);
  const { mix, products } = sources;
  const fills = request.stations.reduce((sum, station) => sum + station.fills, 0);
  const lastMeasure = work.measure(measureIndex(context, fills - 1, request.products.length - 1), 'product');
  const down = (what: 'product' | 'measured') => {
    const { row, column } = work.measure(0, what);
    return cells(row, column, lastMeasure.row, column);
  };
  const unit = quoted(one.unit);
  const rated = `${of('rate')},${of('rateUnit')}`;
  const eachOf = (rate: string, rateUnit: string) =>
    `FEED.DILUTE(${rate},${rateUnit},1,${rig('unit')},${unit},${of('density')})`;
  const priced = `FEED.COST(${of('total')},${unit},${of('price')},${of('pack')},${of('packUnit')},${of('density')})`;
  const inProducts = (column: string) => `INDEX(${column},${of('productRow')})`;
  const lost = one.labelKnown ? `NOT(${of('greatest')}>0)` : `ISTEXT(${of('greatest')})`;
  return {
    total: `SUMIF(${down('product')},${index + 1},${down('measured')})`,
    // Not compared with "": the grid may remember the cell from before it was worked out.
    cost: `IF(ISNUMBER(${of('price')}),IF(${of('total')}=0,0,IFERROR(${priced},"not known")),"not known")`,
    mixRow: `FEED.ROWOF(${of('name')},${mix.product})`,
    productRow: `FEED.ROWOF(${of('name')},${products.product})`,
    form: `TRIM(${inProducts(products.form)})`,
    rate: `INDEX(${mix.rate},${of('mixRow')})`,
    rateUnit: `INDEX(${mix.rateUnit},${of('mixRow')})`,
    greatest: inProducts(products.greatestRate),
    greatestUnit: inProducts(products.greatestRateUnit),
    density: inProducts(products.density),
    solubility: inProducts(products.solubility),
    each: eachOf(of('rate'), of('rateUnit')),
    greatestEach: `IF(${of('greatest')}>0,${eachOf(of('greatest'), of('greatestUnit'))},0)`,
    share: `IF(${of('greatest')}>0,FEED.LABELSHARE(${rated},${of('greatest')},${of('greatestUnit')},${of('density')}),0)`,
    perLitre: `FEED.INUNITS(${of('rate')},${of('rateUnit')},${quoted(perLitreUnit(one))})`,
    hotEach: hotWater(context, index, one),
    price: `IF(COUNT(${inProducts(products.price)})=0,"",${inProducts(products.price)})`,
    pack: inProducts(products.pack),
    packUnit: inProducts(products.packUnit),
    unchecked: one.labelKnown ? '""' : `IF(${of('greatest')}>0,"",", “"&${of('name')}&"”")`,
    changed:
      `IF(OR(NOT(${of('rate')}>0),${of('form')}<>${quoted(one.form)},` +
      // The workbench's engine compares with no number that it writes with an exponent, such as 1E-9.
      `ROUND(FEED.INUNITS(1,${of('rateUnit')},${of('madeUnit')}),9)<>1),"is not as it was",` +
      `IF(${lost},"has lost its label's rate",""))`,
    ...odd(context, index, inProducts),
    // An emptied cell of these workings is a fault, not a 0.
    over: request.overLabel.includes(index)
      ? `IF(ISNUMBER(${of('share')}),IF(AND(${of('share')}>1,OR(TRIM(${at(work.reason)})="",` +
        `FEED.LABELSHARE(${rated},${of('madeRate')},${of('madeUnit')})>1)),1,0),NA())`
      : // The card has no line that names this one, whatever reason stands there for another.
        `IF(ISNUMBER(${of('share')}),IF(${of('share')}>1,1,0),NA())`,
    fault:
      `IFERROR(IF(${of('changed')}<>"",${of('changed')},IF(${of('unread')}=1,"has a cell that cannot be read",` +
      `IF(AND(ISNUMBER(${of('over')}),${of('over')}=0),"","is above the label"))),"is not as it was")`,
    beyond: `IF(OR(${of('perLitre')}<0.000001,${of('perLitre')}>${perLitreUnit(one) === 'g/L' ? 2000 : 1000}),1,0)`,
  };
};

const values = (one: CardProduct): Partial<Record<ProductColumn, CellInput>> => ({
  name: one.name,
  unit: one.unit,
  madeTotal: one.measured,
  madeCost: one.cost ?? 'not known',
  madeRate: one.rate.value,
  madeUnit: one.rate.unit,
});

/** A row a product: what the sheets say of it now, what it was when the card was made, and the whole round's sums. */
export const productFigures = (context: CardContext): PageCell[] => {
  const { products } = context.request;
  const { work } = workings(context);
  if (products.length === 0) return [];
  const { row, column } = work.products;
  const lines = products.flatMap((one, index) => {
    const texts = formulas(context, index, one);
    const given = values(one);
    return PRODUCT_COLUMNS.map((of) => {
      const text = texts[of];
      const input = text === undefined ? given[of]! : formula(text);
      const at = work.product(index, of);
      return place(at.row, at.column, input, 'computed', of in FORMATS ? FORMATS[of] : 'General');
    });
  });
  return [...PRODUCT_COLUMNS.map((of, at) => place(row, column + at, PRODUCT_HEADS[of], 'header')), ...lines];
};

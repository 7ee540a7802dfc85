import { measure, neededText, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

/** A cell of the product's row on the Products sheet; a blank one counts as 0, which the functions take as left out. */
const ofProduct = (column: string): string => `INDEX({products.${column}},{productRow})`;

/** The measure that a rate is written in: what stands before its stroke. */
const MEASURE = 'LEFT({rateUnit},FIND("/",{rateUnit})-1)';
/** Said beside a rate, and in place of an amount, above the label's greatest one. */
const ABOVE = 'above the label';
const BLANK = 'OR({product}="",{rate}="",{rateUnit}="")';

/** mg/L of a nutrient, from the grams of product in a litre; says so where the product's density is missing. */
const ppm = (nutrient: string): string =>
  `=IF(${BLANK},"",IF(${ofProduct(nutrient)}>0,` +
  `IFERROR(FEED.PPM(FEED.DILUTE({rate},{rateUnit},1,"L","g",${ofProduct('density')}),"g",${ofProduct(nutrient)},1,"L"),` +
  `IF(${ofProduct('density')}>0,NA(),"needs density")),""))`;

const nutrientColumn = (nutrient: string) => ({
  header: `${nutrient}, ppm`,
  width: 12,
  format: '0.0',
  note: `Milligrams of ${nutrient} in a litre of finished solution, from this product.`,
  formula: ppm(nutrient),
});

/** The products of today's mix with their rates. */
export const mixTable = defineTable({
  key: 'mix',
  name: 'Wandcount_Mix',
  title: 'Mix',
  purpose: 'What goes into the barrel today, at which rate. A product without a rate is left out of the mix.',
  place: 'mix',
  heads: [{ key: 'name', label: 'Mix', name: 'Mix_name', holds: remark }],
  identity: ['product'],
  reach: 500,
  columns: {
    product: {
      header: 'Product',
      width: 30,
      format: '@',
      holds: neededText('a product of the Products sheet'),
      list: {
        source: { table: 'products', column: 'name' },
        message: 'Choose a product of the Products sheet. For a new one, add it there first.',
      },
    },
    rate: {
      header: 'Rate',
      width: 9,
      unitWidth: 13,
      format: '0.0##',
      holds: measure('greatest', { least: 0 }),
    },
    label: {
      header: 'Against the label',
      width: 20,
      note: "Whether the rate is within the label's greatest one.",
      formula:
        `=IF(${BLANK},"",IF(${ofProduct('greatestRate')}>0,` +
        `IF(FEED.INUNITS({rate},{rateUnit},${ofProduct('greatestRateUnit')},${ofProduct('density')})>${ofProduct('greatestRate')}*(1+1E-9),"${ABOVE}","within the label"),` +
        `"label's rate not given"))`,
    },
    barrelful: {
      header: 'For a full barrel',
      width: 13,
      format: '0.0##',
      note: "In the measure of the rate, for the barrel filled to its line. Above the label's greatest rate no number stands here.",
      formula: `=IF(OR(${BLANK},NOT(ISNUMBER({Rig_barrel}))),"",IF({label}="${ABOVE}","${ABOVE}",FEED.DILUTE({rate},{rateUnit},{Rig_barrel}*IF({Rig_fill_line}>0,{Rig_fill_line},1),{Rig_barrel_unit},${MEASURE})))`,
    },
    measure: {
      header: 'In',
      width: 8,
      formula: `=IF(${BLANK},"",${MEASURE})`,
    },
    N: nutrientColumn('N'),
    P2O5: nutrientColumn('P2O5'),
    K2O: nutrientColumn('K2O'),
    Fe: nutrientColumn('Fe'),
    cost: {
      header: 'Cost of a barrel',
      width: 12,
      format: '#,##0.00',
      note: 'Of a full barrel. Blank where the price is not given.',
      formula:
        `=IF(ISNUMBER({barrelful}),IF(AND(${ofProduct('price')}>0,${ofProduct('pack')}>0),` +
        `FEED.COST({barrelful},{measure},${ofProduct('price')},${ofProduct('pack')},${ofProduct('packUnit')},${ofProduct('density')}),""),"")`,
    },
    productRow: {
      header: 'Row of Products',
      width: 9,
      format: '0',
      note: "The product's place on the Products sheet, for the columns before.",
      formula: '=IF({product}="","",FEED.ROWOF({product},{products.name}))',
    },
  },
});

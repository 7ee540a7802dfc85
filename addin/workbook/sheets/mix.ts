import { measure, neededText, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

/** A cell of the product's row on the Products sheet; a blank one counts as 0, which the functions take as left out. */
const ofProduct = (column: string): string => `INDEX({products.${column}},{productRow})`;

/** Said beside a rate, and in place of an amount, above the label's greatest one. */
const ABOVE = 'above the label';
const BLANK = 'OR({product}="",{rate}="",{rateUnit}="")';

const nutrientColumn = (nutrient: string) => ({
  header: `${nutrient}, ppm`,
  width: 12,
  format: '0.0',
  note: `Milligrams of ${nutrient} in a litre of finished solution, from this product.`,
  // A gram in a litre is 1000 ppm, of which the product holds so many per cent.
  formula: `=IF({grams}="","",IF(${ofProduct(nutrient)}>0,IF(ISNUMBER({grams}),{grams}*10*${ofProduct(nutrient)},{grams}),""))`,
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
      formula: `=IF(ISNUMBER({share}),IF({share}>1,"${ABOVE}","within the label"),{share})`,
    },
    barrelful: {
      header: 'For a full barrel',
      width: 13,
      format: '0.0##',
      note: "In the measure of the rate, for the barrel filled to its line. Above the label's greatest rate no number stands here.",
      formula:
        `=IF(OR({measure}="",NOT(ISNUMBER({Rig_barrel}))),"",IF({label}="${ABOVE}",{label},` +
        'FEED.DILUTE({rate},{rateUnit},{Rig_barrel}*IF({Rig_fill_line}>0,{Rig_fill_line},1),{Rig_barrel_unit},{measure})))',
    },
    measure: {
      header: 'In',
      width: 8,
      // What stands before the rate's stroke.
      formula: `=IF(${BLANK},"",LEFT({rateUnit},FIND("/",{rateUnit})-1))`,
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
        `=IF(ISNUMBER({barrelful}),IF(${ofProduct('unitCost')}="","",` +
        `FEED.COST({barrelful},{measure},${ofProduct('unitCost')},1,${ofProduct('packUnit')},{density})),"")`,
    },
    productRow: {
      header: 'Row of Products',
      width: 9,
      format: '0',
      note: "The product's place on the Products sheet, for the columns before.",
      formula: '=IF({product}="","",FEED.ROWOF({product},{products.name}))',
    },
    density: {
      header: 'Density, g/mL',
      width: 9,
      format: '0.0##;;',
      note: "The product's, from the Products sheet.",
      formula: `=IF({productRow}="","",${ofProduct('density')})`,
    },
    greatest: {
      header: "Label's greatest rate",
      width: 10,
      format: '0.0##;;',
      note: "The product's, from the Products sheet.",
      formula: `=IF({productRow}="","",${ofProduct('greatestRate')})`,
    },
    share: {
      header: 'Share of the label',
      width: 10,
      format: '0.00',
      note: "The rate, divided by the label's greatest one.",
      formula:
        `=IF(${BLANK},"",IF({greatest}>0,` +
        `FEED.LABELSHARE({rate},{rateUnit},{greatest},${ofProduct('greatestRateUnit')},{density}),"label's rate not given"))`,
    },
    grams: {
      header: 'Grams in a litre',
      width: 10,
      format: '0.0##',
      note: 'Of finished solution.',
      formula: `=IF(${BLANK},"",IFERROR(FEED.INUNITS({rate},{rateUnit},"g/L",{density}),IF({density}>0,NA(),"needs density")))`,
    },
  },
});

import { sheetShape } from './shape';

const BLANK = 'OR({product}="",{rate}="",{rateUnit}="")';

/** A cell of the product's row, searched for by name in each formula: the search takes * and ? for other letters. */
const searched = (column: string): string => `INDEX({products.${column}},MATCH({product},{products.name},0))`;

const ppm = (nutrient: string): string =>
  `=IF(${BLANK},"",IF(${searched(nutrient)}>0,` +
  `IFERROR(FEED.PPM(FEED.DILUTE({rate},{rateUnit},1,"L","g",${searched('density')}),"g",${searched(nutrient)},1,"L"),` +
  `IF(${searched('density')}>0,NA(),"needs density")),""))`;

/**
 * The first shape that a workbook tells: all that its sheets had by then, among it a column with each product's row,
 * by which the mix finds what the label says.
 */
export const wholeSheets = sheetShape({
  make: 'all',
  renew: {
    'mix.label': [
      `=IF(${BLANK},"",IF(${searched('greatestRate')}>0,` +
        `IF(FEED.INUNITS({rate},{rateUnit},${searched('greatestRateUnit')},${searched('density')})>${searched('greatestRate')}*(1+1E-9),"above the label","within the label"),` +
        `"label's rate not given"))`,
    ],
    // Without a look at the label.
    'mix.barrelful': [
      `=IF(OR(${BLANK},NOT(ISNUMBER({Rig_barrel}))),"",FEED.DILUTE({rate},{rateUnit},{Rig_barrel}*IF({Rig_fill_line}>0,{Rig_fill_line},1),{Rig_barrel_unit},LEFT({rateUnit},FIND("/",{rateUnit})-1)))`,
    ],
    'mix.N': [ppm('N')],
    'mix.P2O5': [ppm('P2O5')],
    'mix.K2O': [ppm('K2O')],
    'mix.Fe': [ppm('Fe')],
    'mix.cost': [
      `=IF(ISNUMBER({barrelful}),IF(AND(${searched('price')}>0,${searched('pack')}>0),` +
        `FEED.COST({barrelful},{measure},${searched('price')},${searched('pack')},${searched('packUnit')},${searched('density')}),""),"")`,
    ],
    'products.inMix': ['=IF({name}="","",IFERROR(INDEX({mix.label},MATCH({name},{mix.product},0)),""))'],
  },
});

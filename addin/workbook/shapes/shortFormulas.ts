import { sheetShape } from './shape';

const INDEX_DOSE = 'INDEX({doses.dose},MATCH({sizeClass},{doses.sizeClass},0))';
const NO_PLANT = 'AND({plant}="",{sizeClass}="")';
const BLANK = 'OR({product}="",{rate}="",{rateUnit}="")';
const MEASURE = 'LEFT({rateUnit},FIND("/",{rateUnit})-1)';

const ofProduct = (column: string): string => `INDEX({products.${column}},{productRow})`;

const ppm = (nutrient: string): string =>
  `=IF(${BLANK},"",IF(${ofProduct(nutrient)}>0,` +
  `IFERROR(FEED.PPM(FEED.DILUTE({rate},{rateUnit},1,"L","g",${ofProduct('density')}),"g",${ofProduct(nutrient)},1,"L"),` +
  `IF(${ofProduct('density')}>0,NA(),"needs density")),""))`;

/** What a formula looked up twice stands in a column of its own. */
export const shortFormulas = sheetShape({
  make: new Set([
    'plants.dosesRow',
    'doses.used',
    'mix.density',
    'mix.greatest',
    'mix.share',
    'mix.grams',
    'products.mixRow',
  ]),
  renew: {
    'plants.dose': [`=IF(${NO_PLANT},"",IFERROR(IF(${INDEX_DOSE}>0,${INDEX_DOSE},"no dose"),"no dose"))`],
    'plants.seconds': [
      '=IF(ISNUMBER({dose}),INDEX({doses.seconds},MATCH({sizeClass},{doses.sizeClass},0)),"")',
    ],
    'plants.solution': [
      `=IF(${NO_PLANT},"",IF(ISNUMBER({dose}),FEED.NEED({howMany},{dose},{Doses_unit},{Doses_unit}),NA()))`,
    ],
    'mix.label': [
      `=IF(${BLANK},"",IF(${ofProduct('greatestRate')}>0,` +
        `IF(FEED.INUNITS({rate},{rateUnit},${ofProduct('greatestRateUnit')},${ofProduct('density')})>${ofProduct('greatestRate')}*(1+1E-9),"above the label","within the label"),` +
        `"label's rate not given"))`,
    ],
    'mix.barrelful': [
      `=IF(OR(${BLANK},NOT(ISNUMBER({Rig_barrel}))),"",IF({label}="above the label","above the label",` +
        `FEED.DILUTE({rate},{rateUnit},{Rig_barrel}*IF({Rig_fill_line}>0,{Rig_fill_line},1),{Rig_barrel_unit},${MEASURE})))`,
    ],
    'mix.N': [ppm('N')],
    'mix.P2O5': [ppm('P2O5')],
    'mix.K2O': [ppm('K2O')],
    'mix.Fe': [ppm('Fe')],
    'mix.cost': [
      `=IF(ISNUMBER({barrelful}),IF(AND(${ofProduct('price')}>0,${ofProduct('pack')}>0),` +
        `FEED.COST({barrelful},{measure},${ofProduct('price')},${ofProduct('pack')},${ofProduct('packUnit')},${ofProduct('density')}),""),"")`,
    ],
    'products.inMix': [
      '=IF({name}="","",IF(ISERROR(FEED.ROWOF({name},{mix.product})),"",INDEX({mix.label},FEED.ROWOF({name},{mix.product}))))',
    ],
  },
});

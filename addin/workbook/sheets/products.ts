import { choiceCell, numberCell, optional, packUnitCell, rateUnitCell, textCell } from '../fields/cellValue';
import { computed, defineTable, input } from '../tables/table';

const percent = optional(numberCell({ least: 0, most: 100 }));

/** What may go into the barrel or be spread dry, as its label says. */
export const productsTable = defineTable({
  key: 'products',
  name: 'Wandcount_Products',
  title: 'Products',
  purpose:
    'What goes into the barrel, as the labels say. Leave blank what you do not know; nothing is guessed.',
  place: 'mix',
  identity: ['name'],
  reach: 500,
  columns: {
    name: input({ header: 'Product', width: 30, format: '@', schema: textCell('the name of a product') }),
    form: input({
      header: 'Form',
      width: 10,
      schema: choiceCell(['powder', 'liquid', 'dry'], 'powder, liquid or dry'),
      list: { source: ['powder', 'liquid', 'dry'], message: 'Choose powder, liquid or dry.' },
      note: 'powder is dissolved first, liquid is poured, dry is spread and never goes into the barrel.',
    }),
    density: input({
      header: 'Density, g/mL',
      width: 11,
      format: '0.0##',
      schema: optional(numberCell({ above: 0, most: 20 })),
      note: 'Grams in a millilitre as you measure it. Fill a measure of known size and weigh it; needed from spoons to grams.',
    }),
    N: input({ header: 'N, %', width: 8, format: '0.0#', schema: percent }),
    P2O5: input({ header: 'P2O5, %', width: 9, format: '0.0#', schema: percent }),
    K2O: input({ header: 'K2O, %', width: 9, format: '0.0#', schema: percent }),
    Fe: input({ header: 'Fe, %', width: 8, format: '0.0#', schema: percent }),
    greatestRate: input({
      header: 'Greatest rate',
      width: 11,
      format: '0.0##',
      schema: optional(numberCell({ above: 0 })),
      note: "The label's greatest rate. Nothing is planned above it unless you say why.",
    }),
    greatestRateUnit: input({
      header: 'Greatest rate, unit',
      width: 14,
      format: '@',
      schema: optional(rateUnitCell),
      note: 'As labels print it: tbsp/gal, mL/L, g/L, oz/100 gal.',
    }),
    inMix: computed({
      header: 'In the mix',
      width: 16,
      note: "Whether today's mix keeps to the greatest rate beside.",
      formula: '=IF({name}="","",IFERROR(INDEX({mix.label},MATCH({name},{mix.product},0)),""))',
    }),
    solubility: input({
      header: 'Dissolves, g/L',
      width: 12,
      format: '0',
      schema: optional(numberCell({ above: 0 })),
      note: 'Grams that dissolve in a litre of water at the temperature of your bucket.',
    }),
    pack: input({ header: 'Pack', width: 9, format: '0.0##', schema: optional(numberCell({ above: 0 })) }),
    packUnit: input({ header: 'Pack, unit', width: 10, format: '@', schema: optional(packUnitCell) }),
    price: input({
      header: 'Price of a pack',
      width: 12,
      format: '#,##0.00',
      schema: optional(numberCell({ least: 0 })),
    }),
    unitCost: computed({
      header: 'Price of one unit',
      width: 12,
      format: '#,##0.00#',
      note: 'Price of one of the unit in which the pack is sold.',
      formula:
        '=IF(OR({price}="",{pack}="",{packUnit}=""),"",FEED.UNITCOST({price},{pack},{packUnit},{packUnit}))',
    }),
  },
});

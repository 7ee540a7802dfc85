import { PRODUCT_LIMITS } from '../../core';
import { measure, MONEY, neededChoice, neededText, number } from '../fields/holds';
import { timesRange } from '../fields/range';
import { defineTable } from '../tables/table';

/** Per cent of a nutrient, as the label states it. */
const nutrient = (header: string, width: number, label: string) => ({
  header,
  width,
  format: '0.0#',
  holds: number(timesRange(PRODUCT_LIMITS.share, 100)),
  ask: { label, under: 'What the label states', unit: '%' },
});

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
    name: {
      header: 'Product',
      width: 30,
      format: '@',
      holds: neededText('the name you call it by'),
      ask: { label: 'Name', under: '' },
    },
    form: {
      header: 'Form',
      width: 10,
      holds: neededChoice('powder', 'liquid', 'dry'),
      note: 'powder is dissolved first, liquid is poured, dry is spread and never goes into the barrel.',
      ask: {
        label: 'It is a',
        under: '',
        called: { powder: 'Powder', liquid: 'Liquid', dry: 'Spread dry' },
      },
    },
    density: {
      header: 'Density, g/mL',
      width: 11,
      format: '0.0##',
      holds: number(PRODUCT_LIMITS.density),
      note: 'Grams in a millilitre as you measure it. Fill a measure of known size and weigh it; needed from spoons to grams.',
      ask: {
        label: 'One millilitre weighs',
        under: 'Measuring and money',
        unit: 'g',
        help: 'Weigh it as you measure it. Needed between spoons and weights, and for food per plant.',
      },
    },
    N: nutrient('N, %', 8, 'Nitrogen, N'),
    P2O5: nutrient('P2O5, %', 9, 'Phosphate, P2O5'),
    K2O: nutrient('K2O, %', 9, 'Potash, K2O'),
    Fe: nutrient('Fe, %', 8, 'Iron, Fe'),
    greatestRate: {
      header: 'Greatest rate',
      width: 11,
      unitWidth: 14,
      format: '0.0##',
      holds: measure('greatest', { above: 0 }),
      note: "The label's greatest rate. Nothing is planned above it unless you say why.",
      ask: { label: "Label's greatest rate", under: '', help: 'The plan never goes above it.' },
    },
    inMix: {
      header: 'In the mix',
      width: 16,
      note: "Whether today's mix keeps to the greatest rate beside.",
      formula: '=IF({mixRow}="","",INDEX({mix.label},{mixRow}))',
    },
    solubility: {
      header: 'Dissolves, g/L',
      width: 12,
      format: '0',
      holds: number(PRODUCT_LIMITS.solubility),
      note: 'Grams that dissolve in a litre of water at the temperature of your bucket.',
      ask: {
        label: 'Dissolves in your hot water',
        under: 'Measuring and money',
        unit: 'g/L',
        help: 'From the label; it tells how much hot water the powder needs.',
        when: { form: 'powder' },
      },
    },
    pack: {
      header: 'Pack',
      width: 9,
      unitWidth: 10,
      format: '0.0##',
      holds: measure('pack', { above: 0 }),
      ask: { label: 'A pack holds', under: 'Measuring and money' },
    },
    price: {
      header: 'Price of a pack',
      width: 12,
      format: '#,##0.00',
      holds: number(PRODUCT_LIMITS.price),
      ask: { label: 'A pack costs', under: 'Measuring and money', unit: MONEY },
    },
    unitCost: {
      header: 'Price of one unit',
      width: 12,
      format: '#,##0.00#',
      note: 'Price of one of the unit in which the pack is sold.',
      formula:
        '=IF(OR({price}="",{pack}="",{packUnit}=""),"",FEED.UNITCOST({price},{pack},{packUnit},{packUnit}))',
    },
    mixRow: {
      header: 'Row of Mix',
      width: 9,
      format: '0',
      note: "The product's place on the Mix sheet, where it is in the mix.",
      formula: '=IF({name}="","",IFERROR(FEED.ROWOF({name},{mix.product}),""))',
    },
  },
});

import type { System } from '../addin/core';

type Asks =
  'barrel' | 'bucket' | 'hotWater' | 'dose' | 'flow' | 'hose' | 'bore' | 'weight' | 'greatest' | 'pack';

/** Units offered for what is asked, the usual one first; any other known unit on the sheet stays offered too. */
const CHOICES: Readonly<Record<System, Readonly<Record<Asks, readonly string[]>>>> = {
  US: {
    barrel: ['gal', 'L', 'qt'],
    bucket: ['gal', 'qt', 'L'],
    hotWater: ['qt'],
    dose: ['gal', 'qt', 'cup', 'L'],
    flow: ['gal/min', 'gal/h', 'L/min'],
    hose: ['ft', 'yd', 'm'],
    bore: ['in', 'mm'],
    weight: ['lb', 'kg'],
    greatest: ['tbsp/gal', 'tsp/gal', 'fl oz/gal', 'oz/100 gal', 'lb/100 gal', 'mL/L', 'g/L'],
    pack: ['lb', 'oz', 'kg', 'g', 'gal', 'qt', 'pt', 'fl oz', 'L', 'mL'],
  },
  metric: {
    barrel: ['L', 'gal', 'imp gal'],
    bucket: ['L', 'gal', 'imp gal'],
    hotWater: ['L'],
    dose: ['L', 'mL', 'gal'],
    flow: ['L/min', 'L/h', 'mL/s', 'gal/min'],
    hose: ['m', 'ft'],
    bore: ['mm', 'in'],
    weight: ['kg', 'lb'],
    greatest: ['mL/L', 'g/L', 'mL/100 L', 'g/100 L', 'tbsp/gal'],
    pack: ['kg', 'g', 'L', 'mL', 'lb', 'oz'],
  },
  imperial: {
    barrel: ['imp gal', 'L', 'gal'],
    bucket: ['imp gal', 'L', 'imp qt'],
    hotWater: ['imp qt'],
    dose: ['imp gal', 'imp pt', 'L'],
    flow: ['imp gal/min', 'L/min'],
    hose: ['ft', 'yd', 'm'],
    bore: ['in', 'mm'],
    weight: ['lb', 'kg'],
    greatest: ['imp fl oz/imp gal', 'oz/100 imp gal', 'oz/imp gal', 'mL/L', 'g/L'],
    pack: ['kg', 'g', 'L', 'mL', 'lb', 'oz', 'imp pt', 'imp fl oz'],
  },
};

/** @example unitChoices('US', 'barrel')[0] // 'gal' */
export const unitChoices = (measures: System, asks: Asks): readonly string[] => CHOICES[measures][asks];

import type { Family, System } from '../../core';

/** What a unit beside a number may be: one of a family, of those packs are sold in, or a rate as labels print it. */
export type UnitKind = Family | 'pack' | 'rate';

interface Usual extends Readonly<Record<System, readonly string[]>> {
  readonly of: UnitKind;
}

const USUAL = {
  barrel: {
    of: 'volume',
    US: ['gal', 'L', 'qt'],
    metric: ['L', 'gal', 'imp gal'],
    imperial: ['imp gal', 'L', 'gal'],
  },
  bucket: {
    of: 'volume',
    US: ['gal', 'qt', 'L'],
    metric: ['L', 'gal', 'imp gal'],
    imperial: ['imp gal', 'L', 'imp qt'],
  },
  hotWater: { of: 'volume', US: ['qt'], metric: ['L'], imperial: ['imp qt'] },
  dose: {
    of: 'volume',
    US: ['gal', 'qt', 'cup', 'L'],
    metric: ['L', 'mL', 'gal'],
    imperial: ['imp gal', 'imp pt', 'L'],
  },
  flow: {
    of: 'flow',
    US: ['gal/min', 'gal/h', 'L/min'],
    metric: ['L/min', 'L/h', 'mL/s', 'gal/min'],
    imperial: ['imp gal/min', 'L/min'],
  },
  hose: { of: 'length', US: ['ft', 'yd', 'm'], metric: ['m', 'ft'], imperial: ['ft', 'yd', 'm'] },
  bore: { of: 'length', US: ['in', 'mm'], metric: ['mm', 'in'], imperial: ['in', 'mm'] },
  weight: { of: 'mass', US: ['lb', 'kg'], metric: ['kg', 'lb'], imperial: ['lb', 'kg'] },
  greatest: {
    of: 'rate',
    US: ['tbsp/gal', 'tsp/gal', 'fl oz/gal', 'oz/100 gal', 'lb/100 gal', 'mL/L', 'g/L'],
    metric: ['mL/L', 'g/L', 'mL/100 L', 'g/100 L', 'tbsp/gal'],
    imperial: ['imp fl oz/imp gal', 'oz/100 imp gal', 'oz/imp gal', 'mL/L', 'g/L'],
  },
  pack: {
    of: 'pack',
    US: ['lb', 'oz', 'kg', 'g', 'gal', 'qt', 'pt', 'fl oz', 'L', 'mL'],
    metric: ['kg', 'g', 'L', 'mL', 'lb', 'oz'],
    imperial: ['kg', 'g', 'L', 'mL', 'lb', 'oz', 'imp pt', 'imp fl oz'],
  },
} as const satisfies Readonly<Record<string, Usual>>;

/** What is measured, as people choose its unit. */
export type MeasureName = keyof typeof USUAL;

export const unitKind = (name: MeasureName): UnitKind => USUAL[name].of;

/**
 * Units offered for what is measured, the one to begin with first; any other known unit on the sheet stays offered too.
 *
 * @example unitChoices('US', 'barrel')[0] // 'gal'
 */
export const unitChoices = (measures: System, name: MeasureName): readonly string[] => USUAL[name][measures];

/** The unit to begin with. */
export const usualUnit = (measures: System, name: MeasureName): string => USUAL[name][measures][0];

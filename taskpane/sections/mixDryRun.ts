import {
  findUnit,
  litres,
  overLabel,
  premixWater,
  productsFor,
  toCanonical,
  workingVolume,
} from '../../addin/core';
import type { Litres, MixProduct } from '../../addin/core';
import { andList } from '../../addin/workbook/fields/holds';
import type { Garden } from '../../addin/workbook/garden';
import { measureInWords } from '../measureWords';
import { inUnitWords } from '../quantityWords';
import type { Block } from '../view';

import { hotWaterWords } from './roundPlan';

/** One filled barrel, in the unit of the rig. */
export interface BarrelFilled {
  readonly volume: Litres;
  readonly unit: string;
}

/** What the rig's barrel holds at its fill line; undefined while the rig does not say. */
export const barrelFilled = ({ rig }: Garden): BarrelFilled | undefined => {
  const unit = findUnit(rig.barrel.unit);
  if (rig.barrel.value === undefined || unit === undefined) return undefined;
  const volume = workingVolume(litres(toCanonical(rig.barrel.value, unit)), litres(0), rig.fillLine ?? 1);
  return { volume, unit: unit.token };
};

const ABOVE = "above the label's greatest rate";

/** What a barrel takes of each product; no measure stands where it would pass the label. */
const oneBarrel = (mix: readonly MixProduct[], { volume }: BarrelFilled) => {
  const over = overLabel(mix);
  return productsFor(mix, volume).map(({ name, measure }, index) => ({
    name,
    ...(over.includes(mix[index]!) ? {} : { measure }),
  }));
};

/** The mix for one full barrel in one sentence. */
export const dryRunSentence = (mix: readonly MixProduct[], barrel: BarrelFilled): string => {
  const taken = oneBarrel(mix, barrel);
  const told = taken.flatMap(({ name, measure }) =>
    measure === undefined
      ? []
      : [measure.tooLittle ? `too little ${name} to measure` : `${measure.words} of ${name}`],
  );
  const over = taken.filter(({ measure }) => measure === undefined).map(({ name }) => name);
  const above = `${andList(over)} is ${ABOVE}`;
  if (told.length === 0) return above;
  const takes = `${inUnitWords(barrel.volume, barrel.unit)} takes ${andList(told)}`;
  return over.length === 0 ? takes : `${takes}; ${above}`;
};

/** The same as a table, with the hot water that the powders need. */
export const dryRunBlocks = (
  mix: readonly MixProduct[],
  barrel: BarrelFilled,
  hotWaterUnit: string,
): Block[] => {
  const water = premixWater(mix, barrel.volume);
  const powders = mix.some(({ form }) => form === 'powder');
  const unknown = mix
    .filter(({ form, solubility }) => form === 'powder' && solubility === undefined)
    .map(({ name }) => name);
  const hot =
    water !== undefined
      ? `Dissolve the powders in at least ${hotWaterWords(water, hotWaterUnit)} of hot water first.`
      : unknown.length > 0
        ? `How much hot water ${andList(unknown)} needs is not known: write how much dissolves in a litre under Products.`
        : 'How much hot water the powders need is not known: write what one millilitre weighs under Products.';
  return [
    {
      kind: 'table',
      table: {
        id: 'mix.dryRun',
        caption: `One barrel of ${inUnitWords(barrel.volume, barrel.unit)}`,
        columns: [{ label: 'Product' }, { label: 'Measure' }],
        rows: oneBarrel(mix, barrel).map(({ name, measure }) => [
          name,
          measure === undefined ? ABOVE : measureInWords(measure),
        ]),
      },
    },
    ...(powders ? [{ kind: 'text', tone: water === undefined ? 'quiet' : 'plain', text: hot } as const] : []),
  ];
};

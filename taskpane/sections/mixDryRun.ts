import { findUnit, litres, productFor, toCanonical, workingVolume } from '../../addin/core';
import type { Litres, MixProduct } from '../../addin/core';
import { premixWater } from '../../addin/core/round/mix';
import type { Garden, MixRow } from '../../addin/workbook/garden';
import {
  measureInWords,
  mixedProducts,
  withRemark,
  type MeasureInWords,
  type MixedProduct,
} from '../measured';
import { atLeastWords, inUnitWords, listed } from '../quantityWords';
import type { Block } from '../view';

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

const oneBarrel = (mixed: MixedProduct, { volume }: BarrelFilled): MeasureInWords =>
  measureInWords(mixed, productFor(mixed.product.rate, volume), volume);

/** The mix for one full barrel in one sentence. */
export const dryRunSentence = (
  mix: readonly MixProduct[],
  rows: readonly MixRow[],
  barrel: BarrelFilled,
): string => {
  const parts = mixedProducts(mix, rows).map(
    (one) => `${oneBarrel(one, barrel).words} of ${one.product.name}`,
  );
  return `${inUnitWords(barrel.volume, barrel.unit)} takes ${listed(parts)}`;
};

/** The same as a table, with the hot water that the powders need. */
export const dryRunBlocks = (
  mix: readonly MixProduct[],
  rows: readonly MixRow[],
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
      ? `Dissolve the powders in at least ${atLeastWords(water, hotWaterUnit)} of hot water first.`
      : unknown.length > 0
        ? `How much hot water ${listed(unknown)} needs is not known: write how much dissolves in a litre under Products.`
        : 'How much hot water the powders need is not known: write what one millilitre weighs under Products.';
  return [
    {
      kind: 'table',
      table: {
        id: 'mix.dryRun',
        caption: `One barrel of ${inUnitWords(barrel.volume, barrel.unit)}`,
        columns: [{ label: 'Product' }, { label: 'Measure' }],
        rows: mixedProducts(mix, rows).map((one) => [one.product.name, withRemark(oneBarrel(one, barrel))]),
      },
    },
    ...(powders ? [{ kind: 'text', tone: water === undefined ? 'quiet' : 'plain', text: hot } as const] : []),
  ];
};

import type { FunctionEntry } from './definition';
import { barrel, weight } from './entries/barrels';
import { fills, fillSizes } from './entries/fills';
import { timeToFill } from './entries/fillTime';
import { inUnits } from './entries/inUnits';
import { fingerprintOf, rowOf } from './entries/lists';
import { labelShare } from './entries/labelShare';
import { howMuch, measurable, measuredOf } from './entries/measurable';
import { kitchenMeasure } from './entries/measure';
import { dilute, stock, strengthOfMix } from './entries/mixing';
import { cost, unitCost } from './entries/money';
import { element, forPpm, nutrientPerPlant, ppm } from './entries/nutrients';
import { dose, need, seconds, serves } from './entries/plants';
import { premix } from './entries/premix';
import { howLong } from './entries/time';
import { flow, flowSpread, repeats } from './entries/timedBucket';

/** What a group of functions is for, in the order of the reference page. */
export const sections: readonly { readonly title: string; readonly functions: readonly FunctionEntry[] }[] = [
  {
    title: 'Measuring and mixing',
    functions: [
      inUnits,
      dilute,
      strengthOfMix,
      stock,
      kitchenMeasure,
      measurable,
      howMuch,
      measuredOf,
      labelShare,
      forPpm,
      ppm,
      element,
      premix,
    ],
  },
  { title: 'Barrels', functions: [barrel, weight, fills, fillSizes, timeToFill] },
  { title: 'Plants', functions: [flow, flowSpread, repeats, seconds, dose, need, serves] },
  { title: 'Food and money', functions: [nutrientPerPlant, unitCost, cost] },
  { title: 'Time and lists', functions: [howLong, rowOf, fingerprintOf] },
];

/** Every worksheet function, in the order of the reference page. */
export const catalogue: readonly FunctionEntry[] = sections.flatMap((section) => section.functions);

import { planRound } from '../addin/core';
import type { MixProduct, Refusal, RoundInput, RoundPlan } from '../addin/core';
import type { Garden, RoundOptions } from '../addin/workbook/garden';
import { roundInput } from '../addin/workbook/roundInput';
import { roundMix } from '../addin/workbook/roundMix';

/** A round as planned, or everything that has to be mended first. */
export type Planned =
  { readonly input: RoundInput; readonly plan: RoundPlan } | { readonly refusals: readonly Refusal[] };

const planNow = (garden: Garden, options: RoundOptions): Planned => {
  const input = roundInput(garden, options);
  if (Array.isArray(input)) return { refusals: input };
  const plan = planRound(input);
  return 'refused' in plan ? { refusals: [plan] } : { input, plan };
};

// The steps, the section and the actions ask for the same plan while one view is drawn.
const lastPlan = new WeakMap<Garden, { readonly key: string; readonly planned: Planned }>();

/** Plans a round of the garden. */
export const planOf = (garden: Garden, options: RoundOptions): Planned => {
  const key = JSON.stringify(options);
  const last = lastPlan.get(garden);
  if (last?.key === key) return last.planned;
  const planned = planNow(garden, options);
  lastPlan.set(garden, { key, planned });
  return planned;
};

/** The mix in the planner's units, or the first reason why it cannot be used. */
export const mixProductsOf = (garden: Garden): readonly MixProduct[] | Refusal => {
  const { mix, refusals } = roundMix(garden);
  return refusals[0] ?? mix;
};

import { planRound } from '../addin/core';
import type { MixProduct, Refusal, RoundInput, RoundPlan } from '../addin/core';
import type { Garden, RoundOptions } from '../addin/workbook/garden';
import { roundInput } from '../addin/workbook/roundInput';
import { roundMix } from '../addin/workbook/roundMix';

/** A round as planned, or everything that has to be mended first. */
export type Planned =
  { readonly input: RoundInput; readonly plan: RoundPlan } | { readonly refusals: readonly Refusal[] };

/** Plans a round of the garden. */
export const planOf = (garden: Garden, options: RoundOptions): Planned => {
  const input = roundInput(garden, options);
  if (Array.isArray(input)) return { refusals: input };
  const plan = planRound(input);
  return 'refused' in plan ? { refusals: [plan] } : { input, plan };
};

/** The mix in the planner's units, or the first reason why it cannot be used. */
export const mixProductsOf = (garden: Garden): readonly MixProduct[] | Refusal => {
  const { mix, refusals } = roundMix(garden);
  return refusals[0] ?? mix;
};

import { adoptionOf, overridesFrom } from './adoption';
import { adopting } from './chosenList';
import { planOf } from './planning';
import { missingOf, prepared } from './sections/missing';
import { askRound, roundAnswers } from './sections/round';
import type { Facts, PaneState } from './state';

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

type Round = Pick<Facts, 'planned' | 'options'>;

const NOTHING: Round = { planned: { refusals: [] } };

const roundOf = (state: PaneState, before: PaneState | undefined): Round => {
  const { garden } = state;
  if (garden === undefined) return NOTHING;
  const options = roundAnswers(askRound(state, garden));
  const { planned, options: known } = before?.facts ?? {};
  if (planned && before?.garden === garden && same(known, options)) return { planned, options };
  return { planned: planOf(garden, options), options };
};

const adoptedOf = (state: PaneState, before: PaneState | undefined): Facts['adopted'] => {
  const { list } = state;
  if (list === undefined || !adopting(state)) return undefined;
  const overrides = overridesFrom(state);
  // A long list's was worked out in steps, before the list came to the state.
  const known = [state.facts.adopted, before?.facts.adopted].find(
    (one) => one?.list === list && same(one.overrides, overrides),
  );
  return known ?? { list, overrides, adoption: adoptionOf(list, overrides) };
};

/** The state with what follows from it, worked out once; what the state before it says already is taken over. */
export const withFacts = (state: PaneState, before?: PaneState): PaneState => {
  const steps = prepared(state);
  const missing = missingOf(steps, state);
  const round: Round = missing.length > 0 ? NOTHING : roundOf(state, before);
  const adopted = adoptedOf(state, before);
  return { ...state, facts: { steps, missing, ...round, ...(adopted ? { adopted } : {}) } };
};

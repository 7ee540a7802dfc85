import type { BookAt } from '../bookAt';
import { step } from '../write/step';

import type { Aspect } from './aspect';

const UNLIKE: readonly string[] = ['Inconsistent', 'MixedCriteria'];

/** A rule as it was told, without the kinds of rule that it is not. */
const given = <T extends object>(told: T): T =>
  Object.fromEntries(Object.entries(told).filter(([, value]) => value !== null && value !== undefined)) as T;

/** Rules for what may be typed. */
export const listAspect: Aspect = {
  load: ({ dataValidation }) => {
    dataValidation.load('type,rule,ignoreBlanks,errorAlert,prompt');
  },
  putBack: ({ dataValidation }, area) => {
    const { type, rule, ignoreBlanks, errorAlert, prompt } = dataValidation;
    if (UNLIKE.includes(type)) return undefined;
    return step(6, (at: BookAt) => {
      const now = at.range(area).dataValidation;
      now.clear();
      if (type === 'None') return;
      now.rule = given(rule);
      now.ignoreBlanks = ignoreBlanks;
      now.errorAlert = given(errorAlert);
      now.prompt = given(prompt);
    });
  },
};

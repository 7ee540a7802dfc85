import { alike } from './alike';
import type { Shown } from './shownCard';

/** Collects what a card shows and the planner does not say. */
export const compare = () => {
  const found: string[] = [];
  return {
    found,
    number: (what: string, shown: Shown | undefined, wanted: number) => {
      if (!alike(shown, wanted)) found.push(`${what}: ${String(shown)} is shown, ${wanted} is so`);
    },
    text: (what: string, shown: Shown | undefined, wanted: string) => {
      if (String(shown ?? '') !== wanted)
        found.push(`${what}: “${String(shown)}” is shown, “${wanted}” is so`);
    },
    that: (what: string, holds: boolean) => {
      if (!holds) found.push(what);
    },
  };
};
export type Compare = ReturnType<typeof compare>;

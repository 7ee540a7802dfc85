import type { Refusal } from '../../addin/core';
import type { Problem } from '../../addin/workbook/garden';
import { plural } from '../quantityWords';
import type { Block } from '../view';

const SHOWN = 4;

/** What could not be read on the sheets of a section, the first few in full. */
export const problemBlocks = (problems: readonly Problem[], places: readonly Refusal['place'][]): Block[] => {
  const here = problems.filter(({ place }) => places.includes(place));
  const rest = here.length - SHOWN;
  return [
    ...here.slice(0, SHOWN).map(({ sentence }): Block => ({ kind: 'text', text: sentence, tone: 'warning' })),
    ...(rest > 0
      ? [{ kind: 'text', text: `And ${plural(rest, 'more cell')} like that.`, tone: 'quiet' } as const]
      : []),
  ];
};

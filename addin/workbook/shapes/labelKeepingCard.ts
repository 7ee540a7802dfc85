import { retireCard } from '../card/retireCard';
import type { Shape } from './shape';

/** A card blanks its measures by itself where a rate goes above its label; one that does not shows none. */
export const labelKeepingCard: Shape = {
  always: true,
  step: (snapshot) => {
    const edits = retireCard(snapshot);
    return edits.length === 0
      ? undefined
      : {
          title: 'Take the measures off the card',
          edits,
          says: ['Took the measures off the card of an earlier program, which does not keep to the label.'],
        };
  },
};

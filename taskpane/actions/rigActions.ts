import { keepRig } from '../../addin/workbook/useCases/keepRig';
import { did, refused, type Act, type Action } from '../action';
import { whyNoGarden } from '../offer';
import { inUnitWords } from '../quantityWords';
import { askRig, flowOf, rigFault, rigToKeep } from '../sections/rigFields';
import { askTimedBuckets } from '../sections/timedBucket';
import { settled, triedIn } from '../state';

import { bookOf } from './bookOf';

const keep: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askRig(state, garden);
  const buckets = askTimedBuckets(state, garden);
  const fault = rigFault(garden, asked, buckets);
  const folded = [
    asked.hoseLength,
    asked.hoseBore,
    asked.emptyWeight,
    asked.premixTime,
    asked.moveTime,
    asked.flow,
  ];
  if (fault !== undefined) {
    const open = folded.some((answer) => answer.fault !== undefined) ? ['rig.more'] : [];
    return refused(fault, triedIn('rig', ...open));
  }
  const flow = flowOf(garden, asked, buckets);
  const words = flow === undefined ? '' : `: ${inUnitWords(flow, garden.rig.flow.unit)} at the wand`;
  const change = keepRig(snapshot, rigToKeep(garden, asked, buckets), garden.settings.measures);
  return did(`Kept the rig${words}.`, change, settled(state, 'rig', 'rig.'));
};

export const rigActions: Readonly<Record<string, Action>> = {
  'rig.keep': { whyNot: whyNoGarden, act: keep },
};

import { flowAtWand } from '../../addin/workbook/roundRig';
import { keepRig } from '../../addin/workbook/useCases/keepRig';
import { did, refused, type Act, type Action } from '../action';
import { whyNoGarden } from '../offer';
import { inUnitWords } from '../quantityWords';
import { askRig, MORE, rigFault } from '../sections/rigFields';
import { settled, triedIn } from '../state';

import { bookOf } from './bookOf';

const keep: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askRig(state, garden);
  const fault = rigFault(asked);
  if (fault !== undefined)
    return refused(fault, triedIn('rig', ...(asked.asked.fault?.under === MORE ? ['rig.more'] : [])));
  const flow = flowAtWand(asked.kept);
  const words = flow === undefined ? '' : `: ${inUnitWords(flow, garden.rig.flow.unit)} at the wand`;
  const change = keepRig(snapshot, asked.kept, garden.settings.measures);
  return did(`Kept the rig${words}.`, change, settled(state, 'rig', 'rig.'));
};

export const rigActions: Readonly<Record<string, Action>> = {
  'rig.keep': { whyNot: whyNoGarden, act: keep },
};

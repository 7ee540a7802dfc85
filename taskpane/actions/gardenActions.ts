import { adoptList } from '../../addin/workbook/useCases/adoptList';
import { keepBeds, keepDoses } from '../../addin/workbook/useCases/keepDoses';
import { newGarden, restoreSheets } from '../../addin/workbook/useCases/newGarden';
import { did, refused, type Act, type Action } from '../action';
import { faultIn } from '../askFields';
import { AGAIN_FOLD, isSameList, readChosenList } from '../chosenList';
import { plural } from '../quantityWords';
import { whyNoGarden } from '../offer';
import { whyNotAdopt, whyNotBegin, whyNotRestore } from '../sections/garden';
import { askBeds, askDoses } from '../sections/gardenBeds';
import { settled, triedIn, type PaneState } from '../state';

import { bookOf } from './bookOf';

const adopted =
  (before: PaneState) =>
  (state: PaneState): PaneState => ({
    ...settled(before, 'garden', 'adopt.')(state),
    list: undefined,
    folds: { ...state.folds, [AGAIN_FOLD]: false },
  });

const adopt: Act = async (state, work) => {
  const { garden, snapshot } = bookOf(state);
  const list = state.list!;
  const now = await readChosenList(list.sheet, work);
  if (!isSameList(list, now))
    return refused(
      `“${list.sheet}” has changed since it was read. Look how it is read now, then press again.`,
      (later) => ({ ...later, list: now, listStale: false }),
    );
  const { inventory } = state.facts.adopted!.adoption;
  await work.step('Making the plant inventory', 0.6);
  const { change, added, already } = adoptList(snapshot, inventory, garden.settings.measures);
  const lines = plural(added, 'line');
  const before = already === 0 ? '' : `; ${plural(already, 'line')} stood there already`;
  return did(`Made the plant inventory, ${lines}${before}. ${inventory.outcome}`, change, adopted(state));
};

const begin: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  return did(
    'Made the sheets of an empty garden. Type your roses into Plants.',
    newGarden(snapshot, garden.settings.measures),
  );
};

const doses: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askDoses(state, garden).map(({ asked: row }) => row);
  const fault = faultIn(asked);
  if (fault !== undefined) return refused(fault, triedIn('garden'));
  const change = keepDoses(snapshot, { doses: asked.map(({ row }) => row) }, garden.settings.measures);
  return did('Kept the doses.', change, settled(state, 'garden', 'dose.'));
};

const beds: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askBeds(state, garden);
  const fault = faultIn(asked);
  if (fault !== undefined) return refused(fault, triedIn('garden', 'garden.beds'));
  const kept = asked.map(({ row }) => row);
  const change = keepBeds(snapshot, kept, garden.settings.measures);
  return did('Kept the walk and the stations.', change, settled(state, 'garden', 'bed.'));
};

const restore: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const { says = [], ...change } = restoreSheets(snapshot, garden.settings.measures);
  return did(says.join(' '), change);
};

export const gardenActions: Readonly<Record<string, Action>> = {
  'garden.adopt': { whyNot: whyNotAdopt, act: adopt },
  'garden.new': { whyNot: whyNotBegin, act: begin },
  'garden.restore': { whyNot: whyNotRestore, act: restore },
  'doses.keep': { whyNot: whyNoGarden, act: doses },
  'beds.keep': { whyNot: whyNoGarden, act: beds },
};

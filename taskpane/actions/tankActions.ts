import { nameKey } from '../../addin/core';
import { roundInput } from '../../addin/workbook/roundInput';
import { tankSheet } from '../../addin/workbook/tanks/tankSheet';
import { did, refused, type Act, type Action } from '../action';
import { askRound, roundAnswers } from '../sections/round';
import { askTanks, tanksFault, tanksToWrite } from '../sections/tankFields';
import { tanksFinding, whyNoTanks } from '../sections/tanks';
import { triedIn } from '../state';

import { bookOf } from './bookOf';

const write: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askTanks(state, garden);
  const fault = tanksFault(asked);
  if (fault !== undefined) return refused(fault, triedIn('tanks'));
  const options = roundAnswers(askRound(state, garden));
  const input = roundInput(garden, options);
  if (Array.isArray(input)) return refused(input[0]?.refused ?? '', triedIn('tanks'));
  const finding = tanksFinding(input, asked);
  const stations = [...new Set(input.groups.map(({ station }) => station))];
  const own = new Map(garden.beds.map(({ bed, station }) => [nameKey(bed), station]));
  const without = new Map(
    input.groups.filter(({ bed }) => own.get(nameKey(bed)) === '').map(({ bed, station }) => [bed, station]),
  );
  const wanted = {
    ...tanksToWrite(garden, asked),
    stations: stations.length > 1 ? stations : [''],
    inherited: stations.length > 1 ? [...without].map(([bed, station]) => ({ bed, station })) : [],
    style: input.style,
    finding,
  };
  const change = tankSheet(snapshot, wanted, garden.settings.measures);
  return did(`Wrote the barrels side by side: ${finding}`, change);
};

export const tankActions: Readonly<Record<string, Action>> = {
  'tanks.write': { whyNot: whyNoTanks, act: write },
};

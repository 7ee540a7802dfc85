import type { Pane } from '../../taskpane/pane';

import { drive } from './paneDriver';

/** Somebody at the pane of a workbook, in whichever host: finds everything by the words that stand there. */
export interface Grower {
  /** Goes to a stop of the way by its name. */
  open(stop: string): Promise<void>;
  unfold(label: string): Promise<void>;
  /** Types into a field, or chooses from it by the value of the choice. */
  fill(label: string, text: string): Promise<void>;
  /** Presses a button; resolves to what the pane then says, and throws it where it is a warning. */
  press(button: string): Promise<string>;
}

/** At a pane that runs here. */
export const growerAt = (pane: Pane): Grower => {
  const user = drive(pane);
  return {
    open: async (stop) => {
      const step = pane.view().steps.find(({ label }) => label === stop);
      if (step === undefined) throw new Error(`The way has no stop “${stop}”.`);
      await user.open(step.id);
    },
    unfold: user.unfold,
    fill: user.type,
    press: async (button) => {
      await pane.dispatch({ kind: 'press', action: 'dismiss' });
      await user.press(button);
      const { message } = pane.view();
      if (message?.tone !== 'good') throw new Error(`“${button}”: ${message?.text ?? 'nothing was said'}`);
      return message.text;
    },
  };
};

/** Fills fields one after the other. */
export const fillAll = async (grower: Grower, fields: Readonly<Record<string, string>>): Promise<void> => {
  for (const [label, text] of Object.entries(fields)) await grower.fill(label, text);
};

/** Time buckets, say what the barrel holds, keep the rig. */
export const keepTheRig = async (grower: Grower): Promise<void> => {
  await grower.open('Rig');
  await fillAll(grower, { 'The barrel holds': '60', 'Time 1': '46.1', 'Time 2': '45.8', 'Time 3': '46.6' });
  await grower.press('Keep this rig');
};

/** A powder and a liquid as their labels say, both at the label's rate in the mix. */
export const keepTheMix = async (grower: Grower): Promise<void> => {
  await grower.open('Mix');
  await fillAll(grower, {
    Name: 'Soluble powder 20-20-20',
    "Label's greatest rate": '1',
    'Nitrogen, N': '20',
    'Phosphate, P2O5': '20',
    'Potash, K2O': '20',
    'One millilitre weighs': '1.1',
    'Dissolves in your hot water': '400',
    'A pack holds': '25',
    'A pack costs': '64',
  });
  await grower.press('Keep this product');
  await grower.unfold('Products: change one or add one');
  await fillAll(grower, {
    Name: 'Fish and kelp liquid',
    'It is a': 'liquid',
    "Label's greatest rate": '2',
    'Nitrogen, N': '2',
    'One millilitre weighs': '1.15',
  });
  await grower.press('Keep this product');
  await fillAll(grower, {
    'This mix is called': 'Bloom feed',
    'Product 1': 'Soluble powder 20-20-20',
    'Rate of product 1': '1',
    'Product 2': 'Fish and kelp liquid',
    'Rate of product 2': '2',
  });
  await grower.press('Keep this mix');
};

/**
 * @param day yyyy-mm-dd
 * @param more further fields of the round
 */
export const makeTheCard = async (
  grower: Grower,
  day: string,
  more: Readonly<Record<string, string>> = {},
): Promise<void> => {
  await grower.open('Round');
  await fillAll(grower, { Day: day, Start: '07:00', ...more });
  await grower.press('Make the card');
};

/** @param leftOver in the barrel's unit */
export const writeTheLog = async (grower: Grower, leftOver: string, notes: string): Promise<void> => {
  await grower.open('Log');
  await fillAll(grower, { 'Left over': leftOver, Notes: notes });
  await grower.press('Write the log line');
};

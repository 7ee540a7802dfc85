import { setTimeout as pause } from 'node:timers/promises';
import { expect } from 'vitest';

import names from '../../../../addin/hosts/calc/names.json';
import type { Sidebar } from './sidebar';

/** A control as the office tells it to screen readers. */
export interface Told {
  readonly kind: string;
  readonly name: string;
  readonly value: string | null;
}

interface Focused extends Told {
  /** Its place among the controls. */
  readonly at: number;
}

/** A user with no mouse, who hears what the keyboard is on. */
export interface Keyboard {
  /** Presses keys one after the other, as xdotool names them. */
  press(...keys: readonly string[]): Promise<void>;
  /** Types letter by letter. */
  type(text: string): Promise<void>;
  /** Every control of the sidebar, from top to bottom. */
  told(): Promise<readonly Told[]>;
  /** The control that the keyboard is on; undefined where it is not in the sidebar. */
  focused(): Promise<Told | undefined>;
  /** What the field, list or tick box of a name holds. */
  value(name: string): Promise<string | null | undefined>;
  /** Waits until the keyboard is on the control of a name. */
  expectOn(name: string): Promise<void>;
  /** Goes to the control of a name with the Tab key; the keyboard may not leave the sidebar on the way. */
  goTo(name: string): Promise<void>;
  /** Goes to a field and writes over what it holds. */
  fill(name: string, text: string): Promise<void>;
}

/** Longer than the office takes to hand a key to a control, ms. */
const KEY = 120;

/** More controls than any section has. */
const MOST = 90;

export const keyboardOf = ({
  display,
  office,
  doc,
}: Pick<Sidebar, 'display' | 'office' | 'doc'>): Keyboard => {
  const panel = { doc, deck: names.deck, panel: names.panel };
  const told = () => office.ask<Told[]>({ do: 'read_aloud', ...panel });
  const focused = async (near = 0): Promise<Focused | undefined> =>
    (await office.ask<Focused | null>({ do: 'focused', near, ...panel })) ?? undefined;
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) {
      display.act('key', key);
      await pause(KEY);
    }
  };
  const type = async (text: string): Promise<void> => {
    display.act('type', '--delay', '30', text);
    await pause(KEY);
  };
  /** What the keyboard is on after the Tab key. */
  const tab = async (from: Focused): Promise<Focused | undefined> => {
    display.act('key', 'Tab');
    for (let tries = 0; tries < 40; tries += 1) {
      const on = await focused(from.at);
      if (on?.at !== from.at) return on;
      await pause(25);
    }
    throw new Error(`The Tab key does not lead on from “${from.name}”.`);
  };
  const goTo = async (name: string): Promise<void> => {
    // Redrawing gives the controls other places: all that was pressed and typed is drawn first. Letters that were typed
    // while one was on its way follow it.
    for (let times = 0; times < 2; times += 1) await office.ask({ do: 'job', doc, request: {} });
    const passed: string[] = [];
    let on = await focused();
    while (on !== undefined && on.name !== name && passed.length < MOST) {
      passed.push(on.name);
      on = await tab(on);
    }
    expect(on?.name, `after ${passed.join(', ')}`).toBe(name);
  };
  return {
    press,
    type,
    told,
    focused,
    value: async (name) => (await told()).find((one) => one.name === name && one.value !== null)?.value,
    expectOn: (name) => expect.poll(async () => (await focused())?.name, { timeout: 8_000 }).toBe(name),
    goTo,
    fill: async (name, text) => {
      await goTo(name);
      await press('ctrl+a');
      await type(text);
    },
  };
};

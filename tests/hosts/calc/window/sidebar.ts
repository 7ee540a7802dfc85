import { setTimeout as pause } from 'node:timers/promises';
import { expect } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { openDisplay, type Display } from './display';
import { openList } from '../mainJob';
import { startOffice, type Office } from '../office';

/** A control of the sidebar as it is drawn now; lengths in pixels. */
export interface Control {
  readonly text: string;
  readonly field: boolean;
  /** Null where the office's own is taken. */
  readonly colour: number | null;
  /** What is chosen in a list; null where it is no list. */
  readonly chosen: string | null;
  readonly area: readonly [x: number, y: number, width: number, height: number];
}

export interface MeasuredControl extends Control {
  /** Less than this cuts its words, or breaks one. */
  readonly least: readonly [width: number, height: number];
}

export interface Panel<One = Control> {
  readonly width: number;
  readonly height: number;
  /** The colour under the controls. */
  readonly ground: number;
  /** From top to bottom. */
  readonly controls: readonly One[];
}

/** The grower's list in a real window, and the sidebar of it. */
export interface Sidebar {
  readonly display: Display;
  readonly office: Office;
  readonly doc: string;
  /** A command of the menu. */
  command(name: string): Promise<unknown>;
  /** What the user does in the pane, until all of it is done. */
  happens(event: PaneEvent): Promise<unknown>;
  told(): Promise<Panel>;
  /** Takes longer. */
  measured(): Promise<Panel<MeasuredControl>>;
  controls(): Promise<readonly Control[]>;
  /** Sets the keyboard on a button, or on the field after a label. */
  focus(label: string): Promise<unknown>;
  /** What stands in the field after a label. */
  fieldText(label: string): Promise<string | undefined>;
  /** All words of the panel. */
  shown(): Promise<string>;
  /** Waits for words in the panel; tells all of its words where they do not come. */
  expectShown(words: string): Promise<void>;
  /** Waits until all that was pressed and typed is done and drawn. */
  settled(): Promise<void>;
  picture(name: string): Promise<void>;
  end(): Promise<void>;
}

/** Opens the grower's list in a window of its own screen; the sidebar is opened by the command `show`. */
export const openSidebar = async (toolkit: string, height = 900): Promise<Sidebar> => {
  const display = await openDisplay(1_280, height);
  const office = await startOffice({ window: true, env: { ...display.env, SAL_USE_VCLPLUGIN: toolkit } });
  const doc = await openList(office);
  await display.expectKeysTo(/LibreOffice Calc/);
  await office.ask({ do: 'window_size', doc, width: 1_270, height: height - 30 });
  const told = () => office.ask<Panel>({ do: 'job', doc, request: { panel: true } });
  const controls = async () => (await told()).controls;
  // Letters that were typed while one was on its way follow it.
  const settled = async (): Promise<void> => {
    for (let times = 0; times < 2; times += 1) await office.ask({ do: 'job', doc, request: {} });
  };
  const shown = async (): Promise<string> => (await controls()).map(({ text }) => text).join('\n');
  return {
    display,
    office,
    doc,
    command: (name) => office.ask({ do: 'dispatch', doc, command: `vnd.wandcount:${name}` }),
    happens: (event) => office.ask({ do: 'job', doc, request: { event } }),
    told,
    measured: () => office.ask({ do: 'job', doc, request: { panel: 'measured' } }),
    controls,
    focus: (label) => office.ask({ do: 'job', doc, request: { focus: label } }),
    fieldText: async (label) => {
      const all = await controls();
      const after = all.slice(all.findIndex(({ text }) => text === label) + 1);
      return after.find(({ field }) => field)?.text;
    },
    shown,
    expectShown: async (words) => {
      const last = { said: '' };
      for (let tries = 0; tries < 40; tries += 1) {
        // A panel that is being opened is not there yet.
        last.said = await shown().catch((reason: unknown) => String(reason));
        if (last.said.includes(words)) return;
        await pause(150);
      }
      expect(last.said).toContain(words);
    },
    settled,
    picture: async (name) => {
      await settled();
      display.picture(`${toolkit}-${name}`);
    },
    end: async () => {
      await office.end();
      display.end();
    },
  };
};

/** The log page with one line has so many; fewer are no page. */
const FEWEST = 4;

/** Controls that the user sees. */
export const seen = <One extends Control>({ controls }: Panel<One>): readonly One[] =>
  controls.filter(({ area }) => area[2] > 0 && area[3] > 0);

/** Controls that the user sees must not lie over one another, nor stick out to the side. */
export const expectOrder = (panel: Panel): void => {
  const { width } = panel;
  const all = seen(panel);
  expect(all.length).toBeGreaterThan(FEWEST);
  for (const { text, area } of all) expect(area[0] + area[2], text).toBeLessThanOrEqual(width);
  for (const [index, a] of all.entries())
    for (const b of all.slice(index + 1)) {
      const beside = a.area[0] + a.area[2] <= b.area[0] + 1 || b.area[0] + b.area[2] <= a.area[0] + 1;
      const apart = a.area[1] + a.area[3] <= b.area[1] + 1 || b.area[1] + b.area[3] <= a.area[1] + 1;
      expect(beside || apart, `“${a.text}” and “${b.text}”`).toBe(true);
    }
};

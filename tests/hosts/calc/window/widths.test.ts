import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { MAIN_JOB } from '../mainJob';
import { WINDOWS } from './display';
import {
  expectOrder,
  openSidebar,
  seen,
  type Control,
  type MeasuredControl,
  type Panel,
  type Sidebar,
} from './sidebar';

/*
 * Every section in the narrowest and in the widest sidebar. In gtk3 only: with gen the splitter's place changes, and
 * dragging it does not work every time.
 */

/** A screen on which most sections are seen whole. */
const HEIGHT = 2_600;
const SECONDS = 300;

let sidebar: Sidebar;
beforeAll(async () => {
  sidebar = await openSidebar('gtk3', HEIGHT);
  await sidebar.command('show');
  await sidebar.expectShown('350 roses in 14 beds');
});
afterAll(() => sidebar?.end());

/** Where the splitter stands beside a panel of the usual width, and where it is dragged to; pixels of the screen. */
const USUAL = { width: 329, x: 896 };
const WIDTHS = {
  narrow: { x: 1_146, least: 180, most: 210 },
  wide: { x: 576, least: 450, most: 640 },
} as const;
type Width = keyof typeof WIDTHS;
const ROW = '700';

/** Drags the splitter as a hand does, and looks that the panel followed. */
const dragTo = async (wanted: Width): Promise<void> => {
  const { x, least, most } = WIDTHS[wanted];
  const from = USUAL.x - ((await sidebar.told()).width - USUAL.width);
  const { act } = sidebar.display;
  act('mousemove', String(from), ROW);
  act('mousedown', '1');
  const steps = 8;
  for (let step = 1; step <= steps; step += 1) {
    act('mousemove', String(Math.round(from + ((x - from) * step) / steps)), ROW);
    await pause(60);
  }
  act('mouseup', '1');
  // Away from what it would tell about.
  act('mousemove', '300', ROW);
  await vi.waitFor(async () => {
    const { width } = await sidebar.told();
    expect(width).toBeGreaterThanOrEqual(least);
    expect(width).toBeLessThanOrEqual(most);
  }, WINDOWS);
};

/** True where the width may be less: a formula has no place to be broken at, a list may say its choice below. */
const mayBeNarrow = ({ text, chosen }: Control, below: Control | undefined): boolean =>
  text.startsWith('=') || (chosen !== null && below?.text === chosen);

/** No control may cut its words, nor break one. */
const expectWhole = (panel: Panel<MeasuredControl>): void => {
  const all = seen(panel);
  for (const [index, control] of all.entries()) {
    const { text, chosen, area, least } = control;
    const told = `“${chosen ?? text}” at ${area.join(', ')}`;
    if (!mayBeNarrow(control, all[index + 1])) expect.soft(area[2], told).toBeGreaterThanOrEqual(least[0]);
    expect.soft(area[3], told).toBeGreaterThanOrEqual(least[1]);
  }
};

const open = (section: string): PaneEvent => ({ kind: 'open', section });
const press = (action: string): PaneEvent => ({ kind: 'press', action });
const unfold = (block: string): PaneEvent => ({ kind: 'fold', block, open: true });
const type = (field: string, value: string): PaneEvent => ({ kind: 'type', field, value });

type Pages = Readonly<Record<string, readonly PaneEvent[]>>;

const BEFORE: Pages = {
  'first-list': [
    open('garden'),
    ...['adopt.told', 'adopt.unread', 'adopt.words', 'garden.empty'].map(unfold),
  ],
  'first-rig': [open('rig')],
};

const AFTER: Pages = {
  written: [open('tanks'), unfold('cell')],
  tanks: [type('tanks.mostFills', '10'), type('tanks.mostWeight', '600'), type('tanks.longest', '240')],
  garden: [open('garden'), unfold('garden.beds')],
  'rig-faults': [open('rig'), unfold('rig.more'), type('rig.barrel', 'sixty')],
  mix: [type('rig.barrel', '60'), open('mix'), unfold('mix.products')],
  round: [open('round'), unfold('round.food')],
  'round-over-label': [
    open('mix'),
    type('mix.rate."soluble powder 20-20-20"', '2'),
    press('mix.keep'),
    open('round'),
  ],
  log: [press('undo'), open('log')],
};

/** Looks at pages one after the other. */
const overlayAt = async (pages: Pages, width: Width): Promise<void> => {
  for (const [name, events] of Object.entries(pages)) {
    for (const event of events) await sidebar.happens(event);
    await sidebar.picture(`${width}-${name}`);
    const panel = await sidebar.measured();
    expectOrder(panel);
    expectWhole(panel);
  }
};

const lookAtLog = async (width: Width): Promise<void> => {
  await sidebar.command('showLog');
  await sidebar.expectShown('What the extension did');
  await overlayAt({ 'log-page': [] }, width);
  await sidebar.command('back');
};

/** A cell of the card is selected, so that its working can be told. */
const selectCount = async (): Promise<void> => {
  const place = { doc: sidebar.doc, sheet: 'Round card' };
  const cells = await sidebar.office.ask<string>({ do: 'formula_cell', ...place, holding: 'FEED.' });
  await sidebar.office.ask({ do: 'select', ...place, cells });
  await sidebar.expectShown(`Round card, ${cells}`);
};

test.each<Width>(['narrow', 'wide'])(
  'in the %s sidebar nothing is cut or covered before a list is adopted',
  async (width) => {
    await dragTo(width);
    await overlayAt(BEFORE, width);
  },
  SECONDS * 1_000,
);

describe.each<Width>(['wide', 'narrow'])('in the %s sidebar', (width) => {
  beforeAll(async () => {
    if (width === 'wide') for (const event of MAIN_JOB) await sidebar.happens(event);
    await selectCount();
    await dragTo(width);
  }, SECONDS * 1_000);

  test('nothing is cut or covered in any section', () => overlayAt(AFTER, width), SECONDS * 1_000);

  test('nothing is cut or covered in the log of the extension', () => lookAtLog(width), SECONDS * 1_000);
});

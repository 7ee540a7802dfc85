import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { openDisplay, type Display } from './display';
import { MAIN_JOB, openList } from '../mainJob';
import { startOffice, type Office } from '../office';

interface Panel {
  readonly ground: number;
  readonly controls: readonly { readonly text: string; readonly colour: number | null }[];
}

let display: Display;
let office: Office;
let doc: string;
const ask = <Answer>(request: object) => office.ask<Answer>({ do: 'job', doc, request });
const happens = (event: PaneEvent) => ask({ event });

beforeAll(async () => {
  display = await openDisplay();
  office = await startOffice({
    window: true,
    env: { ...display.env, SAL_USE_VCLPLUGIN: 'gtk3', GTK_THEME: 'Adwaita:dark' },
  });
  doc = await openList(office);
  await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  await office.ask({ do: 'dispatch', doc, command: 'vnd.wandcount:show' });
});
afterAll(async () => {
  await office?.end();
  display?.end();
});

/** Relative luminance of a colour, as the Web Content Accessibility Guidelines 2.2 (W3C, 2023) define it. */
const luminance = (colour: number): number => {
  const [red, green, blue] = [16, 8, 0].map((shift) => {
    const share = ((colour >> shift) & 255) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

const contrast = (a: number, b: number): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

test('in a dark window every word of a colour of its own stands out from the ground', async () => {
  const seen = new Set<number>();
  for (const event of [{ kind: 'open', section: 'garden' } as const, ...MAIN_JOB]) {
    await happens(event);
    if (event.kind !== 'open') continue;
    await pause(400);
    display.picture(`gtk3-dark-${event.section}`);
    const { ground, controls } = await ask<Panel>({ panel: true });
    expect(luminance(ground)).toBeLessThan(0.1);
    for (const { text, colour } of controls) {
      if (colour === null) continue;
      seen.add(colour);
      // The least for text, section 1.4.3 of the same guidelines.
      expect(contrast(colour, ground), text).toBeGreaterThanOrEqual(4.5);
    }
  }
  expect(seen.size).toBeGreaterThan(1);
});

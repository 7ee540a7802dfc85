import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { luminance } from '../../../contrast';
import { expectReadable, type Coloured } from './readable';
import { openDisplay, type Display } from './display';
import { MAIN_JOB, openList } from '../mainJob';
import { startOffice, type Office } from '../office';

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

test('in a dark window every word of a colour of its own stands out from the ground', async () => {
  const seen = new Set<number>();
  for (const event of [{ kind: 'open', section: 'garden' } as const, ...MAIN_JOB]) {
    await happens(event);
    if (event.kind !== 'open') continue;
    await ask({});
    display.picture(`gtk3-dark-${event.section}`);
    const panel = await ask<Coloured>({ panel: true });
    expect(luminance(panel.ground)).toBeLessThan(0.1);
    for (const colour of expectReadable(panel)) seen.add(colour);
  }
  expect(seen.size).toBeGreaterThan(1);
});

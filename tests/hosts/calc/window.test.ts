import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { PaneEvent } from '../../../taskpane/view';
import { openDisplay, type Display } from './display';
import { MAIN_JOB, openList } from './mainJob';
import { startOffice, type Office } from './office';

interface Control {
  readonly text: string;
  readonly field: boolean;
  readonly area: readonly [x: number, y: number, width: number, height: number];
}

interface Panel {
  readonly width: number;
  readonly height: number;
  readonly controls: readonly Control[];
}

describe.each(['gtk3', 'gen'])('the sidebar in a real window, drawn with %s', (toolkit) => {
  let display: Display;
  let office: Office;
  let doc: string;

  const command = (name: string) => office.ask({ do: 'dispatch', doc, command: `vnd.wandcount:${name}` });
  const happens = (event: PaneEvent) => office.ask({ do: 'job', doc, request: { event } });
  const told = () => office.ask<Panel>({ do: 'job', doc, request: { panel: true } });
  const controls = async () => (await told()).controls;
  const focus = (label: string) => office.ask({ do: 'job', doc, request: { focus: label } });
  /** What stands in the field after a label. */
  const fieldText = async (label: string): Promise<string | undefined> => {
    const all = await controls();
    const after = all.slice(all.findIndex(({ text }) => text === label) + 1);
    return after.find(({ field }) => field)?.text;
  };
  const shown = async (): Promise<string> => (await controls()).map(({ text }) => text).join('\n');
  const picture = async (name: string): Promise<void> => {
    await pause(400);
    display.picture(`${toolkit}-${name}`);
  };
  /** Waits for words in the panel; tells all of its words where they do not come. */
  const expectShown = async (words: string): Promise<void> => {
    const last = { said: '' };
    for (let tries = 0; tries < 40; tries += 1) {
      // A panel that is being opened is not there yet.
      last.said = await shown().catch((reason: unknown) => String(reason));
      if (last.said.includes(words)) return;
      await pause(150);
    }
    expect(last.said).toContain(words);
  };

  beforeAll(async () => {
    display = await openDisplay();
    office = await startOffice({ window: true, env: { ...display.env, SAL_USE_VCLPLUGIN: toolkit } });
    doc = await openList(office);
    await pause(1_000);
    await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  });
  afterAll(async () => {
    await office?.end();
    display?.end();
  });

  test('opens from the menu and reads the list', async () => {
    await command('show');
    await expectShown('350 roses in 14 beds');
    await picture('garden');
  });

  /** Controls that the user sees must not lie over one another, nor stick out to the side. */
  const expectOrder = async (): Promise<void> => {
    const all = (await controls()).filter(({ area }) => area[2] > 0 && area[3] > 0);
    expect(all.length).toBeGreaterThan(8);
    const { width } = await told();
    for (const { text, area } of all) expect(area[0] + area[2], text).toBeLessThanOrEqual(width);
    for (const [index, a] of all.entries())
      for (const b of all.slice(index + 1)) {
        const beside = a.area[0] + a.area[2] <= b.area[0] + 1 || b.area[0] + b.area[2] <= a.area[0] + 1;
        const apart = a.area[1] + a.area[3] <= b.area[1] + 1 || b.area[1] + b.area[3] <= a.area[1] + 1;
        expect(beside || apart, `“${a.text}” and “${b.text}”`).toBe(true);
      }
  };

  test('lays its controls beside and under each other, none over another', expectOrder);

  test('does the whole job, and shows each section', async () => {
    for (const event of MAIN_JOB) {
      await happens(event);
      if (event.kind === 'open' || (event.kind === 'press' && event.action === 'garden.adopt')) {
        await picture(event.kind === 'open' ? event.section : 'adopted');
        await expectOrder();
      }
    }
    await picture('written');
    expect(await shown()).toContain('Wrote the barrels side by side');
  });

  test('takes its last step back with one press', async () => {
    expect(await office.ask<string[]>({ do: 'sheet_names', doc })).toContain('Tank what-if');
    await happens({ kind: 'press', action: 'undo' });
    expect(await office.ask<string[]>({ do: 'sheet_names', doc })).not.toContain('Tank what-if');
  });

  test('takes what is typed into a field, letter by letter, and keeps it', async () => {
    await command('open.rig');
    await expectShown('The bucket holds');
    await focus('The bucket holds');
    await pause(300);
    display.act('key', 'ctrl+a');
    display.act('type', '--delay', '40', '2.75');
    await pause(900);
    const field = await fieldText('The bucket holds');
    expect(field).toBe('2.75');
    expect(await shown()).toMatch(/3\.59 gal\/min/);
    await picture('typed');
  });

  test('goes from field to field with the Tab key, and scrolls there', async () => {
    await focus('The bucket holds');
    const before = (await controls())[0]!.area[1];
    for (let step = 0; step < 16; step += 1) display.act('key', 'Tab');
    await pause(600);
    expect((await controls())[0]!.area[1]).toBeLessThan(before);
    await picture('tabbed');
  });

  test('is legible in a narrow window, where it scrolls', async () => {
    await office.ask({ do: 'window_size', doc, width: 800, height: 600 });
    await pause(600);
    await expectOrder();
    await picture('narrow');
    await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  });

  test('shows the log and comes back', async () => {
    await command('showLog');
    await expectShown('What the extension did');
    expect(await shown()).toMatch(/engine \d+ ready/);
    await command('back');
    await expectShown('The bucket holds');
  });

  test('explains the selected cell', async () => {
    const card = await office.ask<string>({ do: 'formula_cell', doc, sheet: 'Round card', holding: 'FEED.' });
    await office.ask({ do: 'select', doc, sheet: 'Round card', cells: card });
    await expectShown(`Round card, ${card}`);
    await happens({ kind: 'fold', block: 'cell', open: true });
    expect(await shown()).toContain('Source:');
    await picture('this-cell');
  });
});

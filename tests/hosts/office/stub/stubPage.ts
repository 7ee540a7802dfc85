import { openGrid } from '../../../../addin/hosts/workbench/grid/openGrid';
import { gridWorkbook } from '../../../../addin/hosts/workbench/gridWorkbook';
import type { Area, Change } from '../../../../addin/workbook/change';
import type { ApiMembers } from '../fake/apiMembers';
import { fakeSettings } from '../fake/documentSettings';
import { fakeExcel } from '../fake/fakeExcel';

import { gridHostBook } from './gridHostBook';
import { programFunctions } from './programFunctions';

/**
 * A page that does what a spreadsheet program does around an add-in: a grid, and beside it the add-in's own page in a
 * frame, whose batches are carried out on the grid. Not part of what is delivered.
 */
const column = (style: string): HTMLElement => {
  const element = document.createElement('div');
  element.style.cssText = `position: fixed; inset-block: 0; ${style}`;
  document.body.append(element);
  return element;
};

document.body.replaceChildren();
const grid = openGrid(column('left: 0; right: 380px'), { dark: false });
const frame = document.createElement('iframe');
frame.style.cssText = 'position: fixed; inset-block: 0; right: 0; width: 380px; height: 100%; border: 0';
frame.title = 'Pane';

const workbook = gridWorkbook(grid);
const answer = async (path: string): Promise<ApiMembers> => (await (await fetch(path)).json()) as ApiMembers;

const start = async (): Promise<void> => {
  const members = await answer('members.json');
  const fake = fakeExcel(gridHostBook(grid, workbook), { members, version: '1.20' });
  const functions = programFunctions(grid);
  const associated = new Map<string, unknown>();
  const said: string[] = [];
  const startsWith: string[] = [];
  const kept = fakeSettings();
  const program = {
    Excel: { run: fake.run },
    CustomFunctions: functions.runtime,
    Office: {
      HostType: { Excel: 'Excel' },
      AsyncResultStatus: { Failed: 'failed' },
      StartupBehavior: { load: 'Load' },
      onReady: async () => ({ host: 'Excel', platform: 'OfficeOnline' }),
      actions: { associate: (id: string, action: unknown) => void associated.set(id, action) },
      addin: { setStartupBehavior: async (behaviour: string) => void startsWith.push(behaviour) },
      context: {
        contentLanguage: 'en-US',
        document: { settings: kept.open() },
        officeTheme: { bodyBackgroundColor: '#FFFFFF' },
        requirements: { isSetSupported: (_set: string, version: string) => fake.supports(version) },
        ui: {
          displayDialogAsync: (address: string) =>
            void said.push(decodeURIComponent(new URL(address).hash.slice(1))),
        },
      },
    },
  };
  Object.assign(window, {
    program,
    stub: {
      outline: () => workbook.outline(),
      read: (areas: Area[]) => workbook.read(areas),
      apply: (change: Change) => workbook.apply(change),
      traffic: () => ({ ...fake.traffic }),
      used: () => [...fake.used],
      calls: () => functions.calls(),
      said: () => said,
      startsWith: () => startsWith,
      keptSettings: () => kept.saved,
      theme: (colour: string) => {
        program.Office.context.officeTheme.bodyBackgroundColor = colour;
        frame.contentWindow?.dispatchEvent(new Event('focus'));
      },
      press: (id: string) =>
        new Promise<void>((resolve) => {
          const action = associated.get(id) as (event: { completed(): void }) => void;
          action({ completed: resolve });
        }),
      openPane: () => {
        frame.src = 'addin/pane.html';
        document.body.append(frame);
      },
      reopenPane: () => {
        program.Office.context.document.settings = kept.open();
        frame.contentWindow?.location.reload();
      },
    },
  });
};

start().catch((reason: unknown) => console.error(reason));

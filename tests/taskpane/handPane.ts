import type { Pane } from '../../taskpane/pane';
import type { PaneEvent, View } from '../../taskpane/view';

/** A pane whose view is set by hand and that remembers what it was told. */
export const handPane = (first: View) => {
  let view = first;
  const told: PaneEvent[] = [];
  const listeners = new Set<() => void>();
  const show = (next: View): void => {
    view = next;
    for (const listener of listeners) listener();
  };
  const pane: Pane = {
    view: () => view,
    dispatch: (event) => {
      told.push(event);
      return Promise.resolve();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => undefined,
  };
  return { pane, told, show };
};

/** A small section that holds one of everything. */
export const rigView: View = {
  steps: [
    { id: 'garden', label: 'Garden', state: { kind: 'ready', says: '350 roses' }, current: false },
    { id: 'rig', label: 'Rig', state: { kind: 'attention', why: 'no timed bucket yet' }, current: true },
    { id: 'mix', label: 'Mix', state: { kind: 'empty' }, current: false },
    { id: 'tanks', label: 'Tank what-if', state: { kind: 'empty' }, current: false, beside: true },
  ],
  next: { section: 'mix', says: 'Say what goes into the barrel.' },
  section: {
    id: 'rig',
    title: 'Rig',
    answer: '2.6 gal a minute at the wand',
    blocks: [
      { kind: 'heading', text: 'Timed bucket' },
      {
        kind: 'fields',
        legend: 'The barrel',
        fields: [
          {
            kind: 'number',
            id: 'rig.capacity',
            label: 'Barrel holds',
            value: '60',
            help: 'To the brim.',
            unit: { id: 'rig.capacity.unit', value: 'gal', choices: ['gal', 'L'] },
          },
          {
            kind: 'number',
            id: 'rig.heel',
            label: 'Heel',
            value: 'two',
            unit: 'gal',
            error: 'Heel is "two"; it takes a number of gallons.',
          },
          { kind: 'toggle', id: 'rig.open', label: 'The wand stays open between plants', value: 'yes' },
          {
            kind: 'choice',
            id: 'rig.style',
            label: 'Fills',
            value: 'full',
            choices: [
              { value: 'full', label: 'Full and a short last' },
              { value: 'equal', label: 'Equal' },
            ],
          },
        ],
      },
      {
        kind: 'actions',
        actions: [
          { id: 'rig.keep', label: 'Keep this rig', primary: true },
          { id: 'rig.print', label: 'Print', disabled: true, why: 'Make the card first.' },
        ],
      },
      {
        kind: 'table',
        table: {
          id: 'fills',
          caption: 'Fills',
          columns: [{ label: 'Fill' }, { label: 'Make up', numeric: true }, { label: 'Seen' }],
          rows: [
            ['1', '60 gal', { kind: 'text', id: 'seen.1', label: 'Seen at fill 1', value: '' }],
            ['2', '22 gal', 'no'],
          ],
          marked: [{ row: 1, word: 'short one' }],
        },
      },
      {
        kind: 'chart',
        chart: {
          id: 'time',
          type: 'bar',
          title: 'Round time',
          finding: 'A 60 gal barrel takes 1 h 35 min.',
          labels: ['30 gal', '60 gal'],
          series: [{ name: 'Round', unit: 'min', values: [120, 95] }],
        },
      },
      { kind: 'cautions', items: ['Plug the pump into a ground-fault outlet; the manual says how.'] },
      {
        kind: 'more',
        id: 'cell',
        label: 'This cell',
        open: false,
        blocks: [{ kind: 'text', text: 'Working' }],
      },
    ],
  },
};

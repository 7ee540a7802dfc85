import { memoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import { createPane } from '../../../taskpane/pane';
import type { HostServices, SelectedCell } from '../../../taskpane/services';
import type { View } from '../../../taskpane/view';
import { calculatingWorkbook } from '../../taskpane/calculatingWorkbook';
import { drive } from '../../taskpane/paneDriver';
import { UNTIDY } from '../../taskpane/untidyList';

/** The count of the largest dose, once it is selected. */
const COUNT = { sheet: 'Doses', row: 5, column: 3, shows: '17' };
let selected: SelectedCell | undefined;

const services: HostServices = {
  today: () => '2026-05-03',
  measures: 'US',
  undo: () => Promise.resolve(),
  print: () => Promise.resolve(),
  selected: () => Promise.resolve(selected),
  watch: () => () => undefined,
};

const ODD = [
  ['Rose', 'Place', 'Kind', 'No.'],
  ['Amber Kettle', 'Front', 'HT', 12],
  ['Green Ribbon', 'Front', 'shrublet', 4],
  ['Green Ribbon', '', '', 150],
];

/** A list that leaves questions open. */
const askedView = async (): Promise<View> => {
  const pane = createPane(memoryWorkbook({ sheets: { List: ODD } }), services);
  await pane.dispatch({ kind: 'workbookChanged' });
  return pane.view();
};

/** What the pane shows at each stop of the main job, the way there and what can go wrong on it. */
export const journeyViews = async (): Promise<Readonly<Record<string, View>>> => {
  const workbook = calculatingWorkbook(memoryWorkbook({ sheets: { 'Roses 2026': UNTIDY } }));
  const pane = createPane(workbook, services);
  const user = drive(pane);
  const views: Record<string, View> = {};
  const keep = (name: string): void => {
    views[name] = pane.view();
  };

  await pane.dispatch({ kind: 'workbookChanged' });
  await user.unfold('1 row not read');
  keep('adopt');
  await user.press('Make the plant inventory');
  keep('garden');
  await user.press('Go on to Rig');
  await user.type('Heel', 'two');
  await user.press('Keep this rig');
  keep('rig refused');
  await user.type('Heel', '1');
  await user.type('The barrel holds', '60');
  for (const [index, time] of ['46.1', '45.8', '46.6'].entries()) await user.type(`Time ${index + 1}`, time);
  await user.press('Keep this rig');
  await user.unfold('Hose, weight and times');
  keep('rig');
  await user.open('round');
  keep('round missing');
  await user.open('mix');
  keep('mix first product');
  const products = [
    {
      Name: 'Soluble powder 20-20-20',
      "Label's greatest rate": '1',
      'Nitrogen, N': '20',
      'One millilitre weighs': '0.9',
      'Dissolves in your hot water': '350',
    },
    { Name: 'Seaweed extract', "Label's greatest rate": '2', 'A pack holds': '1', 'A pack costs': '18' },
  ];
  for (const [index, product] of products.entries()) {
    if (index > 0) await user.unfold('Products');
    for (const [label, value] of Object.entries(product)) await user.type(label, value);
    if (index > 0) await user.type('It is a', 'liquid');
    await user.press('Keep this product');
  }
  await user.type('Rate of product 1', '1');
  await user.type('Product 2', 'Seaweed extract');
  await user.type('Rate of product 2', '2');
  await user.press('Keep this mix');
  keep('mix');
  await user.type('Rate of product 1', '1.5');
  await user.press('Keep this mix');
  await user.open('round');
  keep('round over label');
  await user.open('mix');
  await user.type('Rate of product 1', '1');
  await user.press('Keep this mix');
  await user.press('Go on to Round');
  keep('round');
  await user.press('Make the card');
  await user.open('log');
  await user.type('Left over', '5');
  keep('log');
  await user.press('Write the log line');
  keep('logged');
  await user.open('tanks');
  await user.type('Fills, at most', '4');
  selected = COUNT;
  await pane.dispatch({ kind: 'selected', ...COUNT });
  await user.unfold('This cell');
  keep('tanks');
  views['adopt asked'] = await askedView();
  views['busy'] = {
    ...views['adopt']!,
    message: undefined,
    busy: { text: 'Reading “Roses 2026”: 15,000 of 50,000 rows', share: 0.3, canStop: true },
  };
  return views;
};

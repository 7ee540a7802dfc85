import { afterAll, beforeAll, expect, test } from 'vitest';

import { CARD } from '../../../addin/workbook/card/cardNames';
import type { Change } from '../../../addin/workbook/change';
import type { Outline, Snapshot, Workbook } from '../../../addin/workbook/port';
import { areaOfReference } from '../../../addin/workbook/references';
import { readWanted } from '../../../addin/workbook/seen';
import { areaNamed, cellsOf } from '../../../addin/workbook/snapshot';
import { createPane } from '../../../taskpane/pane';
import { UNTIDY } from '../../taskpane/untidyList';
import { tellsTheTruth, type CardHost } from '../aboveTheLabel';
import { MAIN_JOB } from '../calc/mainJob';
import { openStub, type StubPage } from './openStub';

/* Cells change under the add-in as by hand; the card is made in its own page, and read in the sheet. */

const LIST = 'Roses 2026';
let open: StubPage;
/** What the program around the add-in holds. */
const program: Workbook = {
  outline: () => open.stub<Outline>('outline'),
  read: (wanted) => readWanted(wanted, (areas) => open.stub<Snapshot>('read', areas)),
  apply: (change: Change) => open.stub('apply', change),
};
const pane = () => open.pane;
const roundStep = () => pane().getByRole('button', { name: /^Round/ });
const openRound = () => roundStep().click();
/** The pane in a new runtime: this program tells it of nothing that is done by hand. */
const readAnew = async (): Promise<void> => {
  const page = pane().locator('html');
  await page.evaluate((html) => html.setAttribute('data-old', ''));
  await open.stub('reopenPane');
  await pane().locator('html:not([data-old])').getByText('Next: ').waitFor();
};

const host: CardHost = {
  printed: async () => {
    const area = areaNamed(await program.outline(), CARD)!;
    return cellsOf(await program.read([area]), area).map((line) =>
      line.map(({ value, error }) => error ?? String(value ?? '')),
    );
  },
  // Excel prints and keeps what its cells show.
  copies: async () => ({}),
  type: async (place, text) => {
    const { sheet, row, column } = areaOfReference(place) ?? areaNamed(await program.outline(), place)!;
    const input = text === '' ? null : /^\d+$/.test(text) ? Number(text) : text;
    await program.apply({
      title: 'By hand',
      edits: [{ kind: 'write', sheet, row, column, cells: [[input]] }],
    });
    await readAnew();
  },
  round: async () => {
    await openRound();
    const says = await pane().locator('body').innerText();
    return { says, prints: says.includes('To print the card, go to its sheet') };
  },
  makeCard: async (reason) => {
    await openRound();
    if (reason !== undefined) {
      const field = pane().getByLabel('Why above the label?', { exact: true });
      await field.fill(reason);
      await field.blur();
    }
    await pane().getByRole('button', { name: 'Make the card', exact: true }).click();
    await pane()
      .getByText(/^Made the card/)
      .first()
      .waitFor();
  },
  picture: (name) => open.shoot(name),
};

beforeAll(async () => {
  open = await openStub();
  await program.apply({
    title: 'The list',
    edits: [
      { kind: 'addSheet', sheet: LIST },
      { kind: 'write', sheet: LIST, row: 0, column: 0, cells: UNTIDY },
      { kind: 'activate', sheet: LIST, row: 0, column: 0 },
    ],
  });
  // Its page brings the functions.
  await open.stub('openPane');
  await roundStep().waitFor();
  const garden = createPane(program, { today: () => '2026-05-03', measures: 'US' });
  await garden.dispatch({ kind: 'workbookChanged' });
  const toRound = MAIN_JOB.findIndex((event) => event.kind === 'open' && event.section === 'round');
  for (const event of MAIN_JOB.slice(0, toRound)) await garden.dispatch(event);
  garden.close();
  await readAnew();
});
afterAll(() => open?.close());

tellsTheTruth(() => host);

test('nothing went wrong on the way', () => {
  expect(open.troubles).toEqual([]);
});

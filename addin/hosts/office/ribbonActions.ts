import type { Pane } from '../../../taskpane/pane';
import { CARD } from '../../workbook/card/cardNames';
import type { Workbook } from '../../workbook/port';
import { areaNamed } from '../../workbook/snapshot';

import { repairFormulas } from './repairFormulas';
import type { RibbonButtonId } from './ribbon';

/** What a button did that is not seen by itself, or why it did nothing; undefined where the sheet shows it. */
export type Said = string | undefined;

const makeCard = async (pane: Pane): Promise<Said> => {
  await pane.dispatch({ kind: 'open', section: 'round' });
  await pane.dispatch({ kind: 'press', action: 'round.card' });
  const { message } = pane.view();
  return message?.tone === 'warning' ? message.text : undefined;
};

const showCard = async (workbook: Workbook): Promise<Said> => {
  const card = areaNamed(await workbook.outline(), CARD);
  if (card === undefined) return 'There is no card to show: make the card first.';
  const { sheet, row, column } = card;
  await workbook.apply({ title: 'Show the card', edits: [{ kind: 'activate', sheet, row, column }] });
  return undefined;
};

const repair = async (workbook: Workbook): Promise<Said> => {
  const count = await repairFormulas(workbook);
  if (count === 0) return 'No FEED formula shows #NAME?, so nothing was written.';
  return count === 1 ? 'Wrote 1 FEED formula anew.' : `Wrote ${count} FEED formulas anew.`;
};

/** What the buttons of the ribbon do, with the pane open or not. */
export const ribbonActions = (
  pane: Pane,
  workbook: Workbook,
): Readonly<Record<RibbonButtonId, () => Promise<Said>>> => ({
  makeCard: () => makeCard(pane),
  showCard: () => showCard(workbook),
  repairFormulas: () => repair(workbook),
});

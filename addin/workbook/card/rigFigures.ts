import type { PageCell } from '../page';
import { rigForm } from '../sheets/rig';
import { RIG_ROWS, place, type RigRow } from './cardContext';
import { cell, formula, inUnit, orElse, wandOpen } from './cardFormulas';
import type { CardSources } from './cardSources';

/**
 * The rig's figures, each once, as the card and the tank sheet take them: a label, and beside it what it comes to.
 *
 * @param weightUnit of the empty barrel, as formula text
 */
export const rigFigures = (
  sources: CardSources,
  first: { readonly row: number; readonly column: number },
  weightUnit: string,
): PageCell[] => {
  const { rig: from, mix } = sources;
  const { lines } = rigForm;
  const rig = (of: RigRow) => cell(first.row + RIG_ROWS.indexOf(of), first.column + 1);
  const spill = `FEED.DOSE(${from.betweenPlants},${from.flow.value},${from.flow.unit},${rig('unit')})`;
  const figures: Record<RigRow, [label: string, text: string]> = {
    barrel: ['Barrel', from.barrel.value],
    unit: ['Unit', from.barrel.unit],
    heel: ['Heel', inUnit(from.heel, rig('unit'))],
    hose: ['Hose holds', inUnit(from.hose, rig('unit'))],
    fillLine: ['Fill line', orElse(from.fillLine, lines.fillLine.start)],
    working: ['A fill delivers', `${rig('barrel')}*${rig('fillLine')}-${rig('heel')}`],
    countStep: ['Counts in steps of, s', orElse(from.countStep, lines.countStep.start)],
    spill: [
      'Runs out from plant to plant',
      `IF(AND(${wandOpen(sources)},${from.betweenPlants}>0),${spill},0)`,
    ],
    walk: ['Walk to a plant, min', `IF(${wandOpen(sources)},0,${from.betweenPlants}/60)`],
    premix: ['Measure and dissolve, min', `IF(COUNTIF(${mix.rate},">0")>0,0+${from.premixMinutes},0)`],
    move: ['Move the barrel, min', `0+${from.moveMinutes}`],
    weight: ['Empty barrel', inUnit(from.emptyWeight, weightUnit)],
  };
  return RIG_ROWS.flatMap((of, at) => [
    place(first.row + at, first.column, figures[of][0], 'header'),
    place(first.row + at, first.column + 1, formula(figures[of][1]), 'computed', 'General'),
  ]);
};

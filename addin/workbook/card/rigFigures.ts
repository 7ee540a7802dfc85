import type { PageCell } from '../page';
import { rigForm } from '../sheets/rig';
import type { CardContext, RigRow } from './cardContext';
import { RIG_ROWS, place, workings } from './cardContext';
import { formula, inUnit, orElse, quoted, wandOpen } from './cardFormulas';

/** The rig's figures, each once, as the rest of the card takes them. */
export const rigFigures = (context: CardContext): PageCell[] => {
  const { sources, request } = context;
  const { rig: from } = sources;
  const { lines } = rigForm;
  const { work, rig } = workings(context);
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
    premix: ['Measure and dissolve, min', request.products.length === 0 ? '0' : `0+${from.premixMinutes}`],
    move: ['Move the barrel, min', `0+${from.moveMinutes}`],
    weight: ['Empty barrel', inUnit(from.emptyWeight, quoted(request.weightUnit))],
  };
  return RIG_ROWS.flatMap((of) => {
    const { row, column } = work.rig(of);
    const [label, text] = figures[of];
    return [
      place(row, column - 1, label, 'header'),
      place(row, column, formula(text), 'computed', 'General'),
    ];
  });
};

import type { CellInput } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { place, workings } from './cardContext';
import { cell, cells, formula } from './cardFormulas';

/** The counts, a column a size class: how long to hold the wand, for which dose, on how many plants. */
export const countRows = (context: CardContext): PageCell[] => {
  const { sources, request, layout } = context;
  const { counts, column } = layout;
  const { rig, doses } = sources;
  const { rig: figure } = workings(context);
  const heads: [number, CellInput][] = [
    [counts.header, 'Hold the wand'],
    [counts.seconds, 'Count'],
    [counts.dose, formula(`"Dose, "&${doses.unit}`)],
    [counts.plants, 'Plants'],
  ];
  const classes = request.sizeClasses.flatMap((sizeClass, index) => {
    const at = column.firstClass + index;
    const dose = cell(counts.dose, at);
    const bedCells = layout.stations.map(({ firstBed }, station) =>
      cells(firstBed, at, firstBed + request.stations[station]!.beds.length - 1, at),
    );
    const found = `INDEX(${doses.dose},FEED.ROWOF(${cell(counts.header, at)},${doses.sizeClass}))`;
    const seconds = `FEED.SECONDS(${dose},${doses.unit},${rig.flow.value},${rig.flow.unit},${figure('countStep')})`;
    return [
      { ...place(counts.header, at, sizeClass, 'numberHeader'), wrap: true },
      place(counts.seconds, at, formula(seconds), 'bigNumber', 'General "s"'),
      place(counts.dose, at, formula(found), 'computed', '0.0##'),
      place(counts.plants, at, formula(`SUM(${bedCells.join(',')})`), 'computed', '0'),
    ];
  });
  return [...heads.map(([row, input]) => place(row, column.name, input, 'header')), ...classes];
};

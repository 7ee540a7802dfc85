import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { TIME, VOLUME, place, tickBox, workingsAt } from './cardContext';
import { barrelArguments, cell, formula } from './cardFormulas';
import { hotWater, measureCells } from './measureCells';

/** One fill of the barrel: what to make up and measure, what it delivers, and when. */
export const fillRow = (context: CardContext, station: number, index: number, number: number): PageCell[] => {
  const { sources, request, layout } = context;
  const { rig } = sources;
  const { column } = layout;
  const rows = layout.stations[station]!;
  const row = rows.firstFill + index;
  const work = workingsAt(column.workings);
  const figure = (at: number) => cell(rows.fillHeader, at);
  const plan = `FEED.FILLPLAN(${figure(work.need0)},${barrelArguments(sources)},${cell(work.style.row, work.style.column)})`;
  const part = (of: number) => `IF(${index + 1}<=${figure(work.fills0)},INDEX(${plan},${index + 1},${of}),0)`;

  const before =
    index > 0
      ? cell(row - 1, column.doneBy)
      : station === 0
        ? cell(work.start.row, work.start.column)
        : `${cell(layout.stations[station - 1]!.firstFill + request.stations[station - 1]!.fills - 1, column.doneBy)}` +
          `+${rig.moveMinutes}/1440`;
  const makeUp = cell(row, column.makeUp);
  const pumped = cell(row, column.pumpOut);
  const unit = rig.barrel.unit;
  const premix = request.products.length === 0 ? '0' : rig.premixMinutes;
  const filling = `${premix}+FEED.FILLTIME(${makeUp},${unit},${rig.tapFlow.value},${rig.tapFlow.unit})`;
  const walking = `IF(${rig.wandStaysOpen}="yes",0,${rig.betweenPlants}*${figure(work.plants0)}*${pumped}/${figure(work.need0)}/60)`;
  const pumping = `FEED.FILLTIME(${pumped},${unit},${rig.flow.value},${rig.flow.unit})+${walking}`;
  const later = (from: string, minutes: string) => formula(`${from}+IF(${makeUp}>0,(${minutes})/1440,0)`);

  return [
    tickBox(row, column.tick),
    place(row, column.name, `Fill ${number}`, 'total'),
    place(row, column.makeUp, formula(part(2)), 'big', VOLUME),
    ...request.products.flatMap((product, at) => measureCells(context, product, at, rows, row)),
    ...(column.hotWater === undefined
      ? []
      : [place(row, column.hotWater, formula(hotWater(context, rows, row)), 'computed')]),
    place(row, column.pumpOut, formula(part(3)), 'computed', VOLUME),
    place(row, column.start, formula(before), 'computed', TIME),
    place(row, column.pumpFrom, later(cell(row, column.start), filling), 'computed', TIME),
    place(row, column.doneBy, later(cell(row, column.pumpFrom), pumping), 'computed', TIME),
  ];
};

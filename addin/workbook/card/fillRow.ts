import type { FormulaText } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { place, stationFigures, tickBox, workings } from './cardContext';
import { cell, clockWords, formula, wholeMinutes } from './cardFormulas';
import { hotWater, measureCells } from './measureCells';

const MINUTES = '0';
/** A volume, and nothing where a fill is not needed any more. */
const VOLUME_OR_NONE = '#,##0.0;-#,##0.0;""';

/** When the fill before this one is done, and the barrel stands here. */
const startOf = (context: CardContext, station: number, index: number, row: number): string => {
  const { request, layout } = context;
  const { work, at, rig } = workings(context);
  if (index > 0) return cell(row - 1, work.doneBy);
  if (station === 0) return `${at(work.start)}*1440`;
  const before = layout.stations[station - 1]!;
  const last = before.firstFill + request.stations[station - 1]!.fills - 1;
  return `${cell(last, work.doneBy)}+${rig('move')}`;
};

/**
 * One fill of the barrel: what to make up and measure, what it delivers, and when.
 *
 * @param fill the fill's place in the round as it was planned, from 0
 */
export const fillRow = (context: CardContext, station: number, index: number, fill: number): PageCell[] => {
  const { sources, request, layout } = context;
  const { column } = layout;
  const { work, at, rig } = workings(context);
  const rows = layout.stations[station]!;
  const row = rows.firstFill + index;
  const need = cell(rows.fillHeader, work.need0);
  const fillsNow = cell(rows.fillHeader, work.fills0);
  const plan = `FEED.FILLPLAN(${need},${rig('barrel')},${rig('unit')},${rig('heel')},${rig('fillLine')},${at(work.style)})`;
  const part = (of: number) => `IF(${index + 1}<=${fillsNow},INDEX(${plan},${index + 1},${of}),0)`;
  const makeUp = cell(row, column.makeUp);
  const pumped = cell(row, column.pumpOut);
  const [start, pumpFrom] = [cell(row, work.startAt), cell(row, work.pumpFrom)];
  const filling = `${rig('premix')}+FEED.FILLTIME(${makeUp},${rig('unit')},${sources.rig.tapFlow.value},${sources.rig.tapFlow.unit})`;
  const walking = `${rig('walk')}*${cell(rows.fillHeader, work.plants0)}*${pumped}/${need}`;
  const pumping = `FEED.FILLTIME(${pumped},${rig('unit')},${sources.rig.flow.value},${sources.rig.flow.unit})+${walking}`;
  const later = (from: string, minutes: string) => formula(`${from}+IF(${makeUp}>0,${minutes},0)`);
  const times: [printed: number, at: number, input: FormulaText][] = [
    [column.start, work.startAt, formula(startOf(context, station, index, row))],
    [column.pumpFrom, work.pumpFrom, later(start, filling)],
    [column.doneBy, work.doneBy, later(pumpFrom, pumping)],
  ];
  // Fills of earlier stations that are not needed any more do not count.
  const before = station === 0 ? '' : `&SUM(${stationFigures(context, work.fills0, station)})+${index + 1}`;
  const name = station === 0 ? `"Fill ${index + 1}"` : `"Fill "${before}`;

  return [
    tickBox(row, column.tick),
    place(row, column.name, formula(`IF(${makeUp}>0,${name},"")`), 'total'),
    place(row, column.makeUp, formula(part(2)), 'big', VOLUME_OR_NONE),
    ...request.products.flatMap((_, product) => measureCells(context, product, row, fill)),
    ...(column.hotWater === undefined
      ? []
      : [place(row, column.hotWater, formula(hotWater(context, row)), 'computed')]),
    place(row, column.pumpOut, formula(part(3)), 'computed', VOLUME_OR_NONE),
    ...times.flatMap(([printed, at, input]) => {
      const whole = cell(row, at + work.whole);
      const words = formula(`IF(${makeUp}>0,${clockWords(whole)},"")`);
      return [
        { ...place(row, printed, words, 'time'), wrap: true },
        place(row, at, input, 'computed', MINUTES),
        place(row, at + work.whole, formula(wholeMinutes(cell(row, at))), 'computed', MINUTES),
      ];
    }),
  ];
};

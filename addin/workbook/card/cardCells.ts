import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { TIME, VOLUME, overFills, place, workingsAt } from './cardContext';
import { MEASURED_IN, about, cell, clock, formula, quoted } from './cardFormulas';
import type { CardLayout, CardRequest } from './cardLayout';
import { CHECK_AT } from './cardNames';
import type { CardSources } from './cardSources';
import { countRows } from './countRows';
import { charactersAcross } from './cardWidths';
import { stationRows } from './stationRows';
import { workings } from './workings';

const totalRow = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const { column, total } = layout;
  const work = workingsAt(column.workings);
  const products = request.products.flatMap(({ way }, index) => {
    const unit = MEASURED_IN[way];
    const sum = overFills(context, work.productColumns + 3 * index + 2);
    return [
      {
        ...place(
          total,
          column.firstProduct + index,
          formula(`IF(${sum}=0,"",FEED.MEASURE(${sum},${quoted(unit)}))`),
          'total',
        ),
        wrap: true,
      },
    ];
  });
  return [
    place(total, column.name, 'Whole round', 'total'),
    // Kept clear of the measure in words beside it.
    place(
      total,
      column.makeUp,
      formula(overFills(context, column.makeUp)),
      'total',
      `${VOLUME}"\u00a0\u00a0\u00a0\u00a0"`,
    ),
    ...products,
    place(total, column.pumpOut, formula(overFills(context, column.pumpOut)), 'total', VOLUME),
    place(total, column.doneBy, formula(cell(work.finish.row, work.finish.column)), 'total', TIME),
  ];
};

const heading = ({ sources, request, layout }: CardContext): PageCell[] => {
  const { rig, plants } = sources;
  const work = workingsAt(layout.column.workings);
  const at = (of: { row: number; column: number }) => cell(of.row, of.column);
  const firstProduct = request.products[0] && cell(layout.stations[0]!.firstFill, layout.column.firstProduct);
  const duration = about(`(${at(work.finish)}-${at(work.start)})`);
  const answer =
    `${at(work.fills)}&IF(${at(work.fills)}=1," fill"," fills")&", "&ROUND(${at(work.madeUp)},1)&" "&${rig.barrel.unit}` +
    `&" made up"${firstProduct ? `&", first fill "&${firstProduct}` : ''}&", "&${duration}&", done by "&${clock(at(work.finish))}`;
  const fillsAre = (compared: '=' | '>'): string =>
    layout.stations
      .map(
        ({ fillHeader }, index) =>
          `${cell(fillHeader, work.fills0)}${compared}${request.stations[index]!.fills}`,
      )
      .join(',');
  const others = `SUM(${plants.howMany})<>${at(work.plants)}`;
  const planned = request.stations.reduce((sum, { fills }) => sum + fills, 0);
  const check =
    `IF(${others},"The plant inventory has other beds or sizes now. Make the card again.",` +
    `IF(AND(${fillsAre('=')}),"","The round takes "&${at(work.fills)}&" fills now; this card was made for ${planned}. Make the card again."))`;
  return [
    place(0, 0, `Round card: ${request.mixName}`, 'title'),
    // Fills or plants that have no row here are missing from the sums, which then say too little.
    place(1, 0, formula(`IF(OR(${others},${fillsAre('>')}),"This card is out of date",${answer})`), 'answer'),
    place(CHECK_AT.row, CHECK_AT.column, formula(check), 'warning'),
    ...(request.overLabelReason
      ? [place(3, 0, `Above the label's greatest rate, because: ${request.overLabelReason}`, 'warning')]
      : []),
  ];
};

/** Words put on lines of their own where they would not fit across the page. */
const lines = (text: string, most: number): string[] =>
  text.split(' ').reduce<string[]>((done, word) => {
    const last = done.at(-1);
    if (last !== undefined && last.length + word.length + 1 <= most)
      done[done.length - 1] = `${last} ${word}`;
    else done.push(word);
    return done;
  }, []);

const cautionRows = ({ request, layout }: CardContext): PageCell[] => {
  const { column, cautions } = layout;
  return request.cautions
    .flatMap((text) => lines(text, charactersAcross(request, layout)))
    .map((text, index) => place(cautions + index, column.tick, text));
};

/** Every cell of the card and of its workings. */
export const cardCells = (sources: CardSources, request: CardRequest, layout: CardLayout): PageCell[] => {
  const context: CardContext = { sources, request, layout };
  let number = 1;
  const stations = request.stations.flatMap(({ fills }, index) => {
    const made = stationRows(context, index, number);
    number += fills;
    return made;
  });
  return [
    ...heading(context),
    ...countRows(context),
    ...stations,
    ...totalRow(context),
    ...cautionRows(context),
    ...workings(context),
  ];
};

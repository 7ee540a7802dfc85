import { LEAST_DOSE, RIG_LIMITS, type RigNumber } from '../../core';
import type { CellInput } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { place, stationFigures, workings } from './cardContext';
import { cell, cells, formula, inUnit, quoted } from './cardFormulas';
import { UNREADABLE } from './cardMarks';
import { perLitreUnit } from './productFigures';

/** What may keep the card from being fed by: what is said then, and when. */
interface Check {
  readonly says: CellInput;
  readonly bad: string;
}

const AGAIN = 'Make the card again.';
const MEND = 'Mend it, then make the card again.';
const check = (says: CellInput, bad: string): Check => ({ says, bad });

/** The lines of the rig in the units in which their limits stand. */
const rigValues = (context: CardContext): Record<RigNumber, string> => {
  const from = context.sources.rig;
  const { rig } = workings(context);
  return {
    barrel: inUnit(from.barrel, '"L"'),
    fillLine: rig('fillLine'),
    heel: inUnit(from.heel, '"L"'),
    flow: inUnit(from.flow, '"L/min"'),
    tapFlow: inUnit(from.tapFlow, '"L/min"'),
    hoseContent: inUnit(from.hose, '"L"'),
    betweenPlants: from.betweenPlants,
    countStep: rig('countStep'),
    emptyWeight: inUnit(from.emptyWeight, '"g"'),
    premixTime: `${from.premixMinutes}*60`,
    moveTime: `${from.moveMinutes}*60`,
  };
};

const ofTheRig = (context: CardContext): Check[] => {
  const { rig } = workings(context);
  const values = rigValues(context);
  return [
    ...Object.entries(values).map(([key, value]) => {
      const { name, least, most } = RIG_LIMITS[key as RigNumber];
      return check(
        `${name}: the Rig sheet has none, or one out of its range. ${MEND}`,
        `OR(${value}<${least},${value}>${most})`,
      );
    }),
    check(
      `A fill delivers nothing: the heel is as much as the barrel holds. ${MEND}`,
      `FEED.INUNITS(${rig('working')},${rig('unit')},"L")<${LEAST_DOSE}`,
    ),
  ];
};

const ofTheDoses = (context: CardContext): Check => {
  const { sources, request, layout } = context;
  const { rig } = workings(context);
  const { counts, column } = layout;
  const doses = cells(
    counts.dose,
    column.firstClass,
    counts.dose,
    column.firstClass + request.sizeClasses.length - 1,
  );
  const { unit } = sources.doses;
  return check(
    `A size has no dose, or one that no fill of the barrel holds. ${MEND}`,
    `OR(COUNT(${doses})<>${request.sizeClasses.length},FEED.INUNITS(MIN(${doses}),${unit},"L")<${LEAST_DOSE},` +
      `FEED.INUNITS(MAX(${doses}),${unit},${rig('unit')})>${rig('working')})`,
  );
};

const OTHER_BEDS = `The plant inventory has other beds or sizes now. ${AGAIN}`;

/** One for each range whose cells are not what they were. */
const changed = (sentence: string, ranges: readonly string[], marks: readonly string[]): Check[] =>
  ranges.map((range, index) => {
    const mark = marks[index]!;
    const now = `FEED.FINGERPRINT(${range})`;
    return check(sentence, mark === UNREADABLE ? `NOT(ISERROR(${now}))` : `${now}<>${quoted(mark)}`);
  });

/** Of the plants: that every row reads, and that all of them are on the card. */
const ofThePlants = ({ sources, request }: CardContext, plants: string): Check[] => {
  const { bed, sizeClass, howMany, planted } = sources.plants;
  const [, , numbers = ''] = planted;
  if (request.planted !== undefined) return changed(OTHER_BEDS, planted, request.plantsMarks);
  const unread = `A row of Plants cannot be read. ${MEND}`;
  const counted = `COUNTA(${bed})`;
  return [
    check(unread, `OR(${counted}<>COUNTA(${sizeClass}),${counted}<>COUNT(${howMany})+1)`),
    check(unread, `OR(COUNTIF(${howMany},"<0")>0,SUMPRODUCT(${numbers}-INT(${numbers}))<>0)`),
    check(OTHER_BEDS, `SUM(${howMany})<>${plants}`),
  ];
};

const ofTheMix = (context: CardContext): Check[] => {
  const { sources, request } = context;
  const { product } = workings(context);
  const rates = sources.mix.rate;
  return [
    check(
      `The mix has changed. ${AGAIN}`,
      `OR(COUNTIF(${rates},">0")<>${request.products.length},COUNTA(${rates})<>COUNT(${rates})+1)`,
    ),
    ...request.products.map((_, index): Check => {
      const fault = product(index, 'fault');
      const told = `IF(${fault}="","is not as it was",${fault})`;
      return check(
        formula(`"“"&${product(index, 'name')}&"” "&${told}&". ${AGAIN}"`),
        // The fault's own cell may have been emptied.
        `OR(${fault}<>"",${product(index, 'over')}<>0)`,
      );
    }),
  ];
};

/** What the planner refuses of rates: one beyond any label's, and liquids that together leave no room for water. */
const ratesBeyond = (context: CardContext): string => {
  const { products } = context.request;
  const { work, product } = workings(context);
  const { row, column } = work.product(0, 'beyond');
  const liquids = products.flatMap((one, index) =>
    one.form === 'liquid' && perLitreUnit(one) === 'mL/L' ? [product(index, 'perLitre')] : [],
  );
  const any =
    products.length === 0 ? 'FALSE' : `SUM(${cells(row, column, row + products.length - 1, column)})>0`;
  return liquids.length < 2 ? any : `OR(${any},${liquids.join('+')}>1000)`;
};

const ofTheFills = (context: CardContext): Check[] => {
  const { request, layout } = context;
  const { work, at } = workings(context);
  const more = layout.stations.map(
    ({ fillHeader }, index) => `${cell(fillHeader, work.fills0)}>${request.stations[index]!.fills}`,
  );
  const [start, fills] = [at(work.start), at(work.fills)];
  return [
    check(`A station has no plants now. ${AGAIN}`, `MIN(${stationFigures(context, work.plants0)})<1`),
    check(`The fills cannot be worked out. ${MEND}`, `ISERROR(${fills})`),
    check(
      formula(
        `"The round takes "&${fills}&" fills now; this card was made for ${request.made.fills}. ${AGAIN}"`,
      ),
      `OR(${more.join(',')})`,
    ),
    check(
      `The start beside the card is no time of the day, or “full” or “equal” is missing there. ${AGAIN}`,
      `NOT(AND(ISNUMBER(${start}),${start}>=0,${start}<1,ISNUMBER(${at(work.finish)}),${at(work.style)}<>""))`,
    ),
  ];
};

const FAR_BELOW = 200;

/** Rows and columns that were put into the card or taken out of it leave formulas that read the wrong cells. */
const shapeChanged = ({ layout }: CardContext): Check => {
  const [rows, columns] = [layout.total + 1, layout.column.last + 1];
  // Measured where the card has no formula, as one that hangs on this would go in a circle.
  const [beside, below] = [layout.column.last + 1, layout.cautions + FAR_BELOW];
  return check(
    `Rows or columns of this card were put in or taken out. ${AGAIN}`,
    `OR(ROWS(${cells(0, beside, rows - 1, beside)})<>${rows},COLUMNS(${cells(below, 0, below, columns - 1)})<>${columns})`,
  );
};

/** Everything that may keep the card from being fed by, the worst first. */
const checks = (context: CardContext): Check[] => {
  const { sources, request } = context;
  const { work, at } = workings(context);
  return [
    check('The functions of this card do not answer, so it shows no measures.', 'ISERROR(FEED.HOWLONG(0))'),
    ...ofTheRig(context),
    ofTheDoses(context),
    ...ofThePlants(context, at(work.plants)),
    ...changed(`The walk has changed on the Beds sheet. ${AGAIN}`, sources.beds.walk, request.walkMarks),
    // A column is found by its head: under another one the sheets say something else.
    ...changed(`A heading has changed on a sheet of the garden. ${AGAIN}`, sources.heads, request.headMarks),
    shapeChanged(context),
    ...ofTheMix(context),
    check(`A rate of the mix is out of its range. ${MEND}`, ratesBeyond(context)),
    ...ofTheFills(context),
  ];
};

/** The checks, a row each: the sentence, and whether it must be said; and the first one that must. */
export const cardChecks = (context: CardContext): PageCell[] => {
  const { work, words } = workings(context);
  const all = checks(context);
  const head = work.check(-1, 'sentence');
  const down = (of: 'sentence' | 'bad') => {
    const { row, column } = work.check(0, of);
    return cells(row, column, row + all.length - 1, column);
  };
  const first = words('first');
  // Where rows of the checks were taken out there may be no first, and not every one is looked at.
  const says =
    `IF(COUNTIF(${down('bad')},0)=${all.length},"",` +
    `IFERROR(IF(${first}="",NA(),${first}),${quoted(`This card was changed by hand. ${AGAIN}`)}))`;
  const said = { first: `IFERROR(INDEX(${down('sentence')},MATCH(1,${down('bad')},0)),"")`, says };
  return [
    ...['What is said', 'Must be said'].map((label, index) =>
      place(head.row, head.column + index, label, 'header'),
    ),
    ...all.flatMap(({ says: sentence, bad }, index) => {
      const [told, must] = [work.check(index, 'sentence'), work.check(index, 'bad')];
      return [
        place(told.row, told.column, sentence, 'computed'),
        // What cannot be looked up any more has changed.
        place(must.row, must.column, formula(`IFERROR(IF(${bad},1,0),1)`), 'computed'),
      ];
    }),
    ...(['first', 'says'] as const).map((of) => {
      const { row, column } = work.words(of);
      return place(row, column, formula(said[of]), 'computed');
    }),
  ];
};

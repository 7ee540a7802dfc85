import { COUNTS_APART, LEAST_DOSE, RIG_LIMITS, countsApartText, type RigNumber } from '../../core';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { CHECKS_AFTER, CHECKS_BEFORE, place, workings } from './cardContext';
import { cell, cells, formula, inUnit, quoted } from './cardFormulas';
import { UNREADABLE } from './cardMarks';
import { perLitreUnit } from './productFigures';

/** What may keep the card from being fed by: what is said then, as formula text, and when. */
interface Check {
  readonly says: string;
  readonly bad: string;
}

const AGAIN = 'Make the card again.';
const MEND = 'Mend it, then make the card again.';
const check = (sentence: string, bad: string): Check => ({ says: quoted(sentence), bad });

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
const marks = (columns: readonly string[]): string =>
  columns.map((column) => `IFERROR(FEED.FINGERPRINT(${column}),${quoted(UNREADABLE)})`).join('&');

/** Of the plants: that every row reads, and that all of them are on the card. */
const ofThePlants = ({ sources, request }: CardContext, plants: string): Check[] => {
  const { bed, sizeClass, howMany, planted } = sources.plants;
  const [, , numbers = ''] = planted;
  const other = check(OTHER_BEDS, `${marks(planted)}<>${quoted(request.plantsMark)}`);
  if (request.planted !== undefined) return [other, { ...other, bad: 'FALSE' }, { ...other, bad: 'FALSE' }];
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
  const changed = `The mix has changed. ${AGAIN}`;
  return [
    check(
      changed,
      `OR(COUNTIF(${rates},">0")<>${request.products.length},COUNTA(${rates})<>COUNT(${rates})+1)`,
    ),
    ...request.products.map((_, index): Check => {
      const fault = product(index, 'fault');
      return { says: `"“"&${product(index, 'name')}&"” "&${fault}&". ${AGAIN}"`, bad: `${fault}<>""` };
    }),
  ];
};

/** What the planner refuses of products: rates, label's rates and densities far outside any label. */
const productRanges = (context: CardContext): string => {
  const { request } = context;
  const { product } = workings(context);
  const liquid = request.products.flatMap((one, index) =>
    one.form === 'liquid' && perLitreUnit(one) === 'mL/L' ? [product(index, 'perLitre')] : [],
  );
  const each = request.products.flatMap((one, index) => {
    const rate = product(index, 'perLitre');
    const byMass = perLitreUnit(one) === 'g/L';
    return [`${rate}<0.000001`, `${rate}>${byMass ? 2000 : 1000}`];
  });
  const sum = liquid.length === 0 ? [] : [`${liquid.join('+')}>1000`];
  return each.length === 0 ? 'FALSE' : `OR(${[...each, ...sum].join(',')})`;
};

const ofTheFills = (context: CardContext): Check[] => {
  const { request, layout } = context;
  const { work, at } = workings(context);
  const now = (column: number) => layout.stations.map(({ fillHeader }) => cell(fillHeader, column));
  const more = now(work.fills0).map((fills, index) => `${fills}>${request.stations[index]!.fills}`);
  const start = at(work.start);
  return [
    check(`A station has no plants now. ${AGAIN}`, `MIN(${now(work.plants0).join(',')})<1`),
    {
      // A sentence in error would be shown in place of every sentence after it.
      says: `IFERROR("The round takes "&${at(work.fills)}&" fills now; this card was made for ${request.made.fills}. ${AGAIN}","The fills cannot be worked out. ${MEND}")`,
      bad: `OR(${more.join(',')})`,
    },
    check(
      `The start beside the card is no time of the day, or “full” or “equal” is missing there. ${AGAIN}`,
      `NOT(AND(ISNUMBER(${start}),${start}>=0,${start}<1,ISNUMBER(${at(work.finish)}),${at(work.style)}<>""))`,
    ),
  ];
};

const walkChanged = ({ sources, request }: CardContext): string =>
  `${marks(sources.beds.walk)}<>${quoted(request.walkMark)}`;

/** A column is found by its head: under another one the sheets say something else. */
const headsChanged = ({ sources, request }: CardContext): Check[] =>
  [sources.heads.slice(0, 2), sources.heads.slice(2, 4), sources.heads.slice(4)].map((heads, index) =>
    check(
      `A heading has changed on a sheet of the garden. ${AGAIN}`,
      `${marks(heads)}<>${quoted(request.headMarks[index]!)}`,
    ),
  );

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
  const { work, at } = workings(context);
  const before: Check[] = [
    check('The functions of this card do not answer, so it shows no measures.', 'ISERROR(FEED.HOWLONG(0))'),
    ...ofTheRig(context),
    ofTheDoses(context),
    ...ofThePlants(context, at(work.plants)),
    check(`The walk has changed on the Beds sheet. ${AGAIN}`, walkChanged(context)),
    ...headsChanged(context),
    shapeChanged(context),
  ];
  const [mix, ...products] = ofTheMix(context);
  const after: Check[] = [
    check(`A rate of the mix is out of its range. ${MEND}`, productRanges(context)),
    ...ofTheFills(context),
  ];
  return [...before, mix!, ...products, ...after];
};

/** The checks, a row each: the sentence, whether it must be said, and the first that must so far. */
export const cardChecks = (context: CardContext): PageCell[] => {
  const { work, at } = workings(context);
  const all = checks(context);
  if (all.length !== CHECKS_BEFORE + context.request.products.length + CHECKS_AFTER)
    throw new Error(`A card has ${all.length} checks, which is not what its workings have room for.`);
  const head = work.check(-1, 'sentence');
  return [
    ...['What is said', 'Must be said', 'Said'].map((label, index) =>
      place(head.row, head.column + index, label, 'header'),
    ),
    ...all.flatMap(({ says, bad }, index) => {
      const [sentence, must, said] = (['sentence', 'bad', 'says'] as const).map((of) =>
        work.check(index, of),
      );
      const earlier = index === 0 ? '""' : at(work.check(index - 1, 'says'));
      const chain = `IF(${earlier}<>"",${earlier},IF(${at(must!)}=1,${at(sentence!)},""))`;
      // The last word does not hang on the chain, which a row taken out may break.
      const first = work.check(0, 'bad');
      const none = `COUNTIF(${cells(first.row, first.column, must!.row, must!.column)},0)=${all.length}`;
      const broken = quoted(`This card was changed by hand. ${AGAIN}`);
      const last = `IF(${none},"",IFERROR(IF(${chain}="",${broken},${chain}),${broken}))`;
      const text = index === all.length - 1 ? last : chain;
      return [
        place(sentence!.row, sentence!.column, formula(says), 'computed'),
        // What cannot be looked up any more has changed.
        place(must!.row, must!.column, formula(`IFERROR(IF(${bad},1,0),1)`), 'computed'),
        place(said!.row, said!.column, formula(text), 'computed'),
      ];
    }),
  ];
};

/** What stands under the headline: why the card is out of date, else that its counts miss the doses; '' mostly. */
export const warning = (context: CardContext): string => {
  const { work, at, says } = workings(context);
  const apart = at(work.apart);
  const percent = '\u0001';
  const told = (given: 'more' | 'less') =>
    quoted(countsApartText(percent, given)).replace(percent, `"&ROUND(ABS(${apart})*100,1)&" %`);
  return `IF(${says}<>"",${says},IF(ABS(${apart})<=${COUNTS_APART},"",IF(${apart}>0,${told('more')},${told('less')})))`;
};

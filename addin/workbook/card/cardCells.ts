import {
  COUNTS_APART,
  LABEL_DECIDES,
  LABEL_MAY_BIND,
  barrelWeightText,
  findUnit,
  finestMeasure,
  notCheckedText,
} from '../../core';
import type { CellInput, FormulaText } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { VOLUME, lastTime, overFills, place, workings } from './cardContext';
import { cardChecks } from './cardChecks';
import { cell, clockWords, formula, quoted } from './cardFormulas';
import type { CardLayout, CardRequest } from './cardLayout';
import type { CardSources } from './cardSources';
import { charactersAcross } from './cardWidths';
import { countRows } from './countRows';
import { stationRows } from './stationRows';
import { workingCells } from './workings';

const totalRow = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const { column, total } = layout;
  const { work, at, product, says } = workings(context);
  const finish = lastTime(context, work.doneBy + work.whole);
  const products = request.products.map(({ unit }, index) => {
    const sum = product(index, 'total');
    const { step } = finestMeasure(findUnit(unit)!);
    // Parts of a stock add up to no whole measure: the nearest one may be above what the label allows.
    const decimals = `ROUNDDOWN(${sum}+1E-9,3)&${quoted(` ${unit}`)}`;
    const told = `IF(MOD(ROUND(${sum}/${step},6),1)>0,${decimals},FEED.MEASURE(${sum},${quoted(unit)}))`;
    const words = formula(`IF(OR(${says}<>"",${sum}=0),"",${told})`);
    return { ...place(total, column.firstProduct + index, words, 'total'), wrap: true };
  });
  return [
    place(total, column.name, 'Whole round', 'total'),
    // Kept clear of the measure in words beside it.
    place(total, column.makeUp, formula(at(work.madeUp)), 'total', `${VOLUME}"\u00a0\u00a0\u00a0\u00a0"`),
    ...products,
    place(total, column.pumpOut, formula(overFills(context, column.pumpOut)), 'total', VOLUME),
    { ...place(total, column.doneBy, formula(clockWords(finish)), 'totalTime'), wrap: true },
  ];
};

/** The round in one line: fills, what the first one takes, how long and until when. */
const answer = (context: CardContext): string => {
  const { request, layout } = context;
  const { product, words, says } = workings(context);
  const first = cell(layout.stations[0]!.firstFill, layout.column.firstProduct);
  const takes =
    request.products.length === 1
      ? `, first fill "&${first}&" of "&${product(0, 'name')}&"`
      : request.products.length > 1
        ? `, ${request.products.length} products`
        : '';
  const doneBy = cell(layout.total, layout.column.doneBy);
  const round = `${words('fills')}&"${takes}, about "&${words('lasts')}&", done by "&${doneBy}`;
  return `IF(${says}<>"","This card is out of date",${round})`;
};

/** What stands under the headline: why the card is out of date, else that its counts miss the doses; '' mostly. */
const warning = (context: CardContext): string => {
  const { work, at, words, says } = workings(context);
  const apart = at(work.apart);
  const told = `IF(${apart}>0,${words('more')},${words('less')})`;
  return `IF(${says}<>"",${says},IF(ABS(${apart})<=${COUNTS_APART},"",${told}))`;
};

const isOver = (context: CardContext, index: number): string =>
  `${workings(context).product(index, 'share')}>1`;

/** True while a product for which a reason was given is above its label. */
const anyOver = (context: CardContext): string =>
  `OR(${context.request.overLabel.map((index) => isOver(context, index)).join(',')})`;

/** Which products are above their label, by how much, and why: as the sheets have it now. */
const reasonRows = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const { work, at, product } = workings(context);
  const reason = `TRIM(${at(work.reason)})`;
  const { row } = layout.reason;
  if (request.overLabel.length === 0) return [];
  const lines = request.overLabel.map((index) => {
    const rate = (value: 'rate' | 'greatest', unit: 'rateUnit' | 'greatestUnit') =>
      `ROUND(${product(index, value)},4)&" "&${product(index, unit)}`;
    return (
      `IF(${isOver(context, index)},${product(index, 'name')}&" at "&${rate('rate', 'rateUnit')}` +
      `&", above the label's greatest rate of "&${rate('greatest', 'greatestUnit')},"")`
    );
  });
  const because = `IF(AND(${reason}<>"",${anyOver(context)}),"Because: "&${reason},"")`;
  return [...lines, because].map((text, at) => place(row + at, 0, formula(text), 'warning'));
};

const heading = (context: CardContext): PageCell[] => {
  const { work, at, says } = workings(context);
  return [
    place(0, 0, formula(`"Round card: "&IF(${says}="",${at(work.mix)},"make it again")`), 'title'),
    place(1, 0, formula(answer(context)), 'answer'),
    place(2, 0, formula(warning(context)), 'warning'),
    ...reasonRows(context),
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

/** Characters of a caution's line: its formula says no more than a person reads at one glance. */
const LONGEST_LINE = 120;

/** About as wide as a weight is printed. */
const WEIGHT = '\u0001\u0001\u0001\u0001\u0001\u0001\u0001';

/** A line of a caution; the barrel's weight in it is worked out anew. */
const cautionLine = (context: CardContext, text: string): CellInput => {
  const { work, at } = workings(context);
  const weight = `"&ROUNDUP(${at(work.heaviest)}-1E-9,0)&" ${context.request.weightUnit}`;
  return text.includes(WEIGHT) ? formula(quoted(text).replace(WEIGHT, weight)) : text;
};

/** Names the products whose label's rate is not given, while it is not. */
const notChecked = (context: CardContext): FormulaText[] => {
  if (context.request.products.every(({ labelKnown }) => labelKnown)) return [];
  const listed = workings(context).words('unchecked');
  const [before, after] = notCheckedText(WEIGHT).split(WEIGHT);
  return [formula(`IF(${listed}="","",${quoted(before!)}&MID(${listed},3,999)&${quoted(after!)})`)];
};

/** Cautions in words of the plan, and those with numbers as formulas; the counts' own stands under the headline. */
const cautionRows = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const { column, cautions } = layout;
  const inLines = (text: string): CellInput[] =>
    lines(text, Math.min(charactersAcross(request, layout), LONGEST_LINE)).map((line) =>
      cautionLine(context, line),
    );
  const inputs = request.cautions.flatMap(({ id, text }): CellInput[] => {
    if (id === 'count-rounding') return [];
    if (id === 'over-label') return [formula(`IF(${anyOver(context)},${quoted(LABEL_MAY_BIND)},"")`)];
    if (id === 'label-rate') return [LABEL_DECIDES, ...notChecked(context)];
    return inLines(id === 'barrel-weight' ? barrelWeightText(WEIGHT, request.products.length > 0) : text);
  });
  return inputs.map((input, index) => place(cautions + index, column.tick, input));
};

/** Every cell of the card and of its workings. */
export const cardCells = (sources: CardSources, request: CardRequest, layout: CardLayout): PageCell[] => {
  const context: CardContext = { sources, request, layout };
  let fill = 0;
  const stations = request.stations.flatMap(({ fills }, index) => {
    const made = stationRows(context, index, fill);
    fill += fills;
    return made;
  });
  return [
    ...heading(context),
    ...countRows(context),
    ...stations,
    ...totalRow(context),
    ...cautionRows(context),
    ...workingCells(context),
    ...cardChecks(context),
  ];
};

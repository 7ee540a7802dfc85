import { clock, COUNTS_APART, howLong, nameKey, type Amount, type Fill } from '../../../addin/core';
import type { CardReading } from '../../../addin/workbook/card/readCard';
import { referenceConvert } from '../../oracles/referenceUnits';
import { alike, rounded } from './alike';
import { compare, type Compare } from './compare';
import { ofTheMeasures } from './measuresAgree';
import type { PlannedNow } from './planNow';
import type { ShownCard } from './shownCard';

const DAY = 86_400;

const ofTheFills = (check: Compare, card: ShownCard, fills: readonly Fill[], unit: string): void => {
  const volume = (litres: number) => referenceConvert(litres, 'L', unit);
  const shown = card.stations.flatMap((station) => station.fills).filter(({ name }) => name !== '');
  check.number('fills on the card', shown.length, fills.length);
  fills.forEach((fill, index) => {
    const row = shown[index];
    if (!row) return;
    const name = `Fill ${fill.number}`;
    check.text('name of a fill', row.name, name);
    check.number(`${name}, make up`, row.makeUp, volume(fill.makeUp));
    check.number(`${name}, pump out`, row.pumpOut, volume(fill.pumpedOut));
    [fill.premixStart, fill.pumpStart, fill.finish].forEach((time, at) =>
      check.text(`${name}, time ${at + 1}`, row.times[at], clock(time / DAY)),
    );
    if (row.hotWater === undefined) return;
    const words = /^([\d.]+) (qt|L|imp qt)$/.exec(String(row.hotWater));
    if (fill.premixWater === undefined || !words) {
      check.text(
        `${name}, hot water`,
        row.hotWater,
        fill.premixWater === undefined ? 'see label' : 'a number',
      );
      return;
    }
    const [told, least] = [Number(words[1]), referenceConvert(fill.premixWater, 'L', words[2]!)];
    const quarters = Number.isInteger(told * 4);
    check.that(
      `${name}, hot water: ${told} is shown, ${least} is least`,
      quarters && told >= least - 1e-8 && told < least + 0.25 + 1e-8,
    );
  });
};

const ofTheBeds = (check: Compare, card: ShownCard, { planned }: PlannedNow, unit: string): void => {
  const { input, plan } = planned!;
  const doses = new Map(input.doses.map(({ sizeClass, dose }) => [nameKey(sizeClass), dose]));
  const plants = (bed: string, size: string) =>
    input.groups
      .filter((group) => nameKey(group.bed) === nameKey(bed) && nameKey(group.sizeClass) === nameKey(size))
      .reduce((sum, group) => sum + group.plants, 0);
  for (const { sizeClass, count, dose, plants: many } of card.counts) {
    const now = plan.counts.find((one) => nameKey(one.sizeClass) === nameKey(sizeClass));
    const asked = doses.get(nameKey(sizeClass));
    check.number(`plants of ${sizeClass}`, many, now?.plants ?? 0);
    if (now) check.number(`count of ${sizeClass}`, count, now.count);
    if (asked !== undefined)
      check.number(`dose of ${sizeClass}`, dose, referenceConvert(asked, 'L', card.doseUnit));
  }
  const beds = card.stations.flatMap((station) => station.beds);
  for (const bed of plan.stations.flatMap((station) => station.beds))
    check.that(
      `bed ${bed} is not on the card`,
      beds.some((one) => nameKey(one.bed) === nameKey(bed)),
    );
  for (const { bed, plants: shown, solution } of beds) {
    let litres = 0;
    card.counts.forEach(({ sizeClass }, index) => {
      const many = plants(bed, sizeClass);
      check.number(`${sizeClass} in ${bed}`, shown[index], many);
      litres += many * (doses.get(nameKey(sizeClass)) ?? 0);
    });
    check.number(`solution of ${bed}`, solution, referenceConvert(litres, 'L', unit));
  }
};

/** Headline, warning and the caution of the barrel's weight. */
const ofTheWords = (check: Compare, card: ShownCard, { planned, garden }: PlannedNow, unit: string): void => {
  const { totals, cautions, stations, counts } = planned!.plan;
  const fills = stations.flatMap((station) => station.fills);
  const answer = /^(\d+) fills?, ([\d.]+) (.+?) made up, (.*)about (.+?), done by (.+)$/.exec(
    String(card.answer),
  );
  check.that(`the headline is “${String(card.answer)}”`, answer !== null);
  if (answer) {
    check.number('fills of the headline', Number(answer[1]), totals.fills);
    const made = referenceConvert(totals.madeUp, 'L', unit);
    check.that(`the headline makes up ${answer[2]}, ${made} is so`, rounded(Number(answer[2]), made, 1));
    check.text('unit of the headline', answer[3]!, unit);
    check.text('length of the headline', answer[5]!, howLong(totals.duration / 60));
    check.text('end of the headline', answer[6]!, clock(totals.finish / DAY));
    const { products } = card.stations[0]!;
    const first = `first fill ${String(card.stations[0]!.fills[0]!.products[0])} of ${products[0]}, `;
    const takes =
      products.length === 1 ? first : products.length === 0 ? '' : `${products.length} products, `;
    check.text('what the headline takes', answer[4]!, takes);
  }
  const apart = totals.given / counts.reduce((sum, { plants, dose }) => sum + plants * dose, 0) - 1;
  const percent = /plants get ([\d.]+) % (more|less)/.exec(String(card.warning));
  if (Math.abs(Math.abs(apart) - COUNTS_APART) > 1e-9) {
    const wanted = cautions.find(({ id }) => id === 'count-rounding')?.text ?? '';
    const plainly = (text: string) => text.replace(/[\d.]+ %/, '');
    check.text('warning of the counts', plainly(String(card.warning ?? '')), plainly(wanted));
    if (percent)
      check.that(
        `the warning says ${percent[1]} %, ${apart} is so`,
        rounded(Number(percent[1]), Math.abs(apart) * 100, 1),
      );
  }
  const weight = /weighs up to (\d+) (lb|kg)/.exec(card.cautions);
  const heaviest = Math.max(...fills.map((fill) => fill.weight));
  check.that(
    `the caution says ${weight?.[0] ?? 'no weight'}, ${heaviest} g is so`,
    weight !== null && Number(weight[1]) === Math.ceil(referenceConvert(heaviest, 'g', weight[2]!) - 1e-8),
  );
  check.that(
    'plain water is said of products',
    garden.mix.length > 0 || card.cautions.includes('plain water'),
  );
};

const inUnit = (amount: Amount, unit: string): number =>
  amount.kind === 'mass'
    ? referenceConvert(amount.mass, 'g', unit)
    : referenceConvert(amount.volume, 'L', unit);

/** What the log and the pane read back. */
const ofTheReading = (check: Compare, reading: CardReading | undefined, { planned }: PlannedNow): void => {
  check.that('the card cannot be read back', reading !== undefined);
  if (!reading) return;
  const { totals } = planned!.plan;
  check.that(`the card is read back as out of date: ${reading.outOfDate}`, reading.outOfDate === undefined);
  check.number('fills read back', reading.fills, totals.fills);
  check.number('plants read back', reading.plants, totals.plants);
  check.number('made up, read back', reading.madeUp, referenceConvert(totals.madeUp, 'L', reading.unit));
  check.number('need read back', reading.need, referenceConvert(totals.need, 'L', reading.unit));
  check.number('finish read back', reading.finish, totals.finish / DAY);
  const cost = planned!.input.mix.length === 0 ? 0 : totals.cost;
  check.that(
    `cost read back: ${reading.cost}, ${cost} is so`,
    cost === undefined ? reading.cost === undefined : alike(reading.cost, cost),
  );
  check.number('products read back', reading.products.length, totals.products.length);
  for (const { product, amount, unit, cost: price } of reading.products) {
    const now = totals.products.find(({ name }) => nameKey(name) === nameKey(product));
    if (!now) {
      check.that(`${product} is not in the mix`, false);
      continue;
    }
    check.number(`${product} in all`, amount, inUnit(now.measured, unit));
    check.that(
      `cost of ${product}: ${price}, ${now.cost} is so`,
      now.cost === undefined ? price === undefined : alike(price, now.cost),
    );
  }
};

/** Everything on a card that follows, which is not what the planner says of the cells now. */
export const disagreements = (
  card: ShownCard,
  reading: CardReading | undefined,
  now: PlannedNow,
): string[] => {
  const check = compare();
  const { garden, planned } = now;
  if (!planned) return ['measures are shown where the planner refuses'];
  const { unit } = garden.rig.barrel;
  const { totals, stations } = planned.plan;
  for (const cell of card.printed)
    check.that(`${String(cell)} is printed`, !/^#[A-Z/0!?]+$/.test(String(cell)));
  ofTheFills(
    check,
    card,
    stations.flatMap(({ fills }) => fills),
    unit,
  );
  ofTheBeds(check, card, now, unit);
  check.number('made up in all', card.total.madeUp, referenceConvert(totals.madeUp, 'L', unit));
  check.number('pumped out in all', card.total.pumped, referenceConvert(totals.need, 'L', unit));
  check.text('done by', card.total.doneBy, clock(totals.finish / DAY));
  ofTheWords(check, card, now, unit);
  ofTheMeasures(check, card, now);
  ofTheReading(check, reading, now);
  return check.found;
};

const MEASURE = /\d ?(cups?|tbsp|tsp|imp fl oz|imp pt|fl oz|mL|oz|g|kg)\b(?!\/)/;
/** What a filled barrel weighs is no measure of a product. */
const WEIGHT = /weighs up to \d+ k?g/;

/** Everything on a card that is out of date, which it ought not to show. */
export const shownOutOfDate = (card: ShownCard, reading: CardReading | undefined): string[] => {
  const check = compare();
  check.text('title', card.title, 'Round card: make it again');
  check.text('headline', card.answer, 'This card is out of date');
  check.that('nothing is said in place of the headline', /[.]$/.test(String(card.warning)));
  const rates = new Set(card.reasons);
  for (const cell of card.printed)
    check.that(
      `“${String(cell)}” is shown`,
      typeof cell !== 'string' || rates.has(cell) || !MEASURE.test(cell.replace(WEIGHT, '')),
    );
  const cells = card.stations.flatMap(({ fills }) => fills.flatMap(({ products }) => products));
  for (const cell of cells)
    check.that(
      `“${String(cell)}” stands where measures do`,
      /^$|make (the card )?again$/.test(String(cell ?? '')),
    );
  for (const cell of card.total.products) check.text('a product in all', cell, '');
  for (const [head, column] of Object.entries(card.measures))
    for (const cell of column)
      check.that(
        `the workings tell ${String(cell)} under ${head}`,
        cell === 0 || cell === '' || cell === null,
      );
  check.that('it is not read back as out of date', reading === undefined || reading.outOfDate !== undefined);
  return check.found;
};

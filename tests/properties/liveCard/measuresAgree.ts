import { nameKey, type FillProduct } from '../../../addin/core';
import type { Product } from '../../../addin/workbook/garden';
import { referenceConvert } from '../../oracles/referenceUnits';
import { alike, rounded } from './alike';
import type { Compare } from './compare';
import type { PlannedNow } from './planNow';
import { amountOf, printedMeasure, rateInLitre, type PrintedAmount } from './printedMeasure';
import type { Shown, ShownCard } from './shownCard';

const KINDS = { tsp: 'volume', 'imp fl oz': 'volume', mL: 'volume', oz: 'mass', g: 'mass' } as const;
type Finest = keyof typeof KINDS;

/** In the unit in which the workings count a product. */
const finestOf = (rateUnit: string): Finest => {
  const measure = rateUnit.trim().split('/')[0]!.trim();
  if (['mg', 'g', 'kg'].includes(measure)) return 'g';
  if (['oz', 'lb'].includes(measure)) return 'oz';
  if (measure.startsWith('imp ')) return 'imp fl oz';
  return ['mL', 'L', 'm3'].includes(measure) ? 'mL' : 'tsp';
};

/** Most that a label allows in so many litres, g or mL; undefined where it says nothing. */
const allowed = (product: Product, litres: number, kind: PrintedAmount['kind']): number | undefined => {
  const { greatestRate, density } = product;
  const each = greatestRate && rateInLitre(greatestRate.value, greatestRate.unit);
  if (!each) return undefined;
  const amount = each.amount * litres;
  if (each.kind === kind) return amount;
  return density === undefined ? undefined : kind === 'mass' ? amount * density : amount / density;
};

const withinLabel = (
  check: Compare,
  card: ShownCard,
  product: Product,
  printed: PrintedAmount,
  litres: number,
  reason: string,
): void => {
  const most = allowed(product, litres, printed.kind);
  if (most === undefined || printed.amount <= most * (1 + 1e-8)) return;
  const named = card.reasons.some(
    (line) => line.startsWith(product.name) && line.includes('above the label'),
  );
  const told = reason !== '' && card.reasons.includes(`Because: ${reason}`);
  check.that(
    `${product.name}: ${printed.amount} where the label allows ${most}, and no reason`,
    named && told,
  );
};

const ofOne = (check: Compare, what: string, cell: Shown | undefined, wanted: FillProduct, unit: Finest) => {
  const kind = KINDS[unit];
  const printed = printedMeasure(String(cell ?? ''), kind);
  check.that(`${what}: “${String(cell)}” is no measure`, printed !== undefined);
  if (!printed) return undefined;
  const { measure, measured } = wanted;
  check.text(what, printed.words, measure.words);
  const amount = measured.kind === 'mass' ? measured.mass : measured.volume * 1000;
  check.that(`${what}: kind`, measured.kind === printed.amount.kind);
  check.that(`${what}: ${printed.amount.amount} for ${amount}`, alike(printed.amount.amount, amount, amount));
  const off = Math.abs(measure.error);
  if (!measure.tooLittle && Math.abs(off - 0.005) > 1e-9)
    check.that(
      `${what}: off by ${printed.off}, ${measure.error} is so`,
      off < 0.005
        ? printed.off === undefined
        : printed.off !== undefined && rounded(printed.off * 100, measure.error * 100, 1),
    );
  return printed;
};

/** The workings of a product's measure: exact and measured. */
const workings = (
  check: Compare,
  what: string,
  card: ShownCard,
  at: number,
  wanted: FillProduct,
  unit: Finest,
) => {
  const counted = ({ kind, ...amount }: FillProduct['amount']): number =>
    kind === 'mass'
      ? referenceConvert((amount as { mass: number }).mass, 'g', unit)
      : referenceConvert((amount as { volume: number }).volume, 'L', unit);
  check.number(`${what}, exact`, card.measures['Exact']![at], counted(wanted.amount));
  check.number(`${what}, measured`, card.measures['Measured']![at], counted(wanted.measured));
};

/** Measures of fills and of the whole round: the planner's, and within the label as printed. */
export const ofTheMeasures = (
  check: Compare,
  card: ShownCard,
  { garden, planned, reason }: PlannedNow,
): void => {
  const { stations, totals } = planned!.plan;
  const names = card.stations[0]!.products;
  const fills = stations.flatMap((station) => station.fills);
  const rows = card.stations.flatMap((station) =>
    station.fills.map((fill) => ({ ...fill, unit: station.unit })),
  );
  names.forEach((name, index) => {
    const row = garden.mix.find(({ product }) => nameKey(product) === nameKey(name));
    const product = garden.products.find((one) => nameKey(one.name) === nameKey(name));
    const place = planned!.input.mix.findIndex((one) => nameKey(one.name) === nameKey(name));
    check.that(`${name} is on the card and not in the mix`, place >= 0);
    if (!row || !product || place < 0) return;
    const unit = finestOf(row.rate.unit);
    let number = 0;
    rows.forEach((shown, line) => {
      const at = line * names.length + index;
      const what = `${shown.name}, ${name}`;
      if (shown.name === '') {
        check.text(`${name} in a fill that is not needed`, shown.products[index], '');
        check.number(`${name} in a fill that is not needed, exact`, card.measures['Exact']![at], 0);
        return;
      }
      const wanted = fills[number]?.products[place];
      number += 1;
      if (!wanted) return;
      const printed = ofOne(check, what, shown.products[index], wanted, unit);
      const litres = referenceConvert(Number(shown.makeUp), shown.unit, 'L');
      if (printed) withinLabel(check, card, { ...product, name }, printed.amount, litres, reason);
      workings(check, what, card, at, wanted, unit);
    });
    const whole = totals.products[place]!.measured;
    const sum = whole.kind === 'mass' ? whole.mass : whole.volume * 1000;
    const words = String(card.total.products[index] ?? '');
    const told = amountOf(words)?.amount ?? (words === '' ? 0 : NaN);
    // Told in decimals where parts of a stock add up to no whole measure; never more than is measured.
    const least = referenceConvert(0.001, unit, whole.kind === 'mass' ? 'g' : 'mL');
    check.that(
      `${name} in all: “${words}”, ${sum} is so`,
      told <= sum * (1 + 1e-9) + least * 1e-5 && told > sum * (1 - 1e-9) - least,
    );
  });
};

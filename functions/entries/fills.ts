import type { Litres, Unit } from '../../addin/core';
import { fewestFills, fillPlan, litres, workingVolume } from '../../addin/core';
import type { Refused } from '../definition';
import { defineFunction } from '../defineFunction';
import { choice, isRefused, number, optional, unit } from '../parameters';
import { heelTooHigh, lostInArithmetic, tooManyFills } from '../sentences';
import { measured, show } from '../telling';

/** More rows than a sheet's plan may have. */
const MOST_ROWS = 500;
// A fill that delivers less than this share of the barrel is lost in the arithmetic.
const NOTHING = 1e-9;
/** Fills that a working tells one by one. */
const TOLD = 12;

interface Barrel {
  readonly barrel: number;
  readonly unit: Unit;
  readonly heel: number;
  readonly fill_line: number;
}

const barrel = {
  barrel: number('What the barrel holds, brim full', { above: 0 }),
  unit: unit('Unit of need, barrel and heel', 'volume'),
  heel: optional(number('Liquid that the pump cannot lift', { atLeast: 0 }), '0', 0),
  fill_line: optional(number('Share of the barrel that is filled', { above: 0, atMost: 1 }), '1', 1),
};

// Fills are the same numbers in every unit, so they are reckoned in the user's: converting there and back would leave
// 49.99999999999999 where 50 is meant.
const asGiven = litres;

/** What one fill delivers. */
const delivers = (v: Barrel): Litres | Refused => {
  const working = workingVolume(asGiven(v.barrel), asGiven(v.heel), v.fill_line);
  if (working > NOTHING * v.barrel) return working;
  return heelTooHigh(measured(v.heel, v.unit), measured(v.barrel * v.fill_line, v.unit));
};

const deliversSteps = (v: Barrel): string => {
  const line = v.fill_line === 1 ? '' : ` × ${show(v.fill_line)}`;
  const heel = v.heel === 0 ? '' : ` − ${measured(v.heel, v.unit)}`;
  const each = measured(v.barrel * v.fill_line - v.heel, v.unit);
  return line + heel === ''
    ? `each fill delivers ${each}`
    : `${measured(v.barrel, v.unit)}${line}${heel} = ${each} from each fill`;
};

export const fills = defineFunction({
  name: 'FILLS',
  summary: 'Fewest fills of a barrel that deliver a need',
  parameters: {
    need: number('What must be pumped out, without the heel', { atLeast: 0 }),
    ...barrel,
  },
  result: { kind: 'number', description: 'Whole fills' },
  errors: ['#VALUE! where the heel is as much as the filled barrel'],
  examples: [
    { args: [200, 60, 'gal'], answer: 4 },
    { args: [200, 60, 'gal', 5, 0.95], answer: 4 },
  ],
  source: 'Definition: fills = need ÷ (barrel × fill line − heel), rounded up',
  compute: (v) => {
    const working = delivers(v);
    if (isRefused(working)) return working;
    const count = fewestFills(asGiven(v.need), working);
    return count === 0 && v.need > 0 ? lostInArithmetic('need', measured(v.need, v.unit)) : count;
  },
  working: (v, count) => {
    const each = v.barrel * v.fill_line - v.heel;
    const ratio = show(v.need / each);
    const up = ratio === show(count) ? '' : `${ratio}, rounded up: `;
    return [
      deliversSteps(v),
      `${measured(v.need, v.unit)} ÷ ${measured(each, v.unit)} = ${up}${show(count)}`,
    ];
  },
});

export const fillSizes = defineFunction({
  name: 'FILLPLAN',
  summary: 'Each fill of a barrel: what to make up and what is pumped out',
  parameters: {
    need: number('What must be pumped out, without the heel', { above: 0 }),
    ...barrel,
    style: optional(
      choice('"full": full barrels and a short last one; "equal": all deliver the same', 'full', 'equal'),
      '"full"',
      'full',
    ),
  },
  result: {
    kind: 'rows',
    description:
      'One row a fill: its number, the volume to make up, the solution pumped out; volumes in unit',
  },
  errors: [
    '#VALUE! where the heel is as much as the filled barrel',
    `#VALUE! for a need of 0 or of more than ${MOST_ROWS} fills`,
  ],
  examples: [
    {
      args: [500, 200, 'L', 10],
      answer: [
        [1, 200, 190],
        [2, 190, 190],
        [3, 120, 120],
      ],
    },
    {
      args: [150, 60, 'gal', 6, 1, 'equal'],
      answer: [
        [1, 56, 50],
        [2, 50, 50],
        [3, 50, 50],
      ],
    },
  ],
  source: 'Definition: Σ pumped out = need, Σ made up = need + heel; the first fill makes up the heel',
  compute: (v) => {
    const working = delivers(v);
    if (isRefused(working)) return working;
    const need = asGiven(v.need);
    const count = fewestFills(need, working);
    if (count === 0) return lostInArithmetic('need', measured(v.need, v.unit));
    if (!(count <= MOST_ROWS)) return tooManyFills(measured(v.need, v.unit), MOST_ROWS);
    const plan = fillPlan(need, asGiven(v.barrel), asGiven(v.heel), v.fill_line, v.style);
    return plan.map((fill) => [fill.number, fill.makeUp, fill.pumpedOut]);
  },
  working: (v, rows) => {
    const told = rows.map(([number, makeUp, pumpedOut]) => {
      const out = measured(pumpedOut!, v.unit);
      return `fill ${number}: make up ${measured(makeUp!, v.unit)}, pump out ${out}`;
    });
    const shown = told.length <= TOLD ? told : [...told.slice(0, TOLD - 2), '…', told[told.length - 1]!];
    const share = `${measured(v.need, v.unit)} ÷ ${rows.length} fills = ${measured(v.need / rows.length, v.unit)} each`;
    return [deliversSteps(v), ...(v.style === 'equal' ? [share] : []), ...shown];
  },
});

import type { Grams } from '../measuring/quantity';
import { findUnit, fromCanonical } from '../measuring/units';
import { namesInWords, quoted, rateInWords, weightUnitOf } from './inWords';
import { overLabel } from './labelRate';
import type { Caution, CautionId, Count, RoundInput } from './round';

/** A barrel that runs out or is left with more than this share of the doses is worth a word. */
export const COUNTS_APART = 0.02;

const caution = (id: CautionId, text: string): Caution => ({ id, text });

/*
 * Cautions with numbers stand here once, for the plan and for the live formulas of a card: each takes what stands in
 * place of its numbers.
 */

export const LABEL_DECIDES = "Never go over the label's rate; the label decides, not this plan.";

export const notCheckedText = (names: string): string =>
  `Not checked, as no greatest rate is given: ${names}.`;

export const LABEL_MAY_BIND = 'The label may be binding where you live: read it and your local rules first.';

/** @param percent such as '14.7 %' */
export const countsApartText = (percent: string, given: 'more' | 'less'): string =>
  `At these counts plants get ${percent} ${given} than their doses, ` +
  `${given === 'more' ? 'and the last go short' : 'and solution is left over'}. Use a finer count step.`;

/** @param weight such as '258 lb' */
export const barrelWeightText = (weight: string, products: boolean): string =>
  `A filled barrel weighs up to ${weight}${products ? ', and what the products add' : ''}. ` +
  'Move it only empty; ask a licensed builder before one stands on a deck or stairs.';

const aboveLabel = (input: RoundInput): readonly Caution[] => {
  const system = input.measures ?? 'metric';
  const over = overLabel(input.mix).map(
    ({ name, rate, greatestRate }) =>
      `${quoted(name)} at ${rateInWords(rate, system)}, label's greatest rate ${rateInWords(greatestRate!, system)}`,
  );
  if (over.length === 0) return [];
  const reason = (input.overLabelReason ?? '').trim();
  return [
    caution(
      'over-label',
      `Above the label: ${over.join('; ')}. Reason given: “${reason}”. ` + LABEL_MAY_BIND,
    ),
  ];
};

const countsApart = (counts: readonly Count[]): readonly Caution[] => {
  const asked = counts.reduce((total, { plants, dose }) => total + plants * dose, 0);
  const given = counts.reduce((total, count) => total + count.plants * count.given, 0);
  const apart = given / asked - 1;
  if (Math.abs(apart) <= COUNTS_APART) return [];
  const percent = `${Math.round(Math.abs(apart) * 1000) / 10} %`;
  return [caution('count-rounding', countsApartText(percent, apart > 0 ? 'more' : 'less'))];
};

const ofTheMix = ({ mix }: RoundInput): readonly Caution[] => {
  if (mix.length === 0)
    return [caution('plain-water', 'No product is in the mix: this round gives plain water.')];
  const unchecked = mix.filter(({ greatestRate }) => greatestRate === undefined).map(({ name }) => name);
  const powders = mix.some(({ form }) => form === 'powder');
  return [
    caution(
      'label-rate',
      LABEL_DECIDES + (unchecked.length === 0 ? '' : ` ${notCheckedText(namesInWords(unchecked))}`),
    ),
    caution(
      'gloves-eyes',
      'Wear waterproof gloves and eye protection when measuring and mixing; follow each label and safety sheet.',
    ),
    ...(powders
      ? [
          caution(
            'dust-mask',
            'Wear a dust mask when measuring powders, out of the wind; follow the safety sheet.',
          ),
          caution(
            'hot-water',
            'Hot water scalds: carry it in a steady bucket and add powder slowly. Some labels forbid hot water: read them.',
          ),
        ]
      : []),
  ];
};

/** Rounded up: a barrel weighs that much and no more. */
const wholeWeight = (mass: Grams, { measures = 'metric' }: RoundInput): string => {
  const unit = findUnit(weightUnitOf(measures))!;
  return `${Math.ceil(fromCanonical(mass, unit) - 1e-9)} ${unit.token}`;
};

const ofTheRig = (heaviest: Grams, input: RoundInput): readonly Caution[] => [
  caution(
    'ground-fault',
    'Plug the pump into an outlet with ground-fault protection. Local electrical code and a licensed electrician decide.',
  ),
  caution(
    'pump',
    "Unplug the pump before you touch it or the liquid, never lift it by the cord, never run it dry; follow the pump's manual.",
  ),
  caution('barrel-weight', barrelWeightText(wholeWeight(heaviest, input), input.mix.length > 0)),
  caution(
    'level-ground-covered',
    'Stand the barrel on firm, level ground, and cover it where children or animals can reach it.',
  ),
  caution(
    'backflow',
    'Use a vacuum breaker at the hose bibb and fix the end of the filling hose above the rim, never in the liquid. ' +
      'Local plumbing code and a licensed plumber decide.',
  ),
];

const OF_THE_GARDEN: readonly Caution[] = [
  caution(
    'dry-plants',
    'Do not feed dry or heat-stressed plants: water them first and wait for cooler weather, as the label says.',
  ),
  caution(
    'runoff',
    'Let nothing run off to drains, ponds or streams; keep the distances of label and local code.',
  ),
];

/**
 * What to mind on this round, the plan's own warnings first, then safety. Each defers to the label, the safety
 * sheet, the pump's manual, local code or a licensed trade.
 *
 * @param heaviest fill of the round with the barrel, g
 */
export const cautionsFor = (
  input: RoundInput,
  counts: readonly Count[],
  heaviest: Grams,
): readonly Caution[] => [
  ...aboveLabel(input),
  ...countsApart(counts),
  ...ofTheMix(input),
  ...ofTheRig(heaviest, input),
  ...OF_THE_GARDEN,
];

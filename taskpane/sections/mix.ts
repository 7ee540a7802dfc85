import type { MixProduct } from '../../addin/core';
import { overLabel } from '../../addin/core';
import { andList } from '../../addin/workbook/fields/holds';
import { unitChoices } from '../../addin/workbook/fields/usualUnits';
import type { Garden } from '../../addin/workbook/garden';
import { askText } from '../asked';
import { offered, whyNoGarden, type WhyNot } from '../offer';
import { mixProductsOf } from '../planning';
import { plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Block, Section, StepState } from '../view';

import { fold } from './fold';
import { barrelFilled, dryRunBlocks, dryRunSentence } from './mixDryRun';
import { goingOn, keeping } from './leading';
import { askMixLines, mixBlocks, rowsOf, type MixLine } from './mixRows';
import { problemBlocks } from './problems';
import { askProduct, productBlocks } from './productFields';

export const askMixName = (state: PaneState, garden: Garden) =>
  askText(state, { section: 'mix', id: 'mix.name', label: 'This mix is called', known: garden.mixName });

/** Products above their label's greatest rate. */
const namesOver = (mix: readonly MixProduct[]): string[] => overLabel(mix).map(({ name }) => name);

/** Whether the sheets hold a mix to plan with. */
export const mixStep = ({ garden }: PaneState): StepState => {
  if (garden === undefined || garden.mix.length === 0) return { kind: 'empty' };
  const wrong = garden.problems.find(({ place }) => place === 'mix');
  if (wrong !== undefined) return { kind: 'attention', why: wrong.sentence };
  const mix = mixProductsOf(garden);
  if ('refused' in mix) return { kind: 'attention', why: mix.refused };
  const over = namesOver(mix);
  if (over.length > 0)
    return { kind: 'attention', why: `${andList(over)} is above the label's greatest rate` };
  return { kind: 'ready', says: plural(mix.length, 'product') };
};

/** The mix as it stands in the pane, typed lines over those of the sheet. */
const typedMix = (
  garden: Garden,
  lines: readonly MixLine[],
): { mix: readonly MixProduct[]; refused?: string } => {
  const mix = mixProductsOf({ ...garden, mix: rowsOf(lines) });
  return 'refused' in mix ? { mix: [], refused: mix.refused } : { mix };
};

const overBlocks = (mix: readonly MixProduct[]): Block[] =>
  namesOver(mix).map((name) => ({
    kind: 'text',
    tone: 'warning',
    text: `${name} is above its label's greatest rate. The round is not planned so, unless you write a reason there; the label may be binding where you live.`,
  }));

/** An empty mix may be kept where it takes the place of another one. */
export const whyNoMix: WhyNot = (state) => {
  const { garden } = state;
  const none = whyNoGarden(state);
  if (garden === undefined || none !== undefined) return none;
  if (garden.products.length === 0) return 'A mix is made of products: add your first product under Mix.';
  const chosen = askMixLines(state, garden).some(({ product }) => product.value !== '');
  return chosen || garden.mix.length > 0
    ? undefined
    : 'Choose a product that goes into the barrel first, and its rate.';
};

export const mixSection = (state: PaneState, garden: Garden): Section => {
  const lines = askMixLines(state, garden);
  const product = askProduct(state, garden);
  const none = garden.products.length === 0;
  const step = mixStep(state);
  const { mix, refused } = typedMix(garden, lines);
  const barrel = barrelFilled(garden);
  const ready = mix.length > 0 && barrel !== undefined;
  const products = productBlocks(product, none);
  const rest: Block[] = none
    ? [{ kind: 'heading', text: 'Your first product' }, ...products]
    : [
        { kind: 'fields', fields: [askMixName(state, garden).field] },
        ...mixBlocks(lines),
        ...(refused === undefined ? [] : [{ kind: 'text', text: refused, tone: 'warning' } as const]),
        ...overBlocks(mix),
        {
          kind: 'actions',
          actions: [
            offered(
              state,
              whyNoMix,
              keeping(state, step, ['mix.'], { id: 'mix.keep', label: 'Keep this mix' }),
            ),
            ...goingOn(state, step, ['mix.'], { id: 'round', label: 'Round' }),
          ],
        },
        ...(ready
          ? dryRunBlocks(mix, barrel, unitChoices(garden.settings.measures, 'hotWater')[0] ?? 'L')
          : []),
        fold(state, 'mix.products', 'Products: change one or add one', products),
      ];
  const answer = ready
    ? dryRunSentence(mix, barrel)
    : none
      ? 'Say what you measure into the barrel'
      : mix.length > 0
        ? `${plural(mix.length, 'product')} in the mix; say how big the barrel is to see what one takes`
        : 'Choose what goes into the barrel, and at which rate';
  return { id: 'mix', title: 'Mix', answer, blocks: [...problemBlocks(garden.problems, ['mix']), ...rest] };
};

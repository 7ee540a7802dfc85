import type { MixRow } from '../../addin/workbook/garden';
import { keepMix, keepProducts, type KeptProduct } from '../../addin/workbook/useCases/keepMix';
import { did, refused, type Act, type Action } from '../action';
import { mixProductsOf } from '../planning';
import { plural } from '../quantityWords';
import { whyNoGarden } from '../offer';
import { askMixName, whyNoMix } from '../sections/mix';
import { askMixLines, mixFault, rowsOf } from '../sections/mixRows';
import { askProduct, productFault } from '../sections/productFields';
import { settled, triedIn } from '../state';

import { bookOf } from './bookOf';

const withoutRow = ({ product, rate }: MixRow): Omit<MixRow, 'row'> => ({ product, rate });

const mix: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const lines = askMixLines(state, garden);
  const fault = mixFault(lines);
  if (fault !== undefined) return refused(fault, triedIn('mix'));
  const rows = rowsOf(lines);
  const usable = mixProductsOf({ ...garden, mix: rows });
  if ('refused' in usable) return refused(usable.refused, triedIn('mix'));
  const name = askMixName(state, garden).value;
  const kept = { mix: rows.map(withoutRow), ...(name === undefined ? {} : { name }) };
  const change = keepMix(snapshot, kept, garden.settings.measures);
  return did(
    `Kept the mix: ${rows.length === 0 ? 'plain water' : plural(rows.length, 'product')}.`,
    change,
    settled(state, 'mix', 'mix.'),
  );
};

const product: Act = (state) => {
  const { garden, snapshot } = bookOf(state);
  const asked = askProduct(state, garden);
  const fault = productFault(garden, asked);
  if (fault !== undefined) return refused(fault, triedIn('mix', 'mix.products'));
  const { known, prefix } = asked;
  const kept: KeptProduct = { ...asked.asked.row, ...(known === undefined ? {} : { row: known.row }) };
  const change = keepProducts(snapshot, [kept], garden.settings.measures);
  const done = settled(state, 'mix', prefix, 'product.pick');
  return did(
    known === undefined ? `Added ${kept.name} to the products.` : `Changed ${kept.name}.`,
    change,
    done,
  );
};

export const mixActions: Readonly<Record<string, Action>> = {
  'mix.keep': { whyNot: whyNoMix, act: mix },
  'product.keep': { whyNot: whyNoGarden, act: product },
};

import { h, type JSX } from 'preact';

import type { Block } from '../view';

import { actionsBlock } from './actions';
import { ChartFigure } from './chartFigure';
import { labelledField } from './field';
import type { Send } from './hands';
import { mark } from './mark';
import { tableBlock } from './table';

type Of<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;

const text = ({ text: words, tone = 'plain' }: Of<'text'>): JSX.Element => {
  if (tone === 'warning') return h('p', { class: 'text warning' }, mark('attention'), h('span', null, words));
  if (tone === 'good') return h('p', { class: 'text good' }, mark('ready'), h('span', null, words));
  return h('p', { class: `text ${tone}` }, words);
};

const fields = ({ legend, fields: entries }: Of<'fields'>, send: Send): JSX.Element => {
  const drawn = entries.map((field) => labelledField(field, send));
  return legend === undefined
    ? h('div', { class: 'fields' }, drawn)
    : h('fieldset', null, h('legend', null, legend), h('div', { class: 'fields' }, drawn));
};

const cautions = ({ items }: Of<'cautions'>): JSX.Element =>
  h(
    'div',
    { class: 'cautions', role: 'group', 'aria-label': 'Cautions' },
    h('p', { class: 'cautions-title' }, 'Cautions'),
    h(
      'ul',
      null,
      items.map((item) => h('li', { key: item }, item)),
    ),
  );

const more = (block: Of<'more'>, send: Send): JSX.Element =>
  h(
    'details',
    {
      class: 'more',
      open: block.open,
      onToggle: (event: Event) => {
        const { open } = event.currentTarget as HTMLDetailsElement;
        if (open !== block.open) send({ kind: 'fold', block: block.id, open });
      },
    },
    h('summary', null, block.label),
    block.open ? h('div', { class: 'more-body' }, blocksOf(block.blocks, send)) : undefined,
  );

const draw = (block: Block, send: Send): JSX.Element => {
  switch (block.kind) {
    case 'heading':
      return h('h3', null, block.text);
    case 'text':
      return text(block);
    case 'steps':
      return h(
        'ol',
        { class: 'do' },
        block.items.map((item) => h('li', { key: item }, item)),
      );
    case 'fields':
      return fields(block, send);
    case 'actions':
      return actionsBlock(block.actions, send);
    case 'table':
      return tableBlock(block.table, send);
    case 'chart':
      return h(ChartFigure, { chart: block.chart });
    case 'cautions':
      return cautions(block);
    case 'more':
      return more(block, send);
  }
};

/** What a block is known by from one drawing to the next, so that a field keeps its place when a block is put before it. */
const nameOf = (block: Block): string => {
  switch (block.kind) {
    case 'fields':
      return block.fields[0]?.id ?? '';
    case 'actions':
      return block.actions[0]?.id ?? '';
    case 'table':
      return block.table.id;
    case 'chart':
      return block.chart.id;
    case 'more':
      return block.id;
    default:
      return '';
  }
};

/** Blocks in their order, each keyed by its kind and name. */
export const blocksOf = (blocks: readonly Block[], send: Send): JSX.Element[] => {
  const seen = new Map<string, number>();
  return blocks.map((block) => {
    const name = `${block.kind} ${nameOf(block)}`;
    const nth = seen.get(name) ?? 0;
    seen.set(name, nth + 1);
    return h('div', { key: `${name} ${nth}`, class: 'block' }, draw(block, send));
  });
};

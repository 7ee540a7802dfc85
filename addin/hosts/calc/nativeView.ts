import type { Button, Block, Step, View } from '../../../taskpane/view';
import { nextLine, stateWords } from '../../../taskpane/wayWords';
import { chartPicture } from './chartPicture';
import { fieldPieces, tablePieces } from './fieldPieces';
import type { NativeButton, NativeView, Piece, Tone } from './wire/pieces';

const text = (key: string, indent: number, tone: Tone, words: string): Piece => ({
  kind: 'text',
  key,
  indent,
  tone,
  text: words,
});

/** A sign after the label, so that a stop's state is seen in black and white. */
const SIGNS = { empty: '', attention: ' !', ready: ' ✓' } as const;

const stepButton = (step: Step): NativeButton => ({
  key: `step ${step.id}`,
  label: step.beside ? step.label : `${step.label}${SIGNS[step.state.kind]}`,
  help: step.beside ? step.label : `${step.label}: ${stateWords(step.state)}`,
  event: { kind: 'open', section: step.id },
  current: step.current,
});

const next = (view: View): Piece[] => {
  const line = nextLine(view);
  if (line === undefined) return [];
  return [text('next', 0, 'quiet', `${line.begins}${line.stop?.label ?? ''}${line.ends}`)];
};

const actionButton = ({ id, label, primary, disabled, why }: Button): NativeButton => ({
  key: id,
  label,
  help: why,
  event: { kind: 'press', action: id },
  primary,
  disabled,
});

const whys = (actions: readonly Button[], indent: number): Piece[] =>
  actions.flatMap(({ id, why }) => (why === undefined ? [] : [text(`${id} why`, indent, 'quiet', why)]));

/** Room for a chart in the narrowest, the usual and the widest panel, pixels. */
const CHART_WIDTHS = [139, 270, 400];

const blockPieces = (block: Block, key: string, indent: number): Piece[] => {
  switch (block.kind) {
    case 'heading':
      return [text(key, indent, 'heading', block.text)];
    case 'text':
      return [text(key, indent, block.tone ?? 'plain', block.text)];
    case 'steps':
      return block.items.map((item, index) =>
        text(`${key} ${index}`, indent, 'plain', `${index + 1}. ${item}`),
      );
    case 'cautions':
      return block.items.map((item, index) => text(`${key} ${index}`, indent, 'quiet', `• ${item}`));
    case 'fields':
      return [
        ...(block.legend === undefined ? [] : [text(`${key} legend`, indent, 'heading', block.legend)]),
        ...block.fields.flatMap((field) => fieldPieces(field, indent)),
      ];
    case 'actions':
      return [
        { kind: 'buttons', key, indent, buttons: block.actions.map(actionButton) },
        ...whys(block.actions, indent),
      ];
    case 'table':
      return tablePieces(block.table, indent);
    case 'chart': {
      const { id, finding, title } = block.chart;
      return [
        text(`${id} title`, indent, 'heading', title),
        text(`${id} finding`, indent, 'plain', finding),
        {
          kind: 'picture',
          key: id,
          indent,
          label: `${title}. ${finding}`,
          drawn: CHART_WIDTHS.map((width) => ({ width, svg: chartPicture(block.chart, width) })),
        },
      ];
    }
    case 'more':
      return [
        {
          kind: 'buttons',
          key: `fold ${block.id}`,
          indent,
          buttons: [
            {
              key: `fold ${block.id}`,
              label: `${block.open ? '▾' : '▸'} ${block.label}`,
              event: { kind: 'fold', block: block.id, open: !block.open },
            },
          ],
        },
        ...(block.open ? blocksPieces(block.blocks, block.id, indent + 1) : []),
      ];
  }
};

const blocksPieces = (blocks: readonly Block[], within: string, indent: number): Piece[] =>
  blocks.flatMap((block, index) => blockPieces(block, `${within} ${index}`, indent));

const news = ({ message, busy }: View): Piece[] => {
  const buttons: NativeButton[] = [
    ...(busy?.canStop
      ? [{ key: 'stop', label: 'Stop', event: { kind: 'press', action: 'stop' } } as const]
      : []),
    ...(message?.undo
      ? [{ key: 'undo', label: 'Undo', event: { kind: 'press', action: 'undo' } } as const]
      : []),
    ...(message
      ? [{ key: 'dismiss', label: 'Close', event: { kind: 'press', action: 'dismiss' } } as const]
      : []),
  ];
  return [
    ...(busy ? [text('busy', 0, 'plain', busy.text)] : []),
    ...(busy?.share === undefined
      ? []
      : [{ kind: 'progress', key: 'progress', indent: 0, label: busy.text, share: busy.share } as const]),
    ...(message ? [text('news', 0, message.tone === 'good' ? 'good' : 'warning', message.text)] : []),
    ...(buttons.length === 0 ? [] : [{ kind: 'buttons', key: 'news buttons', indent: 0, buttons } as const]),
    ...(busy || message ? [{ kind: 'rule', key: 'news rule', indent: 0 } as const] : []),
  ];
};

/** The pane's view as native controls from top to bottom: the way, what is new, and the section. */
export const nativeView = (view: View): NativeView => {
  const { section } = view;
  return {
    section: section.id,
    pieces: [
      { kind: 'buttons', key: 'way', indent: 0, buttons: view.steps.map(stepButton) },
      ...next(view),
      { kind: 'rule', key: 'way rule', indent: 0 },
      ...news(view),
      text('title', 0, 'title', section.title),
      text('answer', 0, 'answer', section.answer),
      ...blocksPieces(section.blocks, section.id, 0),
    ],
  };
};

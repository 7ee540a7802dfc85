import type { Pane } from '../../taskpane/pane';
import type { Block, Field, View } from '../../taskpane/view';

const opened = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) =>
    block.kind === 'more' ? [block, ...(block.open ? opened(block.blocks) : [])] : [block],
  );

/** All that stands in a section, in words, for reading in a test. */
export const wordsOf = ({ section }: View): string[] =>
  opened(section.blocks).flatMap((block) => {
    if (block.kind === 'text' || block.kind === 'heading') return [block.text];
    if (block.kind === 'steps' || block.kind === 'cautions') return block.items;
    return [];
  });

/** Presses, types and looks at a pane as a user does: by labels, never by ids. */
export const drive = (pane: Pane) => {
  const blocks = (): Block[] => opened(pane.view().section.blocks);
  const fields = (): Field[] =>
    blocks().flatMap((block): Field[] => {
      if (block.kind === 'fields') return [...block.fields];
      return block.kind === 'table'
        ? block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string'))
        : [];
    });
  const field = (label: string): Field => {
    const found = fields().find((one) => one.label === label);
    if (found === undefined)
      throw new Error(
        `No field “${label}” in ${pane.view().section.title}: ${fields()
          .map((one) => one.label)
          .join(', ')}.`,
      );
    return found;
  };
  const actions = () => blocks().flatMap((block) => (block.kind === 'actions' ? block.actions : []));
  return {
    field,
    table: (caption: string): string[][] => {
      const found = blocks().find(
        (block) => block.kind === 'table' && block.table.caption.startsWith(caption),
      );
      if (found?.kind !== 'table') throw new Error(`No table “${caption}” in ${pane.view().section.title}.`);
      return found.table.rows.map((row) =>
        row.map((cell) => (typeof cell === 'string' ? cell : `[${cell.value}]`)),
      );
    },
    type: (label: string, value: string) => pane.dispatch({ kind: 'type', field: field(label).id, value }),
    unit: (label: string, value: string) => {
      const found = field(label);
      if (!('unit' in found) || found.unit === undefined || typeof found.unit === 'string')
        throw new Error(`The unit of ${label} is not a choice.`);
      return pane.dispatch({ kind: 'type', field: found.unit.id, value });
    },
    open: (section: string) => pane.dispatch({ kind: 'open', section }),
    unfold: (label: string) => {
      const found = blocks().find((block) => block.kind === 'more' && block.label.startsWith(label));
      if (found?.kind !== 'more') throw new Error(`No fold “${label}” in ${pane.view().section.title}.`);
      return pane.dispatch({ kind: 'fold', block: found.id, open: true });
    },
    press: (label: string) => {
      const found = actions().find((action) => action.label === label);
      if (found === undefined)
        throw new Error(
          `No button “${label}” in ${pane.view().section.title}: ${actions()
            .map((action) => action.label)
            .join(', ')}.`,
        );
      if (found.disabled) throw new Error(`“${label}” cannot be pressed: ${found.why}`);
      return pane.dispatch({ kind: 'press', action: found.id });
    },
    main: (): string | undefined => actions().find(({ primary, disabled }) => primary && !disabled)?.label,
    says: (): string | undefined => pane.view().message?.text,
    answer: (): string => pane.view().section.answer,
    steps: (): Record<string, string> =>
      Object.fromEntries(pane.view().steps.map(({ id, state }) => [id, state.kind])),
  };
};

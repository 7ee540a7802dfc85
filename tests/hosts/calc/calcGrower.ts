import type { NativeView, Piece } from '../../../addin/hosts/calc/wire/pieces';
import type { PaneEvent } from '../../../taskpane/view';
import type { Grower } from '../../taskpane/grower';
import type { Office } from './office';

const fieldOf = (pieces: readonly Piece[], label: string): string | undefined =>
  pieces
    .flatMap((piece) => {
      if (piece.kind === 'toggle') return [{ spoken: piece.label, field: piece.field }];
      if (piece.kind !== 'entry' && piece.kind !== 'choice') return [];
      const unit = piece.kind === 'entry' && typeof piece.unit === 'object' ? [piece.unit] : [];
      return [piece, ...unit];
    })
    // A unit that stands beside the field is read aloud with its label.
    .find(({ spoken }) => spoken === label || spoken.startsWith(`${label}, `))?.field;

/** At the pane of a document of Calc; the sidebar need not be shown. */
export const calcGrower = (office: Office, doc: string): Grower => {
  let view: NativeView | undefined;
  const happens = async (event: PaneEvent): Promise<NativeView> =>
    (view = await office.ask<NativeView>({ do: 'job', doc, request: { event } }));
  const shown = async (): Promise<NativeView> => view ?? office.ask({ do: 'job', doc, request: {} });
  const button = async (label: RegExp): Promise<PaneEvent> => {
    const buttons = (await shown()).pieces.flatMap((piece) =>
      piece.kind === 'buttons' ? piece.buttons : [],
    );
    const found = buttons.find((one) => label.test(one.label));
    if (found === undefined || found.disabled)
      throw new Error(`No button ${label} to press: ${buttons.map((one) => one.label).join(', ')}.`);
    return found.event;
  };
  const escaped = (label: string) => label.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return {
    // A sign after the name tells how the stop stands.
    open: async (stop) => void (await happens(await button(new RegExp(`^${escaped(stop)}( [!✓])?$`)))),
    unfold: async (label) => {
      const event = await button(new RegExp(`^[▾▸] ${escaped(label)}$`));
      if (event.kind === 'fold' && event.open) await happens(event);
    },
    fill: async (label, value) => {
      const field = fieldOf((await shown()).pieces, label);
      if (field === undefined) throw new Error(`No field “${label}” in ${view?.section}.`);
      await happens({ kind: 'type', field, value });
    },
    press: async (label) => {
      await happens({ kind: 'press', action: 'dismiss' });
      const { pieces } = await happens(await button(new RegExp(`^${escaped(label)}$`)));
      const news = pieces.find(({ key }) => key === 'news');
      if (news?.kind !== 'text' || news.tone !== 'good')
        throw new Error(`“${label}”: ${news?.kind === 'text' ? news.text : 'nothing was said'}`);
      return news.text;
    },
  };
};

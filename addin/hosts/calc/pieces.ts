import type { PaneEvent } from '../../../taskpane/view';

export type Tone =
  'title' | 'answer' | 'heading' | 'label' | 'plain' | 'quiet' | 'warning' | 'good' | 'error' | 'news';

export interface NativeButton {
  readonly key: string;
  readonly label: string;
  /** Shown when pointed at. */
  readonly help?: string;
  readonly event: PaneEvent;
  readonly primary?: boolean;
  readonly current?: boolean;
  readonly disabled?: boolean;
}

export interface NativeChoice {
  readonly key: string;
  readonly field: string;
  readonly label: string;
  /** Read aloud in place of the label. */
  readonly spoken: string;
  readonly value: string;
  readonly values: readonly string[];
  readonly shown: readonly string[];
  readonly disabled?: boolean;
}

/** One thing that Calc draws with a control of its own, from top to bottom; `indent` counts levels of folding. */
export type Piece = { readonly key: string; readonly indent: number } & (
  | { readonly kind: 'text'; readonly tone: Tone; readonly text: string }
  | {
      readonly kind: 'entry';
      readonly field: string;
      readonly label: string;
      readonly spoken: string;
      readonly value: string;
      readonly help?: string;
      readonly disabled?: boolean;
      /** True for words, which need more room than a number. */
      readonly words?: boolean;
      readonly unit?: string | NativeChoice;
    }
  | ({ readonly kind: 'choice' } & NativeChoice)
  | {
      readonly kind: 'toggle';
      readonly field: string;
      readonly label: string;
      readonly on: boolean;
      readonly disabled?: boolean;
    }
  | { readonly kind: 'buttons'; readonly buttons: readonly NativeButton[] }
  | {
      readonly kind: 'table';
      readonly label: string;
      readonly columns: readonly { readonly label: string; readonly numeric: boolean }[];
      readonly rows: readonly (readonly string[])[];
    }
  | {
      readonly kind: 'picture';
      readonly label: string;
      /** The same picture for panels of several widths, pixels, the narrowest first. */
      readonly drawn: readonly { readonly width: number; readonly svg: string }[];
    }
  | { readonly kind: 'progress'; readonly label: string; readonly share: number }
  | { readonly kind: 'rule' }
);

/** The pane as Calc draws it. */
export interface NativeView {
  readonly section: string;
  readonly pieces: readonly Piece[];
}

import type { PaneLook } from './paneLook';
import type { PaneEvent } from './view';

/** The selected cell, where it holds a formula. */
export interface SelectedCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** What it shows, as it shows it. */
  readonly shows: string;
  /** The formula as the user types it, where his program spells it in another way than the port. */
  readonly typed?: string;
  /** Why it shows an error, where the host knows of something that the formula does not tell. */
  readonly why?: string;
}

/** What the host tells of the user's own hand; what `Workbook.apply` writes is not told. */
export type HostEvent = Extract<PaneEvent, { kind: 'workbookChanged' | 'calculated' | 'selected' }>;

/** What the pane asks of its host besides the workbook. A host leaves out what it cannot do, and the pane then offers no button for it. */
export interface HostServices {
  /** Today on the user's calendar, yyyy-mm-dd. */
  today(): string;
  /** A first guess from the user's locale; the workbook's own setting wins. */
  readonly measures: 'US' | 'metric';
  /** Shows the sheet as it prints and asks the system to print it. */
  print?(sheet: string): Promise<void>;
  /** Where `print` is left out: one sentence that tells how the user prints the card, with its full stop. */
  readonly howToPrint?: string;
  /** Hands the user a file. */
  download?(name: string, mime: string, text: string): Promise<void>;
  /** Undefined where the selected cell holds no formula, or none that has its result yet. */
  selected?(): Promise<SelectedCell | undefined>;
  /** Takes the last step back. */
  undo?(): Promise<void>;
  /** True while formulas are worked out that were no longer waited for; a `calculated` event follows. */
  calculating?(): boolean;
  /** Calls the listener until the returned function is called. */
  watch?(listener: (event: HostEvent) => void): () => void;
  /** How the pane stood when the workbook was last open, as `keepLook` was told; anything else is taken for nothing. */
  readonly keptLook?: unknown;
  /** Keeps with the workbook how the pane stands; the user's data is never part of it. */
  keepLook?(look: PaneLook): void;
}

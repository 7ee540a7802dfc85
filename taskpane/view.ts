/**
 * What the pane shows, as data. A section is a function from state to `Section`; a host draws it with its own
 * controls. Plain JSON throughout, so that a view can cross a pipe.
 */

export type StepState =
  | { readonly kind: 'empty' }
  | { readonly kind: 'attention'; readonly why: string }
  | { readonly kind: 'ready'; readonly says?: string };

/** One stop of the way Garden → Rig → Mix → Round → Log (and Tank what-if beside it). */
export interface Step {
  readonly id: string;
  readonly label: string;
  readonly state: StepState;
  readonly current: boolean;
  /** Stands beside the way, not on it: no number, no part of what comes next. */
  readonly beside?: boolean;
}

interface FieldBase {
  readonly id: string;
  readonly label: string;
  /** What was typed, kept as typed even where it is wrong. */
  readonly value: string;
  readonly help?: string;
  /** Why the value is not accepted; shown beside the field. */
  readonly error?: string;
  readonly disabled?: boolean;
}

export type Field =
  | (FieldBase & {
      readonly kind: 'number' | 'text' | 'date' | 'time';
      /** A unit shown after the field, or a choice of units with its own field id. */
      readonly unit?:
        string | { readonly id: string; readonly value: string; readonly choices: readonly string[] };
    })
  | (FieldBase & {
      readonly kind: 'choice';
      readonly choices: readonly { readonly value: string; readonly label: string }[];
    })
  /** value is 'yes' or ''. */
  | (FieldBase & { readonly kind: 'toggle' });

export interface Button {
  readonly id: string;
  readonly label: string;
  /** The one next thing to do. */
  readonly primary?: boolean;
  readonly disabled?: boolean;
  /** Why it cannot be done now. */
  readonly why?: string;
}

export interface Table {
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly { readonly label: string; readonly numeric?: boolean }[];
  /** A cell is text, or a field drawn in place (its label is read out, not shown). */
  readonly rows: readonly (readonly (string | Field)[])[];
  /** Index of rows to point out, and the word that says why ("smallest that fits"). */
  readonly marked?: readonly { readonly row: number; readonly word: string }[];
}

export interface Chart {
  readonly id: string;
  readonly type: 'bar' | 'line';
  readonly title: string;
  /** The finding in words. */
  readonly finding: string;
  readonly labels: readonly string[];
  readonly series: readonly {
    readonly name: string;
    readonly unit: string;
    readonly values: readonly number[];
  }[];
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly tone?: 'plain' | 'quiet' | 'warning' | 'good' }
  | { readonly kind: 'steps'; readonly items: readonly string[] }
  | { readonly kind: 'fields'; readonly legend?: string; readonly fields: readonly Field[] }
  | { readonly kind: 'actions'; readonly actions: readonly Button[] }
  | { readonly kind: 'table'; readonly table: Table }
  | { readonly kind: 'chart'; readonly chart: Chart }
  | { readonly kind: 'cautions'; readonly items: readonly string[] }
  /** Folded until opened. */
  | {
      readonly kind: 'more';
      readonly id: string;
      readonly label: string;
      readonly open: boolean;
      readonly blocks: readonly Block[];
    };

export interface Section {
  readonly id: string;
  readonly title: string;
  /** The answer first, in words and with the numbers that matter. */
  readonly answer: string;
  readonly blocks: readonly Block[];
}

/**
 * Everything a host draws. Besides the sections' own actions the pane takes these: `undo` (the message's), `dismiss`
 * (the message's), `stop` (the long work's), `go.<section>` (the same as opening that section).
 */
export interface View {
  readonly steps: readonly Step[];
  /** What comes next and where; left out where nothing is left to do. */
  readonly next?: { readonly section: string; readonly says: string };
  readonly section: Section;
  /** What the last action did, or why it did nothing; announced politely. */
  readonly message?: { readonly tone: 'good' | 'warning'; readonly text: string; readonly undo?: boolean };
  /** Long work under way. */
  readonly busy?: { readonly text: string; readonly share?: number; readonly canStop: boolean };
}

/** What the user did. */
export type PaneEvent =
  | { readonly kind: 'open'; readonly section: string }
  | { readonly kind: 'type'; readonly field: string; readonly value: string }
  | { readonly kind: 'press'; readonly action: string }
  | { readonly kind: 'fold'; readonly block: string; readonly open: boolean }
  /** The cell or its neighbourhood changed by the user's hand, or another cell was selected. */
  | { readonly kind: 'workbookChanged' }
  /** Formulas have other results now; the user did nothing. */
  | { readonly kind: 'calculated' }
  | { readonly kind: 'selected'; readonly sheet: string; readonly row: number; readonly column: number };

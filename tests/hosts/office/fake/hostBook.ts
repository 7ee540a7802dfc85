type Awaitable<T> = T | Promise<T>;

/** Cells of a sheet, by its id. */
export interface Cells {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** What the program hands over of a cell. */
export interface HostCell {
  readonly value: string | number | boolean;
  readonly formula: string | number | boolean;
  readonly type: 'Empty' | 'String' | 'Double' | 'Boolean' | 'Error';
  readonly format: string;
}

/** What is written to a cell; null leaves it as it is. */
export type HostInput = string | number | boolean | null;

export interface HostChart {
  readonly name: string;
  readonly type: string;
  readonly title: string;
  readonly below: string;
  readonly legend: boolean;
  readonly from?: Cells;
  readonly to?: Cells;
  readonly series: readonly { readonly name: string; readonly values?: Cells; readonly labels?: Cells }[];
}

export interface HostRule {
  readonly rule: { readonly list?: { readonly source: string; readonly inCellDropDown: boolean } };
  readonly ignoreBlanks: boolean;
  readonly errorAlert: object;
  readonly prompt: object;
}

export interface HostPage {
  readonly orientation: string;
  readonly zoom: object;
  /** Points by property. */
  readonly margins: Readonly<Record<string, number>>;
  readonly area?: string;
  readonly titleRows?: { readonly row: number; readonly rows: number };
}

/** The workbook behind the object model, as much of it as the fake of the model needs. Sheets are told by their ids. */
export interface HostBook {
  sheets(): Awaitable<readonly { readonly id: string; readonly name: string }[]>;
  active(): Awaitable<string>;
  activate(sheet: string): Awaitable<void>;
  select(cells: Cells): Awaitable<void>;
  addSheet(name: string): Awaitable<string>;
  deleteSheet(id: string): Awaitable<void>;
  /** Cells that hold something, or, with `drawn`, those with a look of their own too. */
  used(sheet: string, drawn: boolean): Awaitable<Cells | undefined>;
  read(cells: Cells): Awaitable<readonly (readonly HostCell[])[]>;
  write(cells: Cells, inputs: readonly (readonly HostInput[])[]): Awaitable<void>;
  setFormats(cells: Cells, formats: readonly (readonly (string | null)[])[]): Awaitable<void>;
  /** A property of the cells' look, such as "font.bold"; null where they differ. */
  look(cells: Cells, property: string): Awaitable<unknown>;
  setLook(cells: Cells, property: string, value: unknown): Awaitable<void>;
  width(sheet: string, column: number): Awaitable<number>;
  setWidth(sheet: string, column: number, points: number): Awaitable<void>;
  merges(sheet: string): Awaitable<readonly Cells[]>;
  merge(cells: Cells): Awaitable<void>;
  unmerge(cells: Cells): Awaitable<void>;
  frozen(sheet: string): Awaitable<{ readonly rows: number; readonly columns: number }>;
  freeze(sheet: string, rows: number, columns: number): Awaitable<void>;
  names(): Awaitable<readonly { readonly name: string; readonly formula: string }[]>;
  setName(name: string, formula: string): Awaitable<void>;
  deleteName(name: string): Awaitable<void>;
  /** The rule of one cell. */
  rule(sheet: string, row: number, column: number): Awaitable<HostRule | undefined>;
  setRule(cells: Cells, rule: HostRule | undefined): Awaitable<void>;
  notes(sheet: string, kind: 'note' | 'comment'): Awaitable<readonly HostNote[]>;
  /** Empty text takes the note away. */
  setNote(
    sheet: string,
    kind: 'note' | 'comment',
    row: number,
    column: number,
    text: string,
  ): Awaitable<void>;
  charts(sheet: string): Awaitable<readonly HostChart[]>;
  /** Puts a chart in the place of the one at an index, adds one at the end, or takes it away. */
  setChart(sheet: string, at: number, chart: HostChart | undefined): Awaitable<void>;
  page(sheet: string): Awaitable<HostPage>;
  setPage(sheet: string, page: HostPage): Awaitable<void>;
  isProtected(sheet: string | undefined): Awaitable<boolean>;
  isReadOnly(): Awaitable<boolean>;
  calculation(): Awaitable<'Done' | 'Calculating' | 'Pending'>;
  /** Carries out what was put off; called at the end of each batch. */
  flush?(): Promise<void>;
  /** Everything as it stands, and back to it. */
  state?(): unknown;
  restore?(state: unknown): void;
}

export interface HostNote {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

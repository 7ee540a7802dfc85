import { fixedReference } from '../../../addin/workbook/address';
import type { Area, Edit } from '../../../addin/workbook/change';
import type { Outline } from '../../../addin/workbook/port';
import type { TestPage } from '../workbench/openTestPage';
import { workbookOf } from './books';
import { sheetOf } from './cells';
import type { Office } from './office';

const BEDS = 'Beds';
const CARD = 'Card';

const area = (sheet: string, row: number, column: number, rows = 1, columns = 1) => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

/** One of everything that lies on cells or beside them. */
export const DRESSED: readonly Edit[] = [
  { kind: 'addSheet', sheet: BEDS },
  { kind: 'addSheet', sheet: CARD },
  {
    kind: 'write',
    sheet: BEDS,
    row: 0,
    column: 0,
    cells: [
      ['Beds', null, null],
      ['Bed', 'Roses', 'Fed on'],
      ['East', 24, 46_145],
      ['West', 3.5, 46_145],
    ],
  },
  {
    kind: 'write',
    sheet: CARD,
    row: 0,
    column: 0,
    cells: [
      ['Round', null],
      ['East', 1],
    ],
  },
  { kind: 'format', area: area(BEDS, 2, 2, 2, 1), format: 'yyyy-mm-dd' },
  { kind: 'format', area: area(BEDS, 2, 1, 2, 1), format: '0.00" L"' },
  { kind: 'style', area: area(BEDS, 0, 0), style: 'title' },
  { kind: 'style', area: area(BEDS, 1, 0, 1, 3), style: 'header' },
  { kind: 'style', area: area(BEDS, 2, 0, 2, 1), style: 'input' },
  { kind: 'wrap', area: area(BEDS, 1, 1) },
  { kind: 'merge', area: area(BEDS, 0, 0, 1, 3) },
  { kind: 'width', sheet: BEDS, column: 0, columns: 1, characters: 24 },
  { kind: 'freeze', sheet: BEDS, rows: 2, columns: 1 },
  { kind: 'list', area: area(BEDS, 2, 0, 20, 1), source: ['East', 'West'], message: 'Give a bed.' },
  { kind: 'list', area: area(CARD, 1, 0, 4, 1), source: area(BEDS, 2, 0, 2, 1), message: 'From Beds.' },
  { kind: 'name', name: 'Bed_table', area: area(BEDS, 1, 0, 3, 3) },
  { kind: 'note', sheet: BEDS, row: 2, column: 1, text: 'Counted in May.\nTwice.' },
  { kind: 'page', area: area(CARD, 0, 0, 12, 4), landscape: true, repeatRows: 1 },
  {
    kind: 'chart',
    id: 'roses',
    sheet: BEDS,
    row: 8,
    column: 0,
    type: 'bar',
    title: 'Roses by bed',
    finding: 'The east bed has most.',
    labels: area(BEDS, 2, 0, 2, 1),
    series: [{ name: 'Roses', values: area(BEDS, 2, 1, 2, 1) }],
  },
];

/** What a workbook shows of `DRESSED`, told alike by both hosts. */
export const WANTED = {
  merges: ['Beds 0 0 1 3'],
  names: ['Bed_table Beds 1 0 3 3'],
  shows: ['2026-05-03', '24.00 L'],
  formats: ['yyyy-mm-dd', '0.00" L"'],
  looks: ['bold #572a5c', 'bold #262229 on #ece7ee', '#262229 on #fffdf5'],
  wrapped: [true, false],
  frozen: { rows: 2, columns: 1 },
  lists: ['East,West: Give a bed.', 'none', 'Beds!$A$3:$A$4: From Beds.'],
  note: 'Counted in May.\nTwice.',
  charts: ['Roses by bed, 1'],
  page: { landscape: true, repeatRows: 1 },
};
/** In characters; Calc counts them in another font. */
export const WIDTH = 24;
export type Dress = typeof WANTED & { readonly width: number };

/** Calc keeps a format for a language. */
const plainFormat = (format: string): string => format.replace(/^\[\$-[^\]]*\]/, '').toLowerCase();
const place = ({ sheet, row, column, rows, columns }: Area): string =>
  [sheet, row, column, rows, columns].join(' ');
const sheetParts = ({ sheets, names }: Outline): Pick<Dress, 'merges' | 'names'> => ({
  merges: sheets.flatMap(({ merges }) => merges.map(place)),
  names: Object.entries(names).map(([name, area]) => `${name} ${place(area)}`),
});
const look = (bold: boolean, colour: string, fill: string | undefined): string =>
  `${bold ? 'bold ' : ''}${colour}${fill === undefined ? '' : ` on ${fill}`}`.toLowerCase();
const chart = ({ title, series }: { readonly title: string; readonly series: number }): string =>
  `${title}, ${series}`;

export const dressInCalc = async (office: Office, doc: string): Promise<Dress> => {
  const at = <Answer>(what: string, sheet: string, row: number, column: number) =>
    office.ask<Answer>({ do: what, doc, sheet, row, column });
  const hex = (colour: number): string => `#${colour.toString(16).padStart(6, '0')}`;
  const lookOf = async (row: number): Promise<string> => {
    const [weight, , colour, , fill] = await at<[number, number, number, string, number]>(
      'look',
      BEDS,
      row,
      0,
    );
    return look(weight > 100, hex(colour), fill < 0 ? undefined : hex(fill));
  };
  const rule = async (sheet: string, row: number): Promise<string> => {
    const told = await at<{ formula: string; message: string } | null>('list_rule', sheet, row, 0);
    if (told === null) return 'none';
    const source = told.formula.replaceAll('"', '').replaceAll(';', ',');
    return `${source.replace(/^\$(\w+)\./, '$1!')}: ${told.message}`;
  };
  const page = await office.ask<Dress['page']>({ do: 'page', doc, sheet: CARD });
  const shown = await sheetOf(office, doc, BEDS).cells('B3:C3');
  return {
    ...sheetParts(await workbookOf(office, doc).outline()),
    shows: [shown[0]![1]!.shows, shown[0]![0]!.shows],
    formats: [
      plainFormat(await at('number_format', BEDS, 2, 2)),
      plainFormat(await at('number_format', BEDS, 2, 1)).replace('l"', 'L"'),
    ],
    looks: [await lookOf(0), await lookOf(1), await lookOf(2)],
    wrapped: [await at('wrapped', BEDS, 1, 1), await at('wrapped', BEDS, 1, 0)],
    frozen: await office.ask({ do: 'frozen', doc, sheet: BEDS }),
    lists: [await rule(BEDS, 21), await rule(BEDS, 22), await rule(CARD, 4)],
    note: await at('note', BEDS, 2, 1),
    charts: (await office.ask<Parameters<typeof chart>[0][]>({ do: 'charts', doc, sheet: BEDS })).map(chart),
    page: { landscape: page.landscape, repeatRows: page.repeatRows },
    width: await office.ask({ do: 'width', doc, sheet: BEDS, column: 0 }),
  };
};

interface BenchStyle {
  readonly bl?: number;
  readonly cl?: { readonly rgb?: string };
  readonly bg?: { readonly rgb?: string };
}

export const dressInBench = async (bench: TestPage): Promise<Dress> => {
  const at = async <Answer>(what: string, sheet: string, row: number, column: number): Promise<Answer> =>
    bench.call(what, sheet, row, column);
  const lookOf = async (row: number): Promise<string> => {
    const { bl, cl, bg } = JSON.parse(await at('look', BEDS, row, 0)) as BenchStyle;
    return look(bl === 1, cl?.rgb ?? 'no colour', bg?.rgb);
  };
  const rule = async (sheet: string, row: number): Promise<string> => {
    const told = await at<{ source: string[] | Area; message: string } | undefined>('list', sheet, row, 0);
    if (!told) return 'none';
    const { source, message } = told;
    return `${Array.isArray(source) ? source.join(',') : fixedReference(source).replaceAll("'", '')}: ${message}`;
  };
  const page = (await bench.call('page', CARD)) as Dress['page'];
  return {
    ...sheetParts(await bench.call('outline')),
    shows: [await at('shows', BEDS, 2, 2), await at('shows', BEDS, 2, 1)],
    formats: [
      plainFormat(await at('format', BEDS, 2, 2)),
      plainFormat(await at('format', BEDS, 2, 1)).replace('l"', 'L"'),
    ],
    looks: [await lookOf(0), await lookOf(1), await lookOf(2)],
    wrapped: [await at('wrapped', BEDS, 1, 1), await at('wrapped', BEDS, 1, 0)],
    frozen: await bench.call('frozen', BEDS),
    lists: [await rule(BEDS, 21), await rule(BEDS, 22), await rule(CARD, 4)],
    note: await at('note', BEDS, 2, 1),
    charts: ((await bench.call('charts', BEDS)) as Parameters<typeof chart>[0][]).map(chart),
    page: { landscape: page.landscape, repeatRows: page.repeatRows },
    width: await bench.call('width', BEDS, 0),
  };
};

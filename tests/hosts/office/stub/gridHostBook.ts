import { openBook, type Grid } from '../../../../addin/hosts/workbench/grid/openGrid';
import { listRuleAt } from '../../../../addin/hosts/workbench/grid/listRules';
import { blockOf, outlineOf, sheetNamed } from '../../../../addin/hosts/workbench/grid/readBook';
import type { GridWorkbook } from '../../../../addin/hosts/workbench/gridWorkbook';
import { charactersOf } from '../../../../addin/hosts/office/edits/widths';
import { LOOKS } from '../../../../addin/hosts/office/edits/looks';
import { fixedReference } from '../../../../addin/workbook/address';
import type { Area, CellInput, Edit, StyleToken } from '../../../../addin/workbook/change';
import { areaOfReference } from '../../../../addin/workbook/references';
import { asTyped } from '../fake/asTyped';
import { restingLook } from '../fake/restingLook';
import type { Cells, HostBook, HostCell, HostChart, HostInput, HostPage, HostRule } from '../fake/hostBook';

type Props = Record<string, unknown>;

/** The token whose look was drawn with these properties: what a batch drew must be one of them, whole. */
const tokenOf = (props: Props): StyleToken => {
  const found = Object.entries(LOOKS).find(
    ([, { bold, italic, size, ink, ground, align }]) =>
      props['font.bold'] === bold &&
      props['font.italic'] === italic &&
      props['font.size'] === size &&
      props['font.color'] === ink.toUpperCase() &&
      props['format.horizontalAlignment'] === align &&
      (ground === undefined
        ? props['fill.pattern'] === 'None'
        : props['fill.color'] === ground.toUpperCase()),
  );
  if (!found) throw new Error(`No look was drawn like this: ${JSON.stringify(props)}`);
  return found[0] as StyleToken;
};

/**
 * The workbench's grid behind the fake of the object model: what a batch does to the model becomes edits of the grid,
 * written when the batch is over or something is read.
 */
export const gridHostBook = (grid: Grid, workbook: GridWorkbook): HostBook & { flush(): Promise<void> } => {
  let pending: Edit[] = [];
  const drawn = new Map<string, { area: Area; props: Props }>();
  const ruled = new Map<string, { area: Area; rule: HostRule | undefined }>();
  const looks: { cells: Cells; property: string; value: unknown }[] = [];
  const widths = new Map<string, number>();
  const charts = new Map<string, HostChart[]>();
  const changedCharts = new Set<string>();
  const pages = new Map<string, HostPage>();
  const changedPages = new Set<string>();

  const nameOf = (id: string): string => {
    const sheet = openBook(grid).getSheetBySheetId(id);
    if (!sheet) throw new Error(`no sheet ${id}`);
    return sheet.getSheetName();
  };
  const idOf = (name: string): string => sheetNamed(grid, name).getSheetId();
  const areaOf = ({ sheet, row, column, rows, columns }: Cells): Area => ({
    sheet: nameOf(sheet),
    row,
    column,
    rows,
    columns,
  });
  const cellsOf = ({ sheet, row, column, rows, columns }: Area): Cells => ({
    sheet: idOf(sheet),
    row,
    column,
    rows,
    columns,
  });

  const chartEdit = (sheet: string, chart: HostChart): Edit => ({
    kind: 'chart',
    id: chart.name.replace(/^Wandcount /, ''),
    sheet: nameOf(sheet),
    row: chart.from?.row ?? 0,
    column: chart.from?.column ?? 0,
    type: chart.type === 'LineMarkers' ? 'line' : 'bar',
    title: chart.title,
    finding: chart.below,
    labels: areaOf(chart.series[0]!.labels!),
    series: chart.series.map(({ name, values }) => ({ name, values: areaOf(values!) })),
  });

  const takeUp = (): Edit[] => [
    ...pending.splice(0),
    ...[...drawn.values()].map(({ area, props }): Edit => ({ kind: 'style', area, style: tokenOf(props) })),
    ...[...ruled.values()].flatMap(({ area, rule }): Edit[] => {
      const source = rule?.rule.list?.source;
      if (source === undefined) return [];
      const { message = '' } = (rule?.errorAlert ?? {}) as { message?: string };
      return [
        {
          kind: 'list',
          area,
          source: source.startsWith('=') ? areaOfReference(source)! : source.split(','),
          message,
        },
      ];
    }),
    ...[...changedPages].flatMap((id): Edit[] => {
      const page = pages.get(id);
      const area = page?.area && areaOfReference(`'${nameOf(id).replaceAll("'", "''")}'!${page.area}`);
      if (!page || !area) return [];
      const { verticalFitToPages: pagesHigh } = page.zoom as Excel.PageLayoutZoomOptions;
      return [
        {
          kind: 'page',
          area,
          landscape: page.orientation === 'Landscape',
          repeatRows: page.titleRows?.rows ?? 0,
          ...(pagesHigh === undefined ? {} : { pagesHigh }),
        },
      ];
    }),
    ...[...changedCharts].flatMap((key): Edit[] => {
      const [sheet = '', name = ''] = key.split('\n');
      const chart = charts.get(sheet)?.find((one) => one.name === name);
      return chart && !/\((new|old)\)$/.test(name) ? [chartEdit(sheet, chart)] : [];
    }),
  ];

  const flush = async (): Promise<void> => {
    const edits = takeUp();
    for (const kept of [drawn, ruled, changedCharts, changedPages]) kept.clear();
    if (edits.length > 0) await workbook.apply({ title: 'Batch', edits });
  };

  const inputOf = (input: HostInput): CellInput | undefined => {
    if (input === null || typeof input !== 'string') return input === null ? undefined : input;
    const typed = asTyped(input, false);
    if (typed.kind === 'empty') return null;
    if (typed.kind === 'formula') return { formula: typed.formula };
    if (typed.kind === 'error') throw new Error(`The grid takes no ${typed.error}.`);
    return typed.value;
  };

  const formatAt = (id: string, row: number, column: number): string =>
    openBook(grid).getSheetBySheetId(id)!.getRange(row, column).getCellStyleData('cell')?.n?.pattern ??
    'General';

  return {
    flush,
    sheets: () =>
      openBook(grid)
        .getSheets()
        .map((sheet) => ({ id: sheet.getSheetId(), name: sheet.getSheetName() })),
    active: () => openBook(grid).getActiveSheet().getSheetId(),
    activate: async (id) => {
      pending.push({ kind: 'activate', sheet: nameOf(id), row: 0, column: 0 });
    },
    select: ({ sheet, row, column }) => {
      pending = pending.filter(({ kind }) => kind !== 'activate');
      pending.push({ kind: 'activate', sheet: nameOf(sheet), row, column });
    },
    addSheet: async (name) => {
      await flush();
      await workbook.apply({ title: 'Batch', edits: [{ kind: 'addSheet', sheet: name }] });
      return idOf(name);
    },
    deleteSheet: (id) => void openBook(grid).deleteSheet(id),
    used: async (id) => {
      await flush();
      await grid.settled();
      const sheet = outlineOf(grid).sheets.find(({ name }) => name === nameOf(id));
      return sheet && sheet.rows > 0 ? { sheet: id, row: 0, column: 0, rows: sheet.rows, columns: sheet.columns } : undefined; // prettier-ignore
    },
    read: async (cells) => {
      await flush();
      await grid.settled();
      return blockOf(grid, areaOf(cells)).cells.map((line, down) =>
        line.map(({ value, formula, error }, across): HostCell => {
          const format = formatAt(cells.sheet, cells.row + down, cells.column + across);
          if (error !== undefined) return { value: error, formula: formula ?? error, type: 'Error', format };
          const shown = value ?? '';
          const type = value === null && formula === undefined ? 'Empty' : ({ string: 'String', number: 'Double', boolean: 'Boolean' } as const)[typeof shown as 'string']; // prettier-ignore
          return { value: shown, formula: formula ?? shown, type, format };
        }),
      );
    },
    write: (cells, inputs) => {
      const { sheet, row, column } = areaOf(cells);
      pending.push({
        kind: 'write',
        sheet,
        row,
        column,
        cells: inputs.map((line) => line.map(inputOf)) as CellInput[][],
      });
    },
    setFormats: (cells, formats) => {
      const area = areaOf(cells);
      const [first] = formats.flat();
      if (first && formats.every((line) => line.every((format) => format === first)))
        pending.push({ kind: 'format', area, format: first }); // prettier-ignore
      else
        formats.forEach((line, down) =>
          line.forEach((format, across) => {
            if (format !== null) pending.push({ kind: 'format', area: { ...area, row: area.row + down, column: area.column + across, rows: 1, columns: 1 }, format }); // prettier-ignore
          }),
        );
    },
    look: (cells, property) => {
      const last = looks.findLast(
        (one) =>
          one.property === property &&
          one.cells.sheet === cells.sheet &&
          one.cells.row <= cells.row &&
          one.cells.column <= cells.column &&
          one.cells.row + one.cells.rows >= cells.row + cells.rows &&
          one.cells.column + one.cells.columns >= cells.column + cells.columns,
      );
      return last ? last.value : restingLook(property);
    },
    setLook: (cells, property, value) => {
      looks.push({ cells, property, value });
      if (property.startsWith('border.')) return;
      const area = areaOf(cells);
      if (property === 'format.wrapText') {
        if (value === true) pending.push({ kind: 'wrap', area });
        return;
      }
      const key = fixedReference(area);
      const known = drawn.get(key) ?? { area, props: {} };
      known.props[property] = value;
      drawn.delete(key);
      drawn.set(key, known);
    },
    width: (id, column) => widths.get(`${id}\n${column}`) ?? 48,
    setWidth: (id, column, points) => {
      widths.set(`${id}\n${column}`, points);
      pending.push({
        kind: 'width',
        sheet: nameOf(id),
        column,
        columns: 1,
        characters: charactersOf(points),
      });
    },
    merges: async (id) => {
      await flush();
      return (outlineOf(grid).sheets.find(({ name }) => name === nameOf(id))?.merges ?? []).map(cellsOf);
    },
    merge: (cells) => void pending.push({ kind: 'merge', area: areaOf(cells) }),
    unmerge: () => {
      throw new Error('The stub takes no merge back.');
    },
    frozen: (id) => {
      const { xSplit, ySplit } = sheetNamed(grid, nameOf(id)).getConfig().freeze;
      return { rows: ySplit, columns: xSplit };
    },
    freeze: (id, rows, columns) => void pending.push({ kind: 'freeze', sheet: nameOf(id), rows, columns }),
    names: async () => {
      await flush();
      return Object.entries(outlineOf(grid).names).map(([name, area]) => ({
        name,
        formula: `=${fixedReference(area)}`,
      }));
    },
    setName: (name, formula) => void pending.push({ kind: 'name', name, area: areaOfReference(formula)! }),
    deleteName: (name) => void openBook(grid).deleteDefinedName(name),
    rule: (id, row, column) => {
      const sheet = sheetNamed(grid, nameOf(id));
      const rule = listRuleAt(grid, { unitId: sheet.getUnitId(), id, name: nameOf(id) }, row, column);
      if (!rule) return undefined;
      const source = 'sheet' in rule.source ? `=${fixedReference(rule.source)}` : rule.source.join(',');
      return { rule: { list: { source, inCellDropDown: true } }, ignoreBlanks: true, errorAlert: { message: rule.message }, prompt: {} }; // prettier-ignore
    },
    setRule: (cells, rule) => void ruled.set(fixedReference(areaOf(cells)), { area: areaOf(cells), rule }),
    notes: () => [],
    setNote: (id, _kind, row, column, text) =>
      void pending.push({ kind: 'note', sheet: nameOf(id), row, column, text }),
    charts: (id) => charts.get(id) ?? [],
    setChart: (id, at, chart) => {
      const known = [...(charts.get(id) ?? [])];
      known.splice(at, 1, ...(chart ? [chart] : []));
      charts.set(id, known);
      if (chart) changedCharts.add(`${id}\n${chart.name}`);
    },
    page: (id) => pages.get(id) ?? { orientation: 'Portrait', zoom: {}, margins: {} },
    setPage: (id, page) => {
      pages.set(id, page);
      changedPages.add(id);
    },
    isProtected: () => false,
    isReadOnly: () => false,
    calculation: () => 'Done',
  };
};

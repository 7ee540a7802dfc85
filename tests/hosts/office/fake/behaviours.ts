import { cellAddress, columnNumber } from '../../../../addin/workbook/address';
import { GRID } from '../../../../addin/workbook/validateChange';

import { NOTHING, type Behaviour, type Run, type Target } from './behaviour';
import { chartBehaviours } from './chartBehaviours';
import type { Cells, HostBook, HostNote, HostPage } from './hostBook';
import { HostError } from './hostError';
import { lookBehaviours } from './lookBehaviours';
import { cellsIn, formatsOf, inputsOf, isCells, keyed, number, oneOf, text, truth, whole } from './shapes';

const notFound = (): never => {
  throw new HostError('ItemNotFound');
};

const sheetOf: Run = async (_target, [key], book) => {
  const wanted = text(key);
  const sheets = await book.sheets();
  const found = sheets.find(({ id, name }) => id === wanted || name.toLowerCase() === wanted.toLowerCase());
  return found ? { id: found.id } : NOTHING;
};

/** A method that fails where its OrNullObject twin gives nothing. */
const orFail =
  (run: Run): Run =>
  async (...given) => {
    const found = await run(...given);
    return found === NOTHING ? notFound() : found;
  };

const refuseProtected = async (book: HostBook, sheet: string): Promise<void> => {
  if (await book.isProtected(sheet)) throw new HostError('AccessDenied', 'the sheet is protected');
};

/** A method that a protected sheet refuses. */
const unprotected =
  (run: Run): Run =>
  async (target, args, book) => {
    await refuseProtected(book, isCells(target) ? target.sheet : target.id);
    return run(target, args, book);
  };

const inGrid = (cells: Cells): Cells => {
  whole(cells.row, 0, GRID.rows - 1);
  whole(cells.column, 0, GRID.columns - 1);
  whole(cells.rows, 1, GRID.rows - cells.row);
  whole(cells.columns, 1, GRID.columns - cells.column);
  return cells;
};

const nameOf = async (book: HostBook, sheet: string): Promise<string> =>
  (await book.sheets()).find(({ id }) => id === sheet)?.name ?? notFound();

const addressOf = async (cells: Cells, book: HostBook): Promise<string> => {
  const first = cellAddress(cells.row, cells.column);
  const last = cellAddress(cells.row + cells.rows - 1, cells.column + cells.columns - 1);
  const name = (await nameOf(book, cells.sheet)).replaceAll("'", "''");
  return `'${name}'!${first === last ? first : `${first}:${last}`}`;
};

const ROWS = /^\$?(\d+):\$?(\d+)$/;
const CELLS = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i;

const cellsOf = (sheet: string, address: unknown): Cells => {
  const found = CELLS.exec(text(address));
  if (!found) throw new HostError('InvalidArgument', `no cells ${String(address)}`);
  const [, left = '', top = '', right = left, bottom = top] = found;
  const [row, column] = [Number(top) - 1, columnNumber(left)];
  return inGrid({
    sheet,
    row,
    column,
    rows: Number(bottom) - row,
    columns: columnNumber(right) + 1 - column,
  });
};

const cellOrAddress = (sheet: string, given: unknown): Cells =>
  isCells(given) ? given : cellsOf(sheet, given);

const pageWith = async (book: HostBook, { id }: Target, more: Partial<HostPage>): Promise<void> =>
  book.setPage(id, { ...(await book.page(id)), ...more });

const MARGINS = ['leftMargin', 'rightMargin', 'topMargin', 'bottomMargin'];
/** Of a page that nobody set up, points. */
const ORDINARY_MARGIN = 50.4;

const marginValues: Behaviour['values'] = Object.fromEntries(
  MARGINS.map((margin) => [
    margin,
    async ({ id }, book) => (await book.page(id)).margins[margin] ?? ORDINARY_MARGIN,
  ]),
);

const marginSets: Behaviour['sets'] = Object.fromEntries(
  MARGINS.map((margin) => [
    margin,
    async (sheet, value, book) => {
      const { margins } = await book.page(sheet.id);
      await pageWith(book, sheet, { margins: { ...margins, [margin]: number(value, 0, 1_000) } });
    },
  ]),
);

/** Notes or comments: a target is a sheet with the kind, an item the same with its place. */
const remarkBehaviours = (kind: 'note' | 'comment'): { list: Behaviour; one: Behaviour } => {
  const find = async (
    id: string,
    row: number,
    column: number,
    book: HostBook,
  ): Promise<HostNote | undefined> =>
    (await book.notes(id, kind)).find((note) => note.row === row && note.column === column);
  const at: Run = async ({ id }, [place], book) => {
    const { row, column } = cellOrAddress(id, place);
    return (await find(id, row, column, book)) ? { id, row, column } : NOTHING;
  };
  const one: Behaviour = {
    values: {
      content: async ({ id, row, column }, book) => (await find(id, row, column, book))?.text ?? notFound(),
      id: ({ row, column }) => `{${row}-${column}}`,
    },
    sets: {
      content: async ({ id, row, column }, value, book) => book.setNote(id, kind, row, column, text(value)),
    },
    calls: {
      delete: ({ id, row, column }, _args, book) => book.setNote(id, kind, row, column, ''),
      getLocation: ({ id, row, column }) => ({ sheet: id, row, column, rows: 1, columns: 1 }),
    },
    changes: ['delete'],
  };
  const list: Behaviour = {
    items: {
      of: kind === 'note' ? 'Note' : 'Comment',
      all: async ({ id }, book) =>
        (await book.notes(id, kind)).map(({ row, column }) => ({ id, row, column })),
    },
    calls: {
      add: unprotected(async ({ id }, [place, words], book) => {
        const { row, column, rows, columns } = cellOrAddress(id, place);
        if (rows * columns !== 1) throw new HostError('InvalidCellAddress');
        if (await find(id, row, column, book)) throw new HostError('ItemAlreadyExists');
        await book.setNote(id, kind, row, column, text(words));
        return { id, row, column };
      }),
      ...(kind === 'note'
        ? { getItemOrNullObject: at, getItem: orFail(at) }
        : {
            getItemByCell: orFail(at),
            getItem: async ({ id }, [key]) => {
              const [row = 0, column = 0] = text(key).slice(1, -1).split('-').map(Number);
              return { id, row, column };
            },
          }),
    },
    changes: ['add'],
  };
  return { list, one };
};

const notes = remarkBehaviours('note');
const comments = remarkBehaviours('comment');

export const behaviours: Readonly<Record<string, Behaviour>> = {
  Workbook: {
    values: { readOnly: (_target, book) => book.isReadOnly() },
    objects: {
      worksheets: () => ({}),
      names: () => ({}),
      protection: () => ({}),
      application: () => ({}),
    },
    calls: {
      getActiveCell: async (_target, _args, book) => ({
        sheet: await book.active(),
        row: 0,
        column: 0,
        rows: 1,
        columns: 1,
      }),
    },
  },
  Application: {
    values: { calculationState: (_target, book) => book.calculation() },
    calls: { calculate: (_target, [kind]) => void oneOf('Recalculate', 'Full', 'FullRebuild')(kind) },
  },
  WorkbookProtection: { values: { protected: (_target, book) => book.isProtected(undefined) } },
  WorksheetCollection: {
    items: { of: 'Worksheet', all: async (_target, book) => (await book.sheets()).map(({ id }) => ({ id })) },
    calls: {
      getItem: orFail(sheetOf),
      getItemOrNullObject: sheetOf,
      getActiveWorksheet: async (_target, _args, book) => ({ id: await book.active() }),
      add: async (_target, [name], book) => {
        if (await book.isProtected(undefined)) throw new HostError('AccessDenied');
        const wanted = text(name, 31);
        const taken = (await book.sheets()).some((one) => one.name.toLowerCase() === wanted.toLowerCase());
        if (taken) throw new HostError('ItemAlreadyExists');
        return { id: await book.addSheet(wanted) };
      },
    },
    changes: ['add'],
  },
  Worksheet: {
    values: { id: ({ id }) => id, name: ({ id }, book) => nameOf(book, id) },
    objects: {
      charts: ({ id }) => ({ id }),
      notes: ({ id }) => ({ id }),
      comments: ({ id }) => ({ id }),
      protection: ({ id }) => ({ id }),
      freezePanes: ({ id }) => ({ id }),
      pageLayout: ({ id }) => ({ id }),
    },
    calls: {
      getRangeByIndexes: ({ id }, [row, column, rows, columns]) =>
        inGrid({ sheet: id, row, column, rows, columns } as Cells),
      getUsedRangeOrNullObject: async ({ id }, [valuesOnly], book) =>
        (await book.used(id, !truth(valuesOnly))) ?? NOTHING,
      activate: ({ id }, _args, book) => book.activate(id),
      delete: async ({ id }, _args, book) => {
        if ((await book.sheets()).length < 2) throw new HostError('InvalidOperation', 'the last sheet stays');
        return book.deleteSheet(id);
      },
    },
    changes: ['activate', 'delete'],
    noUndo: ['delete'],
  },
  WorksheetProtection: { values: { protected: ({ id }, book) => book.isProtected(id) } },
  WorksheetFreezePanes: {
    calls: {
      unfreeze: unprotected(({ id }, _args, book) => book.freeze(id, 0, 0)),
      freezeRows: unprotected(({ id }, [rows], book) => book.freeze(id, whole(rows, 1, GRID.rows), 0)),
      freezeColumns: unprotected(({ id }, [columns], book) =>
        book.freeze(id, 0, whole(columns, 1, GRID.columns)),
      ),
      freezeAt: unprotected(({ id }, [range], book) => {
        const { row, column, rows, columns } = cellsIn(range);
        if (row !== 0 || column !== 0) throw new HostError('InvalidArgument', 'freezes from the first cell');
        return book.freeze(id, rows, columns);
      }),
      getLocationOrNullObject: async ({ id }, _args, book) => {
        const { rows, columns } = await book.frozen(id);
        if (rows === 0 && columns === 0) return NOTHING;
        return { sheet: id, row: 0, column: 0, rows: rows || GRID.rows, columns: columns || GRID.columns };
      },
    },
    changes: ['unfreeze', 'freezeRows', 'freezeColumns', 'freezeAt'],
  },
  PageLayout: {
    values: {
      orientation: async ({ id }, book) => (await book.page(id)).orientation,
      ...marginValues,
      zoom: async ({ id }, book) => ({ horizontalFitToPages: null, verticalFitToPages: null, scale: null, ...(await book.page(id)).zoom }), // prettier-ignore
    },
    sets: {
      orientation: (sheet, value, book) =>
        pageWith(book, sheet, { orientation: oneOf('Portrait', 'Landscape')(value) }),
      ...marginSets,
      zoom: (sheet, value, book) =>
        pageWith(book, sheet, {
          zoom: keyed(value, [], ['horizontalFitToPages', 'verticalFitToPages', 'scale']),
        }),
    },
    calls: {
      setPrintArea: async (sheet, [area], book) => {
        const cells = cellOrAddress(sheet.id, area);
        await pageWith(book, sheet, { area: (await addressOf(cells, book)).replace(/^.*!/, '') });
      },
      setPrintTitleRows: (sheet, [rows], book) => {
        const found = ROWS.exec(text(rows));
        if (!found) throw new HostError('InvalidArgument', 'whole rows are repeated');
        const row = Number(found[1]) - 1;
        return pageWith(book, sheet, { titleRows: { row, rows: Number(found[2]) - row } });
      },
      getPrintAreaOrNullObject: async ({ id }, _args, book) => {
        const { area } = await book.page(id);
        return area === undefined ? NOTHING : { areas: [cellsOf(id, area)] };
      },
      getPrintTitleRowsOrNullObject: async ({ id }, _args, book) => {
        const { titleRows } = await book.page(id);
        return titleRows ? { sheet: id, row: titleRows.row, column: 0, rows: titleRows.rows, columns: GRID.columns } : NOTHING; // prettier-ignore
      },
    },
    changes: ['setPrintArea', 'setPrintTitleRows'],
  },
  Range: {
    values: {
      address: addressOf,
      rowIndex: ({ row }) => row,
      columnIndex: ({ column }) => column,
      rowCount: ({ rows }) => rows,
      columnCount: ({ columns }) => columns,
      values: async (cells, book) => (await book.read(cells)).map((line) => line.map(({ value }) => value)),
      formulas: async (cells, book) =>
        (await book.read(cells)).map((line) => line.map(({ formula }) => formula)),
      valueTypes: async (cells, book) => (await book.read(cells)).map((line) => line.map(({ type }) => type)),
      numberFormat: async (cells, book) =>
        (await book.read(cells)).map((line) => line.map(({ format }) => format)),
      text: async (cells, book) =>
        (await book.read(cells)).map((line) => line.map(({ value }) => String(value))),
    },
    sets: {
      formulas: async (cells, value, book) => {
        await refuseProtected(book, cells.sheet);
        await book.write(cells, inputsOf(value, cells));
      },
      numberFormat: async (cells, value, book) => {
        await refuseProtected(book, cells.sheet);
        await book.setFormats(cells, formatsOf(value, cells));
      },
    },
    objects: {
      format: (cells) => cells,
      dataValidation: (cells) => cells,
      worksheet: ({ sheet }) => ({ id: sheet }),
    },
    calls: {
      merge: unprotected((cells, [across], book) => {
        if (truth(across)) throw new Error('The fake merges no single rows.');
        return book.merge(cells);
      }),
      unmerge: unprotected((cells, _args, book) => book.unmerge(cells)),
      select: (cells, _args, book) => book.select(cells),
      setDirty: () => undefined,
      getMergedAreasOrNullObject: async (cells, _args, book) => {
        const inside = (await book.merges(cells.sheet)).filter(
          (merge) => merge.row < cells.row + cells.rows && merge.row + merge.rows > cells.row,
        );
        if (inside.length > 512) throw new HostError('GeneralException', 'more than 512 merged areas');
        return inside.length === 0 ? NOTHING : { areas: inside };
      },
    },
    changes: ['merge', 'unmerge', 'select'],
  },
  RangeAreas: {
    values: {
      areaCount: ({ areas }) => areas.length,
      address: async ({ areas }, book) =>
        (await Promise.all(areas.map((one: Cells) => addressOf(one, book)))).join(','),
    },
    objects: { areas: ({ areas }) => areas },
  },
  RangeCollection: { items: { of: 'Range', all: (areas) => areas } },
  NamedItemCollection: {
    items: {
      of: 'NamedItem',
      all: async (_target, book) => (await book.names()).map(({ name }) => ({ name })),
    },
    calls: {
      getItem: async (_target, [name], book) => {
        const key = text(name).toLowerCase();
        const found = (await book.names()).find((one) => one.name.toLowerCase() === key);
        return found ? { name: found.name } : notFound();
      },
      add: async (_target, [name, reference], book) => {
        const key = text(name).toLowerCase();
        if ((await book.names()).some((one) => one.name.toLowerCase() === key))
          throw new HostError('ItemAlreadyExists');
        const [sheet, cells] = (await addressOf(cellsIn(reference), book)).split(/!(?=[^!]*$)/) as [
          string,
          string,
        ];
        await book.setName(text(name), `=${sheet}!${cells.replaceAll(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`);
        return { name };
      },
    },
    changes: ['add'],
  },
  NamedItem: {
    values: {
      name: ({ name }) => name,
      formula: async ({ name }, book) =>
        (await book.names()).find((one) => one.name === name)?.formula ?? notFound(),
    },
    sets: { formula: ({ name }, value, book) => book.setName(name, text(value)) },
    calls: { delete: ({ name }, _args, book) => book.deleteName(name) },
    changes: ['delete'],
  },
  NoteCollection: notes.list,
  Note: notes.one,
  CommentCollection: comments.list,
  Comment: comments.one,
  ...lookBehaviours,
  ...chartBehaviours,
};

import type { Behaviour, Target } from './behaviour';
import type { Cells, HostBook, HostRule } from './hostBook';
import { HostError } from './hostError';
import { colour, keyed, number, oneOf, text, truth } from './shapes';

const guarded = async (book: HostBook, { sheet }: Cells): Promise<void> => {
  if (await book.isProtected(sheet)) throw new HostError('AccessDenied', 'the sheet is protected');
};

/** Properties of the cells' look, each with the shape of its value. */
const properties = (
  of: string,
  shapes: Readonly<Record<string, (value: unknown) => unknown>>,
): Pick<Behaviour, 'values' | 'sets'> => ({
  values: Object.fromEntries(
    Object.keys(shapes).map((name) => [
      name,
      (cells: Cells, book: HostBook) => book.look(cells, `${of}.${name}`),
    ]),
  ),
  sets: Object.fromEntries(
    Object.entries(shapes).map(([name, shape]) => [
      name,
      async (cells: Cells, value: unknown, book: HostBook) => {
        await guarded(book, cells);
        await book.setLook(cells, `${of}.${name}`, shape(value));
      },
    ]),
  ),
});

const SIDES = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', 'InsideVertical', 'InsideHorizontal'];
const ALL_SIDES = [...SIDES, 'DiagonalDown', 'DiagonalUp'];

interface Border {
  readonly cells: Cells;
  readonly side: string;
}

/** Cells and the sides of theirs that a border of a range is. */
const sidesOf = ({ cells, side }: Border): { readonly cells: Cells; readonly side: string }[] => {
  const { rows, columns, row, column } = cells;
  switch (side) {
    case 'EdgeTop':
      return [{ cells: { ...cells, rows: 1 }, side: 'top' }];
    case 'EdgeBottom':
      return [{ cells: { ...cells, row: row + rows - 1, rows: 1 }, side: 'bottom' }];
    case 'EdgeLeft':
      return [{ cells: { ...cells, columns: 1 }, side: 'left' }];
    case 'EdgeRight':
      return [{ cells: { ...cells, column: column + columns - 1, columns: 1 }, side: 'right' }];
    case 'InsideHorizontal':
      return rows < 2
        ? []
        : [
            { cells: { ...cells, rows: rows - 1 }, side: 'bottom' },
            { cells: { ...cells, row: row + 1, rows: rows - 1 }, side: 'top' },
          ];
    case 'InsideVertical':
      return columns < 2
        ? []
        : [
            { cells: { ...cells, columns: columns - 1 }, side: 'right' },
            { cells: { ...cells, column: column + 1, columns: columns - 1 }, side: 'left' },
          ];
    default:
      return [];
  }
};

const RESTING: Readonly<Record<string, string>> = { style: 'None', weight: 'Thin', color: '#000000' };

const borderValue =
  (name: string) =>
  async (border: Border, book: HostBook): Promise<unknown> => {
    const places = sidesOf(border);
    if (places.length === 0) return RESTING[name];
    const values: unknown[] = [];
    for (const { cells, side } of places) values.push(await book.look(cells, `border.${side}.${name}`));
    return values.every((value) => value === values[0]) ? values[0] : null;
  };

const borderSet =
  (name: string, shape: (value: unknown) => unknown) =>
  async (border: Border, value: unknown, book: HostBook): Promise<void> => {
    await guarded(book, border.cells);
    const { side } = border;
    const inside = side.startsWith('Inside');
    const told = shape(value);
    if (inside && sidesOf(border).length === 0 && told !== 'None')
      throw new HostError('InvalidArgument', 'one row or column has nothing inside');
    for (const place of sidesOf(border)) {
      await book.setLook(place.cells, `border.${place.side}.${name}`, told);
      if (told !== 'None') continue;
      await book.setLook(place.cells, `border.${place.side}.weight`, RESTING['weight']);
      await book.setLook(place.cells, `border.${place.side}.color`, RESTING['color']);
    }
  };

const STYLES = oneOf('None', 'Continuous', 'Dash', 'DashDot', 'DashDotDot', 'Dot', 'Double', 'SlantDashDot');

const ruleOf = async (cells: Cells, book: HostBook): Promise<HostRule | null | undefined> => {
  let first: string | undefined;
  let rule: HostRule | undefined;
  for (let row = cells.row; row < cells.row + cells.rows; row += 1)
    for (let column = cells.column; column < cells.column + cells.columns; column += 1) {
      const here = await book.rule(cells.sheet, row, column);
      const told = JSON.stringify(here ?? null);
      first ??= told;
      if (told !== first) return null;
      rule = here;
    }
  return rule;
};

const NO_RULE: HostRule = { rule: {}, ignoreBlanks: true, errorAlert: {}, prompt: {} };
const KINDS = ['wholeNumber', 'decimal', 'textLength', 'date', 'time', 'custom'];

const withRule = async (cells: Cells, book: HostBook, more: Partial<HostRule>): Promise<void> => {
  await guarded(book, cells);
  await book.setRule(cells, { ...((await ruleOf(cells, book)) ?? NO_RULE), ...more });
};

const listRule = (value: unknown): HostRule['rule'] => {
  const { list } = keyed(value, [], ['list', ...KINDS]) as { list?: unknown };
  if (list === undefined) return value as HostRule['rule'];
  const told = keyed(list, ['inCellDropDown', 'source']) as { inCellDropDown: unknown; source: unknown };
  truth(told.inCellDropDown);
  const source = text(told.source, 255);
  if (source === '') throw new HostError('InvalidArgument', 'a list has entries');
  return { list: { inCellDropDown: told.inCellDropDown as boolean, source } };
};

export const lookBehaviours: Readonly<Record<string, Behaviour>> = {
  RangeFormat: {
    values: {
      ...properties('format', { horizontalAlignment: text, wrapText: truth }).values,
      columnWidth: async ({ sheet, column, columns }, book) => {
        const widths: number[] = [];
        for (let at = column; at < column + columns; at += 1) widths.push(await book.width(sheet, at));
        return widths.every((width) => width === widths[0]) ? widths[0] : null;
      },
    },
    sets: {
      ...properties('format', {
        horizontalAlignment: oneOf('General', 'Left', 'Center', 'Right'),
        wrapText: truth,
      }).sets,
      columnWidth: async (cells, value, book) => {
        await guarded(book, cells);
        for (let at = cells.column; at < cells.column + cells.columns; at += 1)
          await book.setWidth(cells.sheet, at, number(value, 0, 1_800));
      },
    },
    objects: { font: (cells) => cells, fill: (cells) => cells, borders: (cells) => cells },
  },
  RangeFont: properties('font', {
    bold: truth,
    italic: truth,
    size: (value) => number(value, 1, 409),
    color: colour,
  }),
  RangeFill: {
    values: properties('fill', { color: colour, pattern: text }).values!,
    sets: {
      color: async (cells, value, book) => {
        await guarded(book, cells);
        await book.setLook(cells, 'fill.color', colour(value));
        await book.setLook(cells, 'fill.pattern', 'Solid');
      },
    },
    calls: {
      clear: async (cells, _args, book) => {
        await guarded(book, cells);
        await book.setLook(cells, 'fill.color', '#FFFFFF');
        await book.setLook(cells, 'fill.pattern', 'None');
      },
    },
    changes: ['clear'],
  },
  RangeBorderCollection: {
    items: { of: 'RangeBorder', all: (cells) => ALL_SIDES.map((side) => ({ cells, side })) },
    calls: { getItem: (cells, [side]) => ({ cells, side: oneOf(...ALL_SIDES)(side) }) },
  },
  RangeBorder: {
    values: {
      sideIndex: ({ side }) => side,
      style: borderValue('style'),
      weight: borderValue('weight'),
      color: borderValue('color'),
    },
    sets: {
      style: borderSet('style', STYLES),
      weight: borderSet('weight', oneOf('Hairline', 'Thin', 'Medium', 'Thick')),
      color: borderSet('color', colour),
    },
  },
  DataValidation: {
    values: {
      type: async (cells, book) => {
        const rule = await ruleOf(cells, book);
        if (rule === null) return 'Inconsistent';
        return rule?.rule.list ? 'List' : 'None';
      },
      rule: async (cells, book) => ({ ...Object.fromEntries(KINDS.map((kind) => [kind, null])), list: (await ruleOf(cells, book))?.rule.list ?? null }), // prettier-ignore
      ignoreBlanks: async (cells, book) => (await ruleOf(cells, book))?.ignoreBlanks ?? true,
      errorAlert: async (cells, book) => (await ruleOf(cells, book))?.errorAlert ?? {},
      prompt: async (cells, book) => (await ruleOf(cells, book))?.prompt ?? {},
    },
    sets: {
      rule: (cells, value, book) => withRule(cells, book, { rule: listRule(value) }),
      ignoreBlanks: (cells, value, book) => withRule(cells, book, { ignoreBlanks: truth(value) }),
      errorAlert: (cells: Target, value, book) => {
        const { message, title } = keyed(value, [], ['message', 'title', 'showAlert', 'style']) as Target;
        text(message ?? '', 255);
        text(title ?? '', 32);
        return withRule(cells, book, { errorAlert: value as object });
      },
      prompt: (cells, value, book) =>
        withRule(cells, book, { prompt: keyed(value, [], ['message', 'title', 'showPrompt']) }),
    },
    calls: {
      clear: async (cells, _args, book) => {
        await guarded(book, cells);
        await book.setRule(cells, undefined);
      },
    },
    changes: ['clear'],
  },
};

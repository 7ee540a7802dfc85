import { beforeEach, describe, expect, test } from 'vitest';

import { openFake, type OpenFake } from './openFake';

let open: OpenFake;
beforeEach(() => {
  open = openFake();
});

type Batch = (context: Excel.RequestContext) => Promise<unknown>;
const run = (batch: Batch, options = {}): Promise<unknown> =>
  (open.fake.run as (options: object, batch: Batch) => Promise<unknown>)(options, batch);
const first = ({ workbook }: Excel.RequestContext): Excel.Worksheet => workbook.worksheets.getItem('Sheet1');

const refused = async (batch: Batch, options = {}): Promise<{ code?: string; message: string }> => {
  try {
    await run(batch, options);
  } catch (error) {
    return error as { code?: string; message: string };
  }
  throw new Error('It was not refused.');
};

/** A mistake of the adapter that the platform's own library or the program would not let pass, or not always. */
const MISTAKES: Readonly<Record<string, { batch: Batch; code: string; message?: string }>> = {
  'reading a property that was not loaded': {
    batch: async (context) => first(context).name,
    code: 'PropertyNotLoaded',
    message: 'Worksheet.name',
  },
  'reading a loaded property before the sync': {
    batch: async (context) => {
      const sheet = first(context);
      sheet.load('name');
      return sheet.name;
    },
    code: 'PropertyNotLoaded',
  },
  'reading another property than the loaded one': {
    batch: async (context) => {
      const sheet = first(context);
      sheet.load('name');
      await context.sync();
      return sheet.id;
    },
    code: 'PropertyNotLoaded',
  },
  'reading the members of a collection that was not loaded': {
    batch: async ({ workbook }) => workbook.worksheets.items,
    code: 'PropertyNotLoaded',
  },
  'reading a property of a member that was not loaded with it': {
    batch: async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load('items/name');
      await context.sync();
      return worksheets.items[0]!.id;
    },
    code: 'PropertyNotLoaded',
  },
  'asking whether there is nothing before the sync': {
    batch: async ({ workbook }) => {
      const sheet = workbook.worksheets.getItemOrNullObject('Nowhere');
      sheet.load('name');
      return sheet.isNullObject;
    },
    code: 'PropertyNotLoaded',
  },
  'asking it of an object that is never nothing': {
    batch: async (context) => first(context).isNullObject,
    code: 'InvalidArgument',
  },
  'loading everything': { batch: async (context) => first(context).load(), code: 'InvalidArgument' },
  'loading a misspelt property': {
    batch: async (context) => first(context).load('nmae'),
    code: 'InvalidArgument',
    message: 'Worksheet has no nmae',
  },
  'loading a misspelt property of members': {
    batch: async ({ workbook }) => workbook.worksheets.load('items/nmae'),
    code: 'InvalidArgument',
  },
  'loading an object as if it were a value': {
    batch: async (context) => first(context).load('charts'),
    code: 'InvalidArgument',
  },
  'a member that the model does not have': {
    batch: async (context) => (first(context) as unknown as { getCells(): void }).getCells(),
    code: 'InvalidArgument',
    message: 'Worksheet has no getCells',
  },
  'setting a member that the model does not have': {
    batch: async (context) => Object.assign(first(context), { titel: 'x' }),
    code: 'InvalidArgument',
  },
  'setting what cannot be set': {
    batch: async (context) => Object.assign(first(context), { id: 'x' }),
    code: 'InvalidArgument',
  },
  'rows of different lengths': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 2, 2).formulas = [[1, 2], [3]];
    },
    code: 'InvalidArgument',
    message: 'not 2 rows of 2 cells',
  },
  'more cells than the range has': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).formulas = [[1, 2]];
    },
    code: 'InvalidArgument',
  },
  'one value for many cells': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 2).numberFormat = '0.0' as never;
    },
    code: 'InvalidArgument',
  },
  'an object in a cell': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).formulas = [[{}]];
    },
    code: 'InvalidArgument',
  },
  'a range past the edge of the sheet': {
    batch: async (context) => first(context).getRangeByIndexes(0, 16_383, 1, 2).select(),
    code: 'InvalidArgument',
  },
  'a range of no rows': {
    batch: async (context) => first(context).getRangeByIndexes(0, 0, 0, 1).select(),
    code: 'InvalidArgument',
  },
  'a colour that is none': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).format.font.color = 'plum';
    },
    code: 'InvalidArgument',
  },
  'a line inside a single cell': {
    batch: async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).format.borders.getItem('InsideVertical').style = 'Double';
    },
    code: 'InvalidArgument',
  },
  'a sheet that is not there': {
    batch: async ({ workbook }) => workbook.worksheets.getItem('Nowhere').activate(),
    code: 'ItemNotFound',
  },
  'a sheet of a name that is taken': {
    batch: async ({ workbook }) => void workbook.worksheets.add('SHEET1'),
    code: 'ItemAlreadyExists',
  },
  'doing something with nothing': {
    batch: async ({ workbook }) => workbook.worksheets.getItemOrNullObject('Nowhere').activate(),
    code: 'InvalidObjectPath',
  },
  'an option that runs do not have': { batch: async () => undefined, code: 'InvalidArgument' },
};

describe('the strict fake refuses', () => {
  test.each(Object.entries(MISTAKES))('%s', async (what, { batch, code, message }) => {
    const error = await refused(batch, what.startsWith('an option') ? { merge: true } : {});
    expect(error.code).toBe(code);
    if (message) expect(error.message).toContain(message);
  });

  test('an object used after its batch', async () => {
    let kept: Excel.Worksheet | undefined;
    await run(async (context) => void (kept = first(context)));
    expect(() => kept!.activate()).toThrow('after its batch was over');
  });

  test('an answer and a request of more than 5 MB', async () => {
    const long = Array.from({ length: 200 }, () => ['x'.repeat(30_000)]);
    const tooMuch = await refused(async (context) => {
      first(context).getRangeByIndexes(0, 0, 200, 1).formulas = long;
    });
    expect(tooMuch.code).toBe('RequestPayloadSizeLimitExceeded');
    for (let row = 0; row < 200; row += 100)
      await run(async (context) => {
        first(context).getRangeByIndexes(row, 0, 100, 1).formulas = long.slice(0, 100);
      });
    const tooLong = await refused(async (context) => {
      const range = first(context).getRangeByIndexes(0, 0, 200, 1);
      range.load('values');
      await context.sync();
    });
    expect(tooLong.code).toBe('ResponsePayloadSizeLimitExceeded');
  });
});

describe('the strict fake', () => {
  test('does nothing before the sync', async () => {
    await run(async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).formulas = [[1]];
      expect(open.book.sheetNamed('Sheet1').cells.size).toBe(0);
      await context.sync();
      expect(open.book.sheetNamed('Sheet1').cells.size).toBe(1);
    });
  });

  test('does what was queued in order, and keeps what was done before a refusal', async () => {
    await refused(async (context) => {
      const sheet = first(context);
      sheet.getRangeByIndexes(0, 0, 1, 1).formulas = [['first']];
      context.workbook.worksheets.getItem('Nowhere').activate();
      sheet.getRangeByIndexes(1, 0, 1, 1).formulas = [['second']];
    });
    expect([...open.book.sheetNamed('Sheet1').cells.values()]).toEqual([{ value: 'first' }]);
  });

  test('tells of nothing where there is nothing', async () => {
    await run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject('Nowhere');
      sheet.load('name');
      await context.sync();
      expect(sheet.isNullObject).toBe(true);
    });
  });

  test('records the set of each member, and lacks what is newer than the program', async () => {
    open = openFake({ version: '1.17' });
    const error = await refused(async (context) => first(context).notes.getItemOrNullObject('A1'));
    expect(error).toMatchObject({ code: 'ApiNotFound' });
    expect(error.message).toContain('ExcelApi 1.18');
    expect(open.fake.used.get('WorksheetCollection.getItem')).toBe('ExcelApi 1.1');
    expect((await refused(async () => undefined, { mergeUndoGroup: true })).code).toBe('ApiNotFound');
  });

  test('lacks what only some programs have', async () => {
    const error = await refused(async (context) => first(context).protection.load('isPasswordProtected'));
    expect(error).toMatchObject({ code: 'ApiNotFound' });
  });

  test.each([
    ["'1/2", '1/2'],
    ['1/2', 42],
    ['7:30', 42],
    ['May 3', 42],
    ['5%', 5],
    ['TRUE', true],
    ['007', 7],
    ['Rose 12', 'Rose 12'],
  ])('takes %s for %s, as a spreadsheet does', async (typed, value) => {
    await run(async (context) => {
      first(context).getRangeByIndexes(0, 0, 1, 1).formulas = [[typed]];
    });
    expect(open.book.sheetNamed('Sheet1').cells.get('0,0')?.value).toBe(value);
  });
});

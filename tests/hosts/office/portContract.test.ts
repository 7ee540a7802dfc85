import { describe } from 'vitest';

import { pressesReadFirst } from '../../taskpane/pressesReadFirst';
import type { HostUnderTest } from '../../workbook/portContract/hostUnderTest';
import { portContract } from '../../workbook/portContract/portContract';

import { openFake } from './openFake';

// The oldest program that the manifest admits, and one that has everything the adapter asks for.
describe.each(['1.13', '1.20'])('with ExcelApi %s', (version) => {
  const open = async (): Promise<HostUnderTest> => {
    const { workbook, fake, inspect, book } = openFake({ version });
    return {
      workbook,
      inspect,
      undo: async () => fake.undo(),
      user: {
        renameSheet: async (from, to) => book.rename(from, to),
        insertRows: async (sheet, at, count) => book.insert(sheet, 'row', at, count),
        insertColumns: async (sheet, at, count) => book.insert(sheet, 'column', at, count),
      },
    };
  };
  portContract('The Office adapter on the strict fake', open);
  pressesReadFirst('the strict fake', open);
});

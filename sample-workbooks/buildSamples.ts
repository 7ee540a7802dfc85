import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { root } from '../addin/build/paths.mjs';
import type { Change } from '../addin/workbook/change';
import { openTestPage, workbookIn } from '../tests/hosts/workbench/openTestPage';
import { makeSample } from './makeSample';
import { saveInCalc } from './saveInCalc';
import { untidyList } from './untidyList';

const LIST = 'My roses';
const UNTIDY = 'untidy-list';

/** The untidy list as it stands in a grower's workbook. */
const listChange = (): Change => {
  const { cells, merges } = untidyList();
  const columns = Math.max(...cells.map((row) => row.length));
  const filled = cells.map((row) => Array.from({ length: columns }, (_, at) => row[at] ?? null));
  return {
    title: 'The list',
    edits: [
      { kind: 'write', sheet: LIST, row: 0, column: 0, cells: filled },
      ...merges.map((area) => ({ kind: 'merge', area: { sheet: LIST, ...area } }) as const),
      { kind: 'width', sheet: LIST, column: 1, columns: 1, characters: 26 },
      { kind: 'width', sheet: LIST, column: 2, columns: 1, characters: 18 },
      { kind: 'width', sheet: LIST, column: 8, columns: 1, characters: 30 },
      { kind: 'activate', sheet: LIST, row: 0, column: 0 },
    ],
  };
};

/** Builds the sample workbooks in the workbench's own grid, so that every formula has its value. */
export const buildSamples = async (print: (line: string) => void): Promise<void> => {
  const page = await openTestPage();
  const workbook = workbookIn(page);
  const sample = makeSample(workbook);
  const save = async (name: string) => {
    const base64: string = await page.call('saveFile');
    writeFileSync(join(root, 'sample-workbooks', name), Buffer.from(base64, 'base64'));
    print(`sample-workbooks/${name}`);
  };

  try {
    const [first] = (await workbook.outline()).sheets;
    await page.call('renameSheet', first!.name, LIST);
    await workbook.apply(listChange());
    await save(`${UNTIDY}.xlsx`);
    saveInCalc(`${UNTIDY}.xlsx`, print);

    await sample.garden();
    await save('garden.xlsx');

    await sample.tanks();
    await save('tank-what-if.xlsx');
  } finally {
    await page.close();
  }
};

import { describe } from 'vitest';
import { chartsAndPages } from './chartsAndPages';
import { formulas } from './formulas';
import type { HostUnderTest } from './hostUnderTest';
import { listsAndNotes } from './listsAndNotes';
import { looks } from './looks';
import { names } from './names';
import { newer } from './newer';
import { reading } from './reading';
import { seen } from './seen';
import { trialOf } from './trial';
import { undo } from './undo';
import { values } from './values';
import { wholeOrNothing } from './wholeOrNothing';

const PARTS = {
  reading,
  values,
  formulas,
  names,
  looks,
  'lists and notes': listsAndNotes,
  'charts and pages': chartsAndPages,
  'whole or nothing': wholeOrNothing,
  'what was seen': seen,
  'a newer program': newer,
  undo,
};

/**
 * What every host's workbook must do, registered as tests. What a host does not offer shows as skipped, with the
 * reason.
 *
 * @param open a fresh workbook with at least one sheet, none of them called "Contract" or "Other"
 */
export const portContract = (name: string, open: () => Promise<HostUnderTest>): void => {
  describe(`${name} keeps the contract of the workbook port`, () => {
    const trial = trialOf(open);
    describe.each(Object.entries(PARTS))('%s', (_part, check) => check(trial));
  });
};

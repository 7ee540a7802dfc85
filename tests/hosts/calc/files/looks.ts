import { copyFileSync } from 'node:fs';
import { expect, test } from 'vitest';

import { workbookOf } from '../books';
import { DRESSED, dressInBench, dressInCalc, WANTED, WIDTH, type Dress } from '../dress';
import { ODS, openIn, XLSX, type Kind } from './book';
import type { Programs } from './programs';

/** What lies on cells and beside them, through each kind of file. */
export const looks = (programs: Programs): void => {
  const built = async (): Promise<string> => {
    const doc = await programs.office.ask<string>({ do: 'open_document' });
    await workbookOf(programs.office, doc).apply({ title: 'Dress', edits: DRESSED });
    return doc;
  };
  const buildInBench = async (): Promise<void> => {
    await programs.bench.call('open');
    await programs.bench.call('apply', { title: 'Dress', edits: DRESSED });
  };
  const inCalc = async (path: string): Promise<Dress> =>
    dressInCalc(programs.office, await openIn(programs.office, path));
  const saved = async (kind: Kind): Promise<string> => programs.save(programs.office, await built(), kind);
  /** Opened and saved by an office without the extension. */
  const elsewhere = async (path: string, kind: Kind): Promise<string> => {
    const sent = programs.file(kind.ending);
    copyFileSync(path, sent);
    return programs.save(programs.plain, await openIn(programs.plain, sent), kind);
  };

  const WAYS: Readonly<Record<string, () => Promise<Dress>>> = {
    'in Calc': async () => dressInCalc(programs.office, await built()),
    'in the workbench': async () => {
      await buildInBench();
      return dressInBench(programs.bench);
    },
    'from the workbench by .xlsx in Calc': async () => {
      await buildInBench();
      return inCalc(await programs.saveBench());
    },
    'from Calc by .xlsx in the workbench': async () => {
      expect(await programs.openInBench(await saved(XLSX))).toEqual([]);
      return dressInBench(programs.bench);
    },
    'from Calc by .xlsx in Calc': async () => inCalc(await saved(XLSX)),
    'from Calc by .ods in Calc': async () => inCalc(await saved(ODS)),
    'by .xlsx opened and saved without the extension': async () =>
      inCalc(await elsewhere(await saved(XLSX), XLSX)),
    'by .ods opened and saved without the extension': async () =>
      inCalc(await elsewhere(await saved(ODS), ODS)),
  };

  test.each(Object.entries(WAYS))(
    'formats, looks, widths, freezes, lists, names, notes, merges, charts and pages, %s',
    async (_way, arrive) => {
      const { width, ...rest } = await arrive();
      expect(rest).toEqual(WANTED);
      expect(Math.abs(width - WIDTH)).toBeLessThanOrEqual(1);
    },
  );
};

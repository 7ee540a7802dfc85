import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';

import { openTestPage, type TestPage } from '../../workbench/openTestPage';
import { startOffice, type Office } from '../office';
import type { Kind } from './book';

/** The programs between which files go. */
export interface Programs {
  readonly office: Office;
  /** An office without the extension. */
  readonly plain: Office;
  readonly bench: TestPage;
  /** A path that no file has yet: an office locks what it has open. */
  file(ending: string): string;
  /** Saves a document of an office, and tells where. */
  save(program: Office, doc: string, kind: Kind): Promise<string>;
  /** Saves what is open in the workbench, and tells where. */
  saveBench(): Promise<string>;
  /** Opens a file in the workbench; what was not taken over is told in sentences. */
  openInBench(path: string): Promise<unknown>;
}

/** Starts the programs before the tests of a file, and ends them after. */
export const startPrograms = (): Programs => {
  let office: Office;
  let plain: Office;
  let bench: TestPage;
  let files = 0;
  const file = (ending: string): string => {
    files += 1;
    return join(office.folder, `${files}.${ending}`);
  };
  beforeAll(async () => {
    office = await startOffice();
    plain = await startOffice({ extension: false });
    bench = await openTestPage();
  });
  afterAll(async () => {
    await Promise.all([office?.end(), plain?.end(), bench?.close()]);
  });
  return {
    get office() {
      return office;
    },
    get plain() {
      return plain;
    },
    get bench() {
      return bench;
    },
    file,
    save: async (program, doc, { ending, filter }) => {
      const path = file(ending);
      await program.ask({ do: 'store', doc, path, filter });
      return path;
    },
    saveBench: async () => {
      const path = file('xlsx');
      writeFileSync(path, Buffer.from((await bench.call('saveFile')) as string, 'base64'));
      return path;
    },
    openInBench: (path) => bench.call('openFile', basename(path), readFileSync(path).toString('base64')),
  };
};

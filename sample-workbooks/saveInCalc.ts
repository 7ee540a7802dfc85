import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { root } from '../addin/build/paths.mjs';
import { findProgram } from '../addin/build/programs.mjs';

/**
 * Saves a sample once more as Calc keeps it, an .ods beside it, by LibreOffice itself. Where LibreOffice is not on the
 * computer the .ods stays as it was, and that is said.
 */
export const saveInCalc = (name: string, print: (line: string) => void): void => {
  const saved = name.replace(/\.xlsx$/, '.ods');
  const program = findProgram('soffice');
  if (program === undefined)
    return print(`sample-workbooks/${saved} stays as it was: there is no LibreOffice`);
  const folder = mkdtempSync(join(tmpdir(), 'wandcount-samples-'));
  try {
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    const words = [profile, '--headless', '--convert-to', 'ods', '--outdir', folder];
    const { status, stderr } = spawnSync(program, [...words, join(root, 'sample-workbooks', name)], {
      encoding: 'utf8',
      timeout: 120_000,
    });
    if (status !== 0) throw new Error(`LibreOffice did not save ${name} as ${saved}. ${stderr}`);
    copyFileSync(join(folder, saved), join(root, 'sample-workbooks', saved));
    print(`sample-workbooks/${saved}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

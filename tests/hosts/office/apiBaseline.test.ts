import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { BASELINE } from '../../../addin/hosts/office/baseline';

import { apiUses, type ApiUse } from './apiUse';

const folder = join(root, 'addin', 'hosts', 'office');
const sources = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.d.ts'))
  .map((entry) => join(entry.parentPath, entry.name));

const isLater = (file: string): boolean => relative(folder, file).startsWith('later');
const needsOf = (file: string): string => /NEEDS = '([\d.]+)'/.exec(readFileSync(file, 'utf8'))?.[1] ?? '';

const exceeds = (version: string, limit: string): boolean => {
  const [a = 0, b = 0] = version.split('.').map(Number);
  const [c = 0, d = 0] = limit.split('.').map(Number);
  return a > c || (a === c && b > d);
};

/** Told of another program's set, and part of the buttons of every ribbon. */
const OF_THE_RIBBON = ['Event.completed'];

/** Uses that a program might lack: newer than what the manifest declares, or of a set that it does not declare. */
const tooNew = (
  uses: readonly ApiUse[],
  limitOf: (file: string, set: string) => string | undefined,
): string[] =>
  uses.flatMap(({ file, member, set }) => {
    if (OF_THE_RIBBON.includes(member)) return [];
    const [name = '', version = ''] = set.split(' ');
    const limit = limitOf(file, name);
    return limit === undefined || exceeds(version, limit)
      ? [`${relative(root, file)}: ${member} (${set})`]
      : [];
  });

/**
 * What the program cannot take back, and what clears its undo: https://learn.microsoft.com/office/dev/add-ins/excel/excel-add-ins-undo-capabilities.
 * Renaming a sheet is another; its name is read everywhere, and the types do not tell reading from writing.
 */
const NOT_UNDONE =
  /^(AllowEditRange|DocumentProperties|Style|TableStyle|Query|Slicer|LinkedWorkbook)\w*\.|^Workbook\.(close|save|insertWorksheetsFromBase64)$|^WorkbookProtection\.(un)?protect$|^Worksheet\.(copy|delete|standardWidth|position|visibility)$|^WorksheetCollection\.addFromBase64$|^WorksheetProtection\.(un)?protect$|^WorksheetProtection\.\w+(Protection|Password|Options)$|^NamedItem\.comment$|^Chart\.(categoryLabelLevel|seriesNameLevel)$/;

const declared = (name: string): string | undefined => (BASELINE as Record<string, string>)[name];
const limitOf = (file: string, name: string): string | undefined =>
  name === 'ExcelApi' && isLater(file) ? needsOf(file) : declared(name);

/** Whether a file that imports a later one asks for that one's set. */
const asksFor = (text: string, name: string): boolean => {
  const whole = new RegExp(`import \\* as (\\w+) from '[./]*/${name}'`).exec(text)?.[1];
  const needs = new RegExp(`import \\{[^}]*\\bNEEDS\\b[^}]*\\} from '[./]*/${name}'`).test(text);
  return (
    text.includes(whole === undefined ? 'supports(NEEDS)' : `supports(${whole}.NEEDS)`) &&
    (needs || whole !== undefined)
  );
};

const seed = join(folder, 'seed.ts');
const SEED = `
export const seed = (sheet: Excel.Worksheet, { notes }: Excel.Worksheet, options: Excel.RunOptions) => {
  sheet.notes.add('A1', 'x');
  sheet.protection.load('isPasswordProtected');
  void Excel.run({ mergeUndoGroup: true }, async () => options);
  void Office.ribbon.requestUpdate({ tabs: [] });
  Office.context.ui.displayDialogAsync('');
  Office.context.document.settings.get('');
  sheet.visibility = 'Hidden';
  return [notes, sheet.activate(), sheet.copy(), sheet.protection.protect()];
};
`;

let uses: ApiUse[];
beforeAll(() => {
  uses = apiUses(sources, { [seed]: SEED });
});

describe('what the adapter uses of the platform', () => {
  test('is found, wherever it is used', () => {
    const seeded = uses.filter(({ file }) => file === seed).map(({ member, set }) => `${member} ${set}`);
    expect(seeded).toEqual(
      expect.arrayContaining([
        'Worksheet.notes ExcelApi 1.18',
        'NoteCollection.add ExcelApi 1.18',
        'WorksheetProtection.isPasswordProtected ExcelApiOnline 1.1',
        'RunOptions.mergeUndoGroup ExcelApi 1.20',
        'Worksheet.activate ExcelApi 1.1',
        'Ribbon.requestUpdate RibbonApi 1.1',
        'UI.displayDialogAsync DialogApi 1.1',
        'Settings.get Settings 1.1',
      ]),
    );
    expect(seeded.filter((use) => use.startsWith('Worksheet.notes'))).toHaveLength(2);
    expect(
      tooNew(
        uses.filter(({ file }) => file === seed),
        limitOf,
      ),
    ).toHaveLength(6);
    expect(uses.length).toBeGreaterThan(150);
  });

  test('is in the sets that the manifest declares, but for what is asked for at run time', () => {
    expect(
      tooNew(
        uses.filter(({ file }) => file !== seed),
        limitOf,
      ),
    ).toEqual([]);
  });

  test('can be taken back by the program, but for taking away a sheet that was added', () => {
    const notUndone = (seeded: boolean): string[] => [
      ...new Set(
        uses
          .filter(({ file, member }) => (file === seed) === seeded && NOT_UNDONE.test(member))
          .map(({ file, member }) => `${relative(folder, file)}: ${member}`),
      ),
    ];
    expect(notUndone(true)).toHaveLength(3);
    expect(notUndone(false)).toEqual([join('edits', 'sheets.ts') + ': Worksheet.delete']);
  });

  test('that is asked for at run time is in files that say the set, each of which is asked for', () => {
    const later = sources.filter(isLater);
    expect(later.length).toBeGreaterThan(0);
    const others = sources.filter((file) => !isLater(file)).map((file) => readFileSync(file, 'utf8'));
    for (const file of later) {
      const needs = needsOf(file);
      expect(exceeds(needs, BASELINE.ExcelApi), file).toBe(true);
      const name = relative(folder, file).replace(/\.ts$/, '').replaceAll('\\', '/');
      const users = others.filter((text) => text.includes(`/${name}'`));
      expect(users.length, `who uses ${name}`).toBeGreaterThan(0);
      const asks =
        /supports\(NEEDS\)/.test(readFileSync(file, 'utf8')) || users.every((text) => asksFor(text, name));
      expect(asks, `${name} is asked for`).toBe(true);
    }
  });
});

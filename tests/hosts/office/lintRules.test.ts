import { join } from 'node:path';
import { ESLint } from 'eslint';
import officeAddins from 'eslint-plugin-office-addins';
import ts from 'typescript-eslint';
import { expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';

/** One slip for each rule of the platform's own lint plugin. */
const SLIPS = `
export const slips = async (context: Excel.RequestContext) => {
  const early = context.workbook.getSelectedRange();
  console.log(early.address);
  early.load('address');
  console.log(early.address);
  const range = context.workbook.getSelectedRange();
  range.load();
  range.load('font');
  for (let times = 0; times < 3; times += 1) await context.sync();
  const item = context.workbook.worksheets.getItemOrNullObject('Card');
  if (!item) return;
};
export const unsynced = (context: Excel.RequestContext) => {
  const range = context.workbook.getSelectedRange();
  range.load('address');
  return range.address;
};
Office.initialize = () => undefined;
`;

const rules = Object.keys((officeAddins as { readonly rules: object }).rules);

test('every rule for add-ins is on in this host, and sees its slip', async () => {
  const lint = new ESLint({
    cwd: root,
    overrideConfigFile: 'addin/build/eslint.config.mjs',
    // These rules need no types, which take long to read.
    overrideConfig: ts.configs.disableTypeChecked,
  });
  const [result] = await lint.lintText(SLIPS, { filePath: join(root, 'addin/hosts/office/slips.ts') });
  const seen = new Set(result!.messages.map(({ ruleId }) => ruleId));
  expect(rules.length).toBeGreaterThan(7);
  expect(rules.filter((rule) => !seen.has(`office-addins/${rule}`))).toEqual([]);
});

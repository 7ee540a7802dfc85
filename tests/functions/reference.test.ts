import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { expect, test } from 'vitest';
import { referencePage } from '../../addin/build/referencePage';
import { catalogue } from '../../functions';

const path = join(import.meta.dirname, '../../functions/REFERENCE.md');

test('the reference page is what the catalogue makes it: run node addin/build/reference.mjs', async () => {
  const page = await format(referencePage(), { ...(await resolveConfig(path)), parser: 'markdown' });
  expect(readFileSync(path, 'utf8')).toBe(page);
  for (const { name } of catalogue) expect(page).toContain(`\n### ${name}\n`);
});

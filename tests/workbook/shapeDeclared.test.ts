import { expect, test } from 'vitest';

import { logSheets } from '../../addin/workbook/log/logRound';
import { SHAPE } from '../../addin/workbook/shapes';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';

/** Every line and column by the name under which workbooks have it, with the formula that works it out. */
const declared = [gardenSheets, logSheets]
  .flatMap(({ sheets }) => sheets)
  .flatMap((entry) => [
    entry.kind === 'form' ? entry.form.name : entry.table.name,
    ...(entry.kind === 'form'
      ? Object.values(entry.form.lines).map(({ name, formula = '' }) => `  ${name} ${formula}`)
      : Object.entries(entry.table.columns).map(
          ([key, column]) => `  ${entry.table.key}.${key} ${'formula' in column ? column.formula : ''}`,
        )),
  ])
  .map((line) => line.trimEnd())
  .join('\n');

// Where this fails, sheets that users have are of another shape than new ones: add a step to addin/workbook/shapes.
test(`what the sheets declare is what shape ${SHAPE} has had from its beginning`, async () => {
  await expect(`${declared}\n`).toMatchFileSnapshot(`./shapes/shape-${SHAPE}.txt`);
});

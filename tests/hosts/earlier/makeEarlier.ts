import { cpSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { format, resolveConfig } from 'prettier';

import { fillAll, keepTheMix, keepTheRig, makeTheCard, writeTheLog } from '../../taskpane/grower';
import { EARLIER, KEPT, type OwnCells } from '../../workbook/earlierFiles';
import { calc } from './calc';
import { GARDENS } from './garden';
import { workOnSheets } from './ownWork';
import type { Program } from './program';
import { workbench } from './workbench';

/** Takes a program through all gardens, saving each; returns what the user wrote on the sheets by hand. */
const makeIn = async (program: Program): Promise<OwnCells> => {
  const grower = await program.list();
  await program.save('untidy-list');

  await grower.open('Garden');
  await grower.press('Make the plant inventory');
  await program.save('inventory');

  await fillAll(grower, {
    'Station for Gate bed': 'Gate',
    'Station for Patio': 'Gate',
    'Station for Long border': 'Orchard',
  });
  await grower.press('Keep the walk');
  await grower.fill('Dose for one Large bush', '0.8');
  await grower.press('Keep the doses');
  await keepTheRig(grower);
  await keepTheMix(grower);
  await makeTheCard(grower, '2026-05-03');
  await writeTheLog(grower, '2', 'cool and cloudy');
  await program.save('whole-garden');

  await makeTheCard(grower, '2026-05-17', { Fills: 'equal' });
  await writeTheLog(grower, '3.5', 'wind, walked fast');
  await program.save('two-rounds');

  const over = await program.open('whole-garden');
  await over.open('Mix');
  await over.fill('Rate of product 1', '1.5');
  await over.press('Keep this mix');
  await makeTheCard(over, '2026-05-10', { 'Why above the label?': 'pale leaves after the rain' });
  await program.save('above-the-label');

  const empty = await program.emptyWorkbook();
  await empty.press('Begin an empty garden');
  await program.save('empty-garden');

  let own: OwnCells = {};
  await program.rework('whole-garden', 'own-columns', async (sheets) => {
    own = await workOnSheets(sheets);
  });
  return own;
};

/** Saves all gardens from each program into a folder, and tells in it what they hold. */
const saveGardens = async (folder: string, print: (line: string) => void): Promise<void> => {
  const owns: OwnCells[] = [];
  for (const open of [workbench, calc]) {
    const program = await open(folder);
    try {
      owns.push(await makeIn(program));
    } finally {
      await program.end();
    }
    print(`Saved from ${open.name}`);
  }
  const [own = {}, ...others] = owns;
  if (!others.every((other) => isDeepStrictEqual(other, own)))
    throw new Error('The programs do not have the user’s own cells in the same places.');
  const worked = GARDENS['own-columns'];
  const told = { ...GARDENS, 'own-columns': { ...worked, own: { ...worked.own, ...own } } };
  const style = await resolveConfig(EARLIER);
  writeFileSync(
    join(folder, KEPT),
    await format(JSON.stringify(told, null, 2), { ...style, parser: 'json' }),
  );
};

/**
 * Keeps the gardens as the program of today saves them, from the workbench and from Calc, with what is in them told
 * beside them.
 *
 * @param shape a new folder, named after what the program is before
 * @throws Error where the folder is there already: what an earlier program saved is never made again
 */
export const makeEarlier = async (shape: string, print: (line: string) => void): Promise<void> => {
  const kept = join(EARLIER, shape);
  if (existsSync(kept))
    throw new Error(`There are gardens under “${shape}” already, as the program was then. Use another name.`);
  const folder = mkdtempSync(join(tmpdir(), 'wandcount-earlier-'));
  try {
    await saveGardens(folder, print);
    cpSync(folder, kept, { recursive: true });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

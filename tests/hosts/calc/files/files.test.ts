import { filledCells } from './filledCells';
import { looks } from './looks';
import { startPrograms } from './programs';
import { savedAgain } from './savedAgain';
import { storedNames } from './storedNames';
import { withoutExtension } from './withoutExtension';
import { withoutNode } from './withoutNode';
import { workbenchAndCalc } from './workbenchAndCalc';

/* What files keep, by every way between Calc, the workbench, and a Calc without the extension. */

const programs = startPrograms();
for (const part of [
  savedAgain,
  storedNames,
  workbenchAndCalc,
  filledCells,
  looks,
  withoutExtension,
  withoutNode,
])
  part(programs);

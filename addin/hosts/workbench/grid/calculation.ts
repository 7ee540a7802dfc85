import { ICommandService, type Injector } from '@univerjs/core';
import { FormulaCalculationSessionService, IActiveDirtyManagerService } from '@univerjs/preset-sheets-core';

/** Longest that a calculation may take before the grid is given up as hanging, ms. */
const LONGEST = 60_000;
/** The grid waits 100 ms before it calculates; where nothing has begun after this, there was nothing to do, ms. */
const NOTHING_TO_DO = 400;

export interface Calculation {
  /** Calculates every formula anew. */
  everything(): void;
  settled(): Promise<void>;
}

/** Follows which changes the grid has still to calculate, so that reading waits only where there is work. */
export const trackCalculation = (injector: Injector, calculateAll: () => void): Calculation => {
  const session = injector.get(FormulaCalculationSessionService);
  const dirty = injector.get(IActiveDirtyManagerService);
  let changes = 0;
  let calculated = 0;
  injector.get(ICommandService).onCommandExecuted((command, options) => {
    if (options?.onlyLocal !== true && dirty.get(command.id)) changes += 1;
  });
  return {
    everything: () => {
      changes += 1;
      calculateAll();
    },
    settled: async () => {
      while (calculated < changes) {
        const reached = changes;
        await session.waitForLatestApplied(LONGEST, NOTHING_TO_DO);
        calculated = reached;
      }
    },
  };
};

import { ICommandService, type Injector } from '@univerjs/core';
import {
  FormulaCalculationSessionService,
  IActiveDirtyManagerService,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
} from '@univerjs/preset-sheets-core';

/** Longest that the page waits for a calculation before it goes on without the results, ms. */
export const LONGEST_WAIT = 60_000;
/** The grid waits 100 ms before it calculates; where nothing has begun after this, there was nothing to do, ms. */
const NOTHING_TO_DO = 400;

export interface Calculation {
  /** Calculates every formula anew. */
  everything(): void;
  /** Resolves when the results are there, or when the longest wait is over; it never fails. */
  settled(): Promise<void>;
  /** True while a calculation goes on that was no longer waited for: cells may show what they showed before it. */
  readonly behind: boolean;
  /** Calls the listener each time that such a calculation has ended, until the returned function is called. */
  caughtUp(listener: () => void): () => void;
  /** Gives up a calculation that goes on. */
  stopped(): Promise<void>;
}

/** False where the work takes longer than the time, ms. */
const within = (work: Promise<void>, time: number): Promise<boolean> =>
  new Promise((resolve) => {
    const late = setTimeout(() => resolve(false), time);
    void work.then(() => {
      clearTimeout(late);
      resolve(true);
    });
  });

/**
 * Follows which changes the grid has still to calculate, so that reading waits only where there is work. The grid is
 * never asked to keep to a time of its own: a long calculation is no failure.
 */
export const trackCalculation = (
  injector: Injector,
  calculateAll: () => void,
  longestWait: number = LONGEST_WAIT,
): Calculation => {
  const session = injector.get(FormulaCalculationSessionService);
  const dirty = injector.get(IActiveDirtyManagerService);
  const commands = injector.get(ICommandService);
  let changes = 0;
  let calculated = 0;
  let begun = 0;
  // A calculation takes in the changes before its beginning; one that is made during it waits for the next.
  let takenIn = 0;
  let ending: Promise<void> | undefined;
  let behind = false;
  const listeners = new Set<() => void>();
  commands.onCommandExecuted((command, options) => {
    if (options?.onlyLocal !== true && dirty.get(command.id)) changes += 1;
    if (command.id === SetFormulaCalculationStartMutation.id) [begun, takenIn] = [begun + 1, changes];
  });

  const work = async (): Promise<void> => {
    while (calculated < changes) {
      const [reached, before] = [changes, begun];
      const { started, resultApplied } = session.state;
      const running = started && !resultApplied;
      await session.waitForLatestApplied(undefined, NOTHING_TO_DO);
      calculated = running || begun > before ? Math.max(calculated, takenIn) : reached;
    }
  };
  const ended = (): Promise<void> =>
    (ending ??= work().then(() => {
      ending = undefined;
      if (!behind) return;
      behind = false;
      for (const listener of listeners) listener();
    }));

  return {
    get behind() {
      return behind;
    },
    everything: () => {
      changes += 1;
      calculateAll();
    },
    settled: async () => {
      if (behind || calculated >= changes) return;
      if (!(await within(ended(), longestWait))) behind = ending !== undefined;
    },
    caughtUp: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    stopped: async () => {
      if (!behind) return;
      commands.syncExecuteCommand(SetFormulaCalculationStopMutation.id, {});
      await within(ended(), longestWait);
    },
  };
};

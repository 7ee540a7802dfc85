import type { ApiMembers } from './apiMembers';
import { behaviours } from './behaviours';
import { clientObjects, type Batch } from './clientObjects';
import type { HostBook } from './hostBook';
import { HostError } from './hostError';

/** The program takes and gives 5 MB at once. */
const MOST_BYTES = 5 * 1024 * 1024;

interface RunOptions {
  readonly delayForCellEdit?: boolean;
  readonly mergeUndoGroup?: boolean;
}

export interface FakeOptions {
  readonly members: ApiMembers;
  /** Newest version of ExcelApi that the program has. */
  readonly version?: string;
  /** True where the program groups no undo over the adding of a sheet. */
  readonly addingNotUndone?: boolean;
}

/** A program that loads Office Add-ins, as much of it as there is without one. */
export interface FakeExcel {
  run<T>(
    options: RunOptions | ((context: Excel.RequestContext) => Promise<T>),
    batch?: (context: Excel.RequestContext) => Promise<T>,
  ): Promise<T>;
  supports(version: string): boolean;
  /** Members that were used, with the set that brings each. */
  readonly used: ReadonlyMap<string, string | undefined>;
  /** How often the program was asked, and the largest request and answer. */
  readonly traffic: { syncs: number; request: number; answer: number; writes: number };
  /** The user edits a cell: batches are refused, or wait where they may. */
  editing: boolean;
  /** The writing at this number, counted from now, is refused with the code. */
  failAt(writing: number | undefined, code?: string): void;
  /** Called before each batch that writes is carried out. */
  beforeWriting: (() => void | Promise<void>) | undefined;
  /** Takes back one step. */
  undo(): void;
  readonly undoSteps: number;
  /** Tells the handlers of an event, as the program would. */
  tell(event: string, args: object): void;
  readonly listeners: number;
}

const isNewer = (version: string, than: string): boolean => {
  const [a = 0, b = 0] = version.split('.').map(Number);
  const [c = 0, d = 0] = than.split('.').map(Number);
  return a > c || (a === c && b > d);
};

export const fakeExcel = (
  book: HostBook,
  { members, version = '1.20', addingNotUndone = false }: FakeOptions,
): FakeExcel => {
  const used = new Map<string, string | undefined>();
  const traffic = { syncs: 0, request: 0, answer: 0, writes: 0 };
  const handlers = new Set<{ readonly event: string; readonly handler: (args: unknown) => void }>();
  const before: unknown[] = [];
  let fault: { at: number; code: string } | undefined;

  const supports = (wanted: string): boolean => !isNewer(wanted, version);
  const use = (member: string, set: string | undefined): void => {
    used.set(member, set);
    const [name, needed = '1.1'] = (set ?? 'ExcelApi 1.1').split(' ');
    if (name !== 'ExcelApi' || !supports(needed)) throw new HostError('ApiNotFound', `${member} (${set})`);
  };
  const listen = (event: string, handler: (args: unknown) => void): (() => void) => {
    const entry = { event, handler };
    handlers.add(entry);
    return () => handlers.delete(entry);
  };

  const carryOut = async (batch: Batch, grouped: boolean): Promise<boolean> => {
    const actions = batch.actions.splice(0);
    const request = actions.reduce((sum, { bytes }) => sum + bytes, 0);
    traffic.syncs += 1;
    traffic.request = Math.max(traffic.request, request);
    if (request > MOST_BYTES) throw new HostError('RequestPayloadSizeLimitExceeded');
    const writes = actions.some(({ changes }) => changes);
    if (writes) {
      traffic.writes += 1;
      await fake.beforeWriting?.();
    }
    const state = book.state?.();
    let wrote = false;
    let forgets = false;
    batch.answered = 0;
    try {
      for (const action of actions) {
        if (action.changes && fault) {
          fault.at -= 1;
          if (fault.at === 0) {
            const { code } = fault;
            fault = undefined;
            throw new HostError(code, action.what);
          }
        }
        const notUndone = action.noUndo || (addingNotUndone && action.what === 'WorksheetCollection.add');
        if (notUndone && grouped) throw new HostError('UndoNotSupported', action.what);
        await action.run();
        wrote ||= action.changes;
        forgets ||= notUndone;
      }
    } finally {
      await book.flush?.();
      if (forgets) before.length = 0;
      else if (wrote && !grouped) before.push(state);
    }
    traffic.answer = Math.max(traffic.answer, batch.answered);
    if (batch.answered > MOST_BYTES) throw new HostError('ResponsePayloadSizeLimitExceeded');
    return wrote;
  };

  const cellLeft = async (mayWait: boolean): Promise<void> => {
    while (fake.editing) {
      if (!mayWait) throw new HostError('InvalidOperationInCellEditMode');
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  };

  const fake: FakeExcel = {
    used,
    traffic,
    supports,
    editing: false,
    beforeWriting: undefined,
    run: async (first, second) => {
      const options: RunOptions = typeof first === 'function' ? {} : first;
      const work = typeof first === 'function' ? first : second!;
      for (const key of Object.keys(options))
        if (key !== 'delayForCellEdit' && key !== 'mergeUndoGroup')
          throw new HostError('InvalidArgument', `run has no option ${key}`);
      if (options.mergeUndoGroup && !supports('1.20')) throw new HostError('ApiNotFound', 'mergeUndoGroup');
      const grouped = options.mergeUndoGroup === true;
      const batch: Batch = { actions: [], answered: 0, over: false };
      const state = book.state?.();
      let wrote = false;
      const sync = async (): Promise<void> => {
        await cellLeft(options.delayForCellEdit === true);
        wrote = (await carryOut(batch, grouped)) || wrote;
      };
      const context: { sync: typeof sync; workbook?: object } = { sync };
      const { make } = clientObjects({ members, behaviours, book, use, listen }, batch, context);
      context.workbook = make('Workbook', async () => ({}));
      try {
        const result = await work(context as unknown as Excel.RequestContext);
        if (batch.actions.length > 0) await sync();
        return result;
      } finally {
        batch.over = true;
        if (grouped && wrote) before.push(state);
      }
    },
    failAt: (at, code = 'GeneralException') => {
      fault = at === undefined ? undefined : { at, code };
    },
    undo: () => {
      if (before.length === 0) throw new Error('There is nothing to take back.');
      book.restore?.(before.pop());
    },
    get undoSteps() {
      return before.length;
    },
    tell: (event, args) => {
      for (const entry of [...handlers]) if (entry.event === event) entry.handler(args);
    },
    get listeners() {
      return handlers.size;
    },
  };
  return fake;
};

import { WorkbookError, WorkbookMoved, type Snapshot, type Workbook } from '../addin/workbook/port';
import { isAsSeen, isContested } from '../addin/workbook/seen';
import { inShape } from '../addin/workbook/shapes';

import { adoptionInSteps, overridesFrom, type ChosenList } from './adoption';
import { refused, Stopped, type Action, type Done, type Work } from './action';
import { actionNamed } from './actions/actionNamed';
import { bookIn, readCells } from './book';
import { explainCell } from './cell/explainCell';
import { listWanted, readChosenList } from './chosenList';
import { withFacts } from './facts';
import type { HostServices } from './services';
import { isSection, startState, type Facts, type PaneState } from './state';
import { afterTyping } from './typing';
import type { PaneEvent, View } from './view';
import { firstSection, viewOf } from './way';

/** The side pane of one workbook. It draws nothing: a host draws its view and tells it what the user did. */
export interface Pane {
  view(): View;
  /** Resolves when all that the event set off is done. */
  dispatch(event: PaneEvent): Promise<void>;
  /** Calls the listener after each change of the view, until the returned function is called. */
  subscribe(listener: () => void): () => void;
  /** Stops listening to the host. */
  close(): void;
}

type Reading = 'book' | 'cell' | 'list';

/** What a list of so many rows means is worked out before anybody looks up. */
const LONG_LIST = 2_000;

/**
 * Opens the pane of a workbook and begins to read it. Runs in a page and in Node alike.
 *
 * @param services what the host can do besides; what it leaves out the pane does not offer
 * @example createPane(workbook, { today: () => '2026-05-03', measures: 'US' }).view().section.title // 'Garden'
 */
export const createPane = (workbook: Workbook, services: HostServices): Pane => {
  let state = withFacts(startState(services));
  let pressing = false;
  let stopAsked = false;
  let queue: Promise<void> = Promise.resolve();
  const listeners = new Set<() => void>();

  const set = (next: PaneState): void => {
    const { section, folds, chosen } = state;
    state = withFacts(next, state);
    if (next.folds !== folds || next.chosen !== chosen || (next.chosen && next.section !== section))
      services.keepLook?.({ ...(next.chosen ? { section: next.section } : {}), folds: next.folds });
    for (const listener of listeners) listener();
  };
  const say = (tone: 'good' | 'warning', text: string, undo = false): void =>
    set({ ...state, message: { tone, text, ...(undo ? { undo: true } : {}) } });

  const work: Work = {
    services,
    read: (wanted) => workbook.read(wanted),
    step: async (text, share) => {
      set({ ...state, busy: { text, share, canStop: true } });
      await new Promise((resolve) => setTimeout(resolve, 0));
      if (stopAsked) throw new Stopped();
    },
  };

  /** How a list is understood with what the user decided by then. */
  const understood = async (list: ChosenList): Promise<Facts['adopted']> => {
    const overrides = overridesFrom(state);
    const steps = adoptionInSteps(list, overrides);
    const rows = list.cells.cells.length;
    for (;;) {
      const { done, value } = steps.next();
      if (done) return { list, overrides, adoption: value };
      if (rows > LONG_LIST) await work.step(`Looking through ${rows.toLocaleString('en-US')} rows`, 1);
    }
  };

  const readList = async (): Promise<void> => {
    const sheet = listWanted(state);
    if (sheet === undefined) return;
    try {
      const list = await readChosenList(sheet, work);
      const adopted = await understood(list);
      set({ ...state, list, listStale: false, facts: { ...state.facts, adopted } });
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      set({ ...state, listStopped: sheet });
      say('warning', `Stopped reading “${sheet}”. Choose it again to read it.`);
    }
  };

  const readSheets = async (): Promise<void> => {
    const first = state.garden === undefined;
    const book = bookIn(await readCells(workbook), services);
    const calculating = services.calculating?.() ?? false;
    const next = withFacts({ ...state, ...book, today: services.today(), calculating }, state);
    set(first && !next.chosen ? { ...next, section: firstSection(next) } : next);
  };

  const read = async (readings: readonly Reading[]): Promise<void> => {
    if (readings.includes('book')) await readSheets();
    if (readings.includes('cell') && services.selected !== undefined) {
      const selected = await services.selected();
      const cell = selected && (await explainCell(workbook, selected));
      set({ ...state, cell });
    }
    await readList();
  };

  /** Runs one piece of work after the others; what goes wrong is said, and told to the host where it is not ours. */
  const afterOthers = (task: () => Promise<void>): Promise<void> => {
    const run = async (): Promise<void> => {
      stopAsked = false;
      try {
        await task();
      } catch (error) {
        say('warning', error instanceof Error ? error.message : String(error));
        if (!(error instanceof WorkbookError)) throw error;
      } finally {
        if (state.busy !== undefined) set({ ...state, busy: undefined });
      }
    };
    const done = queue.then(run);
    queue = done.catch(() => undefined);
    return done;
  };

  const finish = async (
    { says, tone, change, after = (same) => same }: Done,
    seen?: Snapshot,
  ): Promise<void> => {
    if (change !== undefined) {
      set({ ...state, busy: { text: change.title, canStop: false } });
      await workbook.apply(change, seen);
    }
    set(after(state));
    await read(change === undefined ? [] : ['book', 'cell']);
    const told = [says, ...(change?.says ?? [])].join(' ');
    say(tone, told, change !== undefined && services.undo !== undefined);
  };

  /** An action of a workbook as this program makes it: what an older one did not make is made in the same step. */
  const inToday = async (action: Action, pressed: PaneState): Promise<Done> => {
    const { snapshot, garden } = pressed;
    if (snapshot === undefined || garden === undefined) return action.act(pressed, work);
    if (pressed.newer !== undefined) {
      const done = await action.act(pressed, work);
      return done.change === undefined ? done : refused(pressed.newer);
    }
    const shaped = inShape(snapshot, garden.settings.measures);
    if (shaped.edits.length === 0) return action.act(pressed, work);
    const book = bookIn(shaped.snapshot, services);
    const done = await action.act(withFacts({ ...pressed, ...book }, pressed), work);
    const { change } = done;
    if (change === undefined) return done;
    const [edits, says] = [
      [...shaped.edits, ...change.edits],
      [...(change.says ?? []), ...shaped.says],
    ];
    return { ...done, change: { ...change, edits, says } };
  };

  /**
   * Reads the sheets, then decides, then writes. Where they were edited in between, it begins once more, unless the edit
   * is of a cell that would be written over. What was typed after the press is not part of it.
   */
  const perform = async (action: Action, typed: PaneState['typed'], before?: Snapshot): Promise<void> => {
    await readSheets();
    const pressed = withFacts({ ...state, typed }, state);
    const { snapshot } = pressed;
    const why = action.whyNot(pressed);
    try {
      const done = why === undefined ? await inToday(action, pressed) : refused(why);
      if (before && snapshot && done.change && isContested(done.change, before, snapshot))
        throw new WorkbookMoved();
      await finish(done, snapshot);
    } catch (error) {
      if (error instanceof WorkbookMoved && !before) return perform(action, typed, snapshot);
      if (!(error instanceof Stopped)) throw error;
      say('warning', 'Stopped. Nothing was written.');
    }
  };

  const takeBack = async (): Promise<void> => {
    const { message, snapshot: written } = state;
    await readSheets();
    if (written && state.snapshot && !isAsSeen(written, state.snapshot))
      return say('warning', 'The workbook was edited since. Take the last steps back with its own Undo.');
    await services.undo?.();
    await read(['book', 'cell']);
    say('good', `Taken back: ${message?.text ?? ''}`);
  };

  const open = (section: string): Promise<void> => {
    // What was said belongs to the section that is left.
    if (isSection(section))
      set({ ...state, section, chosen: true, ...(section === state.section ? {} : { message: undefined }) });
    // A card may have got its numbers meanwhile.
    return afterOthers(() => read(state.cardWaits ? ['book'] : []));
  };

  const press = (name: string): Promise<void> => {
    if (name === 'stop') {
      stopAsked = true;
      return Promise.resolve();
    }
    if (name === 'dismiss') {
      set({ ...state, message: undefined });
      return Promise.resolve();
    }
    if (name.startsWith('go.')) return open(name.slice('go.'.length));
    const action = actionNamed(name);
    // A second press while the first is under way is a double click, not a second wish.
    if (pressing || (name !== 'undo' && action === undefined)) return Promise.resolve();
    pressing = true;
    const { typed } = state;
    return afterOthers(() => (action === undefined ? takeBack() : perform(action, typed))).finally(() => {
      pressing = false;
    });
  };

  const dispatch = (event: PaneEvent): Promise<void> => {
    switch (event.kind) {
      case 'open':
        return open(event.section);
      case 'type':
        // At once, before anything else is waited for: a field must show what was typed.
        set(afterTyping(state, event.field, event.value));
        return listWanted(state) === undefined ? Promise.resolve() : afterOthers(readList);
      case 'fold':
        set({ ...state, folds: { ...state.folds, [event.block]: event.open } });
        return listWanted(state) === undefined ? Promise.resolve() : afterOthers(readList);
      case 'press':
        return press(event.action);
      case 'workbookChanged':
        // What was said of the last action may not hold any more, and the host's next undo would not be of it.
        if (state.message?.undo) set({ ...state, message: undefined });
        return afterOthers(() => {
          set({ ...state, listStale: true });
          return read(['book', 'cell']);
        });
      case 'calculated':
        return afterOthers(() => read(['book', 'cell']));
      case 'selected':
        return afterOthers(() => read(['cell']));
    }
  };

  const tellFailure = (reason: unknown): void =>
    console.error('The pane could not follow the workbook.', reason);
  const stopWatching = services.watch?.((event) => void dispatch(event).catch(tellFailure));
  void afterOthers(() => read(['book', 'cell'])).catch(tellFailure);

  return {
    view: () => viewOf(state),
    dispatch,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {
      stopWatching?.();
      listeners.clear();
    },
  };
};

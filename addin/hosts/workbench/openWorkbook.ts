/** The workbook that is open, as a file: its name, and whether it holds what was not saved. */
export interface OpenWorkbook {
  readonly name: string;
  readonly unsaved: boolean;
  /** Another workbook is open now. */
  opened(name: string): void;
  saved(name: string): void;
  changed(): void;
  /** Calls the listener when the name or the state is another. */
  watch(listener: () => void): void;
  /** Calls the listener at every change of the workbook. */
  watchChanges(listener: () => void): void;
}

export const openWorkbook = (): OpenWorkbook => {
  const listeners: (() => void)[] = [];
  const changeListeners: (() => void)[] = [];
  let [name, unsaved] = ['', false];
  const set = (nextName: string, nextUnsaved: boolean): void => {
    if (name === nextName && unsaved === nextUnsaved) return;
    [name, unsaved] = [nextName, nextUnsaved];
    listeners.forEach((listener) => listener());
  };
  return {
    get name() {
      return name;
    },
    get unsaved() {
      return unsaved;
    },
    opened: (next) => set(next, false),
    saved: (next) => set(next, false),
    changed: () => {
      set(name, true);
      changeListeners.forEach((listener) => listener());
    },
    watch: (listener) => void listeners.push(listener),
    watchChanges: (listener) => void changeListeners.push(listener),
  };
};

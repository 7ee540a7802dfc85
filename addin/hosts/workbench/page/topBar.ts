import type { OpenWorkbook } from '../openWorkbook';
import type { PageBook } from '../pageBook';
import type { Sheets } from '../sheets';
import type { Workbench } from '../workbench';

/** Workbooks to try, served beside the page. */
export const SAMPLES = [
  { path: 'samples/untidy-list.xlsx', label: 'A grower’s untidy list' },
  { path: 'samples/garden.xlsx', label: 'A garden with everything built' },
  { path: 'samples/tank-what-if.xlsx', label: 'Which barrel? A comparison' },
] as const;

const element = <Kind extends HTMLElement>(id: string): Kind => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no #${id}.`);
  return found as Kind;
};

/** A button that opens a small menu; it closes on a choice, on Escape and on a press elsewhere. */
const openMenu = (button: HTMLElement, menu: HTMLElement): void => {
  const set = (open: boolean): void => {
    menu.hidden = !open;
    button.setAttribute('aria-expanded', String(open));
  };
  const first = (): void => menu.querySelector<HTMLElement>('button')?.focus();
  button.addEventListener('click', () => {
    set(menu.hidden === true);
    if (!menu.hidden) first();
  });
  menu.addEventListener('click', (event) => {
    if (event.target instanceof HTMLButtonElement) set(false);
  });
  menu.addEventListener('keydown', (event) => {
    const items = [...menu.querySelectorAll<HTMLElement>('button')];
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const at = items.indexOf(document.activeElement as HTMLElement);
    if (step !== undefined) {
      event.preventDefault();
      items[(at + step + items.length) % items.length]?.focus();
    }
    if (event.key === 'Escape') {
      set(false);
      button.focus();
    }
  });
  addEventListener('pointerdown', (event) => {
    if (event.target instanceof Node && !menu.contains(event.target) && !button.contains(event.target))
      set(false);
  });
};

/** Keeps the bar above the work in step with the workbook, and the workbook in step with its buttons. */
export const openTopBar = (book: PageBook, file: OpenWorkbook, bench: Workbench): void => {
  const on = (id: string, press: () => Promise<void>): void => {
    const button = element<HTMLButtonElement>(id);
    button.addEventListener('click', () => {
      if (button.getAttribute('aria-disabled') !== 'true') void press();
    });
  };
  on('save', bench.save);
  on('undo', bench.undo);
  on('redo', bench.redo);
  on('print', bench.printCard);
  on('new', bench.newGarden);

  const chooser = element<HTMLInputElement>('file');
  element('open').addEventListener('click', () => chooser.click());
  chooser.addEventListener('change', () => {
    const [chosen] = chooser.files ?? [];
    // The same file may be chosen again.
    chooser.value = '';
    if (chosen) void bench.openFile(chosen);
  });
  for (const { path, label } of SAMPLES) {
    const item = document.createElement('li');
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => void bench.openServed(path));
    item.append(button);
    element('samples').append(item);
  }
  openMenu(element('more'), element('menu'));

  addEventListener(
    'keydown',
    (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 's') return;
      event.preventDefault();
      event.stopPropagation();
      void bench.save();
    },
    { capture: true },
  );

  const tellFile = (): void => {
    element('file-name').textContent = file.name;
    element('file-state').hidden = !file.unsaved;
    document.title = `${file.unsaved ? '• ' : ''}${file.name} – Wandcount`;
  };
  file.watch(tellFile);
  const followSteps = ({ grid }: Sheets): void =>
    void grid.undo.undoRedoStatus$.subscribe(({ undos, redos }) => {
      element('undo').setAttribute('aria-disabled', String(undos === 0));
      element('redo').setAttribute('aria-disabled', String(redos === 0));
    });
  // Without the sheets there is no step to take back.
  book.whenThere.then(followSteps, () => undefined);
};

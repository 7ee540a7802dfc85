import { andList } from '../../workbook/fields/holds';
import { CARD, isUnguarded } from '../../workbook/card/cardNames';
import { EARLIER_CARD } from '../../workbook/card/readCard';
import { areaNamed } from '../../workbook/snapshot';
import { openFile, sayRefusal } from './files/openFile';
import { emptyBook, type BookData } from './grid/bookData';
import { rehomed } from './grid/rehome';
import type { OpenWorkbook } from './openWorkbook';
import type { Notices } from './page/notices';
import type { PageBook } from './pageBook';
import type { DiskFile } from './saveToDisk';

/** What the page's own commands do. None of them throws: what went wrong is said in a notice. */
export interface Workbench {
  /** Puts a workbook in place of the open one, which is offered back where it held what was not saved. */
  show(name: string, book: BookData, state: 'saved' | 'unsaved', active?: string): Promise<void>;
  openBytes(name: string, bytes: Uint8Array): Promise<void>;
  /** Opens a file that is served beside the page. */
  openServed(path: string): Promise<void>;
  newGarden(): Promise<void>;
  save(): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  printCard(): Promise<void>;
}

interface Parts {
  readonly book: PageBook;
  readonly file: OpenWorkbook;
  readonly disk: DiskFile;
  readonly notices: Notices;
  /** Called after another workbook was opened. */
  readonly replaced: () => void;
}

const NEW_NAME = 'garden.xlsx';
/** Files from this size on take longer to open than a blink, bytes. */
const LONG_FILE = 300_000;

/** Lets the page draw what it was told; a page that is not looked at does not draw, and is not waited for. */
const drawn = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, 200);
    requestAnimationFrame(() => setTimeout(resolve));
  });

const asXlsx = (name: string): string =>
  /\.xlsx$/i.test(name) ? name : `${name.replace(/\.[^.]*$/, '')}.xlsx`;

export const openWorkbench = ({ book, file, disk, notices, replaced }: Parts): Workbench => {
  const warn = (id: string, text: string): void => void notices.show(id, { text, tone: 'warning' });

  const show: Workbench['show'] = async (name, data, state, active = '') => {
    const before = file.unsaved ? { name: file.name, book: rehomed(book.save()) } : undefined;
    await book.show(data, active);
    disk.forget();
    file.opened(name);
    if (state === 'unsaved') file.changed();
    notices.clear('file');
    notices.clear('left');
    notices.clear('renamed');
    replaced();
    if (before)
      notices.show('before', {
        text: `“${before.name}” had changes that were not saved.`,
        tone: 'plain',
        actions: [
          { label: 'Bring it back', press: () => void show(before.name, before.book, 'unsaved') },
          { label: 'Leave it', press: () => undefined },
        ],
      });
    else notices.clear('before');
  };

  /** What takes the page's whole attention is said before it begins. */
  const during = async <Done>(sentence: string | undefined, work: () => Promise<Done>): Promise<Done> => {
    if (sentence === undefined) return work();
    const done = notices.show('at-work', { text: sentence, tone: 'plain', passing: true });
    await drawn();
    return work().finally(done);
  };

  const putIn = async (name: string, bytes: Uint8Array): Promise<void> => {
    let opened: Awaited<ReturnType<typeof openFile>>;
    try {
      opened = await openFile(name, bytes);
    } catch (reason) {
      console.warn(`“${name}” was not opened.`, reason);
      return warn('file', sayRefusal(name, reason));
    }
    await show(name, opened.book, 'saved', opened.active);
    if (opened.renamed.length > 0)
      warn(
        'renamed',
        `Formulas cannot find a sheet with an exclamation mark in its name here. ${andList(
          opened.renamed.map(({ from, to }) => `“${from}” is “${to}” now`),
        )}, and formulas follow. Your file keeps the old name until you save over it.`,
      );
    if (opened.left.length > 0)
      warn(
        'left',
        `Not taken over from “${name}”: ${andList(opened.left)}. Your file still has them; save under another name to keep it so.`,
      );
  };

  const openBytes: Workbench['openBytes'] = (name, bytes) =>
    during(bytes.length < LONG_FILE ? undefined : `Opening “${name}”. A long list takes a while.`, () =>
      putIn(name, bytes),
    );

  return {
    show,
    openBytes,
    openServed: async (path) => {
      const address = new URL(path, document.baseURI);
      const name = decodeURIComponent(address.pathname.split('/').at(-1) ?? path);
      if (address.origin !== location.origin)
        return warn(
          'file',
          `“${path}” lies elsewhere; only files beside this page are opened by their address.`,
        );
      const answer = await fetch(address).catch(() => undefined);
      if (!answer?.ok)
        return warn(
          'file',
          `“${name}” could not be fetched. Open a file of your own, or start a new garden.`,
        );
      await openBytes(name, new Uint8Array(await answer.arrayBuffer()));
    },
    newGarden: () => show(NEW_NAME, emptyBook(), 'saved'),
    save: async () => {
      try {
        const sheets = await book.whenThere;
        const name = await disk.save(asXlsx(file.name || NEW_NAME), await sheets.file());
        if (name === undefined) return;
        file.saved(name);
        if (book.behind)
          warn(
            'file',
            `“${name}” was saved while formulas were still being worked out. Save it again when they show their results.`,
          );
      } catch (reason) {
        console.error('The workbook was not saved.', reason);
        warn(
          'file',
          `“${file.name}” could not be saved (${reason instanceof Error ? reason.message : String(reason)}).`,
        );
      }
    },
    undo: async () => book.sheets?.grid.back(),
    redo: async () => book.sheets?.grid.again(),
    printCard: async () => {
      const outline = await book.workbook.outline();
      const card = areaNamed(outline, CARD);
      if (!card) return warn('print', 'There is no card yet. Make one under Round, then print it.');
      // Any other card blanks its own measures.
      if (isUnguarded(outline)) return warn('print', EARLIER_CARD);
      notices.clear('print');
      try {
        await (await book.whenThere).print(card.sheet);
      } catch (reason) {
        warn('print', reason instanceof Error ? reason.message : String(reason));
      }
    },
  };
};

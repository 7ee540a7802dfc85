import { readyReader } from '../../files/readBeside';
import { andList } from '../../workbook/fields/holds';
import { CARD, isUnguarded } from '../../workbook/card/cardNames';
import { EARLIER_CARD } from '../../workbook/card/readCard';
import { areaNamed } from '../../workbook/snapshot';
import { openFile, sayRefusal, type OpenedFile } from './files/openFile';
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
  /** Opens a file; what is wished for next, while this one is read, takes its place. */
  openFile(file: File): Promise<void>;
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

const asXlsx = (name: string): string =>
  /\.xlsx$/i.test(name) ? name : `${name.replace(/\.[^.]*$/, '')}.xlsx`;

export const openWorkbench = ({ book, file, disk, notices, replaced }: Parts): Workbench => {
  const warn = (id: string, text: string): void => void notices.show(id, { text, tone: 'warning' });

  let wish = new AbortController();
  let current: Promise<void> = Promise.resolve();
  /** Ends what is still being opened, so that the later wish wins; resolves when nothing is opened any more. */
  const inPlace = (work: (own: AbortController) => Promise<void>): Promise<void> => {
    wish.abort();
    const own = (wish = new AbortController());
    return (current = work(own).then(() => (own === wish ? undefined : current)));
  };
  /** One workbook after the other takes the place of the open one. */
  let putting: Promise<void> = Promise.resolve();
  const inTurn = ({ signal }: AbortController, work: () => Promise<void>): Promise<void> => {
    const done = putting.then(() => (signal.aborted ? undefined : work()));
    putting = done.catch(() => undefined);
    return done;
  };

  const put = async (
    name: string,
    data: BookData,
    state: 'saved' | 'unsaved',
    active: string,
  ): Promise<void> => {
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

  const show: Workbench['show'] = (name, data, state, active = '') =>
    inPlace((own) => inTurn(own, () => put(name, data, state, active)));

  let readings = 0;
  /** Reads a file, telling how far it is where that takes a while; undefined where it was stopped or refused. */
  const read = async (name: string, content: Blob, own: AbortController): Promise<OpenedFile | undefined> => {
    readings += 1;
    const id = `reading-${readings}`;
    const stop = (): void => {
      own.abort();
      notices.show('file', { text: `“${name}” was not opened, as you stopped it.`, tone: 'plain' });
    };
    if (content.size >= LONG_FILE)
      notices.show(id, {
        text: `Opening “${name}”. A long list takes a while.`,
        tone: 'plain',
        atWork: true,
        actions: [{ label: 'Stop', press: stop }],
      });
    try {
      const bytes = new Uint8Array(await content.arrayBuffer());
      return await openFile(name, bytes, (rows, of) => notices.progress(id, rows, of), {
        signal: own.signal,
      });
    } catch (reason) {
      if (own.signal.aborted) return undefined;
      console.warn(`“${name}” was not opened.`, reason);
      return warn('file', sayRefusal(name, reason)) as undefined;
    } finally {
      notices.clear(id);
    }
  };

  const open = async (name: string, content: Blob, own: AbortController): Promise<void> => {
    const opened = await read(name, content, own);
    if (!opened) return;
    await inTurn(own, async () => {
      await put(name, opened.book, 'saved', opened.active);
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
    });
  };

  return {
    show,
    openFile: (chosen) => inPlace((own) => open(chosen.name, chosen, own)),
    openServed: (path) =>
      inPlace(async (own) => {
        const address = new URL(path, document.baseURI);
        const name = decodeURIComponent(address.pathname.split('/').at(-1) ?? path);
        if (address.origin !== location.origin)
          return warn(
            'file',
            `“${path}” lies elsewhere; only files beside this page are opened by their address.`,
          );
        readyReader();
        const answer = await fetch(address, { signal: own.signal }).catch(() => undefined);
        if (own.signal.aborted) return;
        if (!answer?.ok)
          return warn(
            'file',
            `“${name}” could not be fetched. Open a file of your own, or start a new garden.`,
          );
        await open(name, await answer.blob(), own);
      }),
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

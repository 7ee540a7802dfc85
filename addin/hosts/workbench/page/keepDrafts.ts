import { openDrafts, type Draft, type Drafts } from '../drafts';
import { rehomed } from '../grid/rehome';
import type { OpenWorkbook } from '../openWorkbook';
import type { PageBook } from '../pageBook';
import type { Workbench } from '../workbench';
import type { Notices } from './notices';

/** A draft is kept this long after the last change, ms. */
const PAUSE = 1_500;

const when = (at: number): string => {
  const time = new Date(at);
  const today = new Date().toDateString() === time.toDateString();
  const clock = time.toLocaleTimeString([], { hour: 'numeric', minute: '2-digit' });
  return today ? clock : `${time.toLocaleDateString([], { day: 'numeric', month: 'long' })}, ${clock}`;
};

const offer = (drafts: Drafts, draft: Draft, bench: Workbench, notices: Notices): void => {
  notices.show(`draft-${draft.id}`, {
    text: `“${draft.name}” from ${when(draft.at)} was not saved.`,
    tone: 'plain',
    actions: [
      {
        label: 'Open it',
        press: () => {
          const open = async (): Promise<void> => {
            await bench.show(draft.name, rehomed(draft.book), 'unsaved');
            await drafts.keep(draft.name, draft.book);
            await drafts.discard(draft.id);
          };
          void open();
        },
      },
      { label: 'Discard', press: () => void drafts.discard(draft.id) },
    ],
  });
};

/**
 * Keeps what is not saved in the browser's own store, so that it outlives a crash of the page, offers what earlier
 * pages left behind, and asks before a page with unsaved work is left.
 */
export const keepDrafts = async (
  book: PageBook,
  file: OpenWorkbook,
  bench: Workbench,
  notices: Notices,
): Promise<void> => {
  addEventListener('beforeunload', (event) => {
    if (file.unsaved) event.preventDefault();
  });
  let drafts: Drafts;
  try {
    drafts = await openDrafts();
  } catch (reason) {
    console.warn('No drafts are kept.', reason);
    notices.show('drafts', {
      text: 'This browser does not let the page keep drafts. Save often.',
      tone: 'warning',
    });
    return;
  }
  for (const draft of (await drafts.leftBehind()).slice(0, 3)) offer(drafts, draft, bench, notices);

  let timer: ReturnType<typeof setTimeout> | undefined;
  const keep = (): void => {
    clearTimeout(timer);
    timer = undefined;
    const done = file.unsaved ? drafts.keep(file.name, book.save()) : drafts.forget();
    done.catch((reason: unknown) => {
      console.warn('The draft was not kept.', reason);
      notices.show('drafts', {
        text: 'The draft of your work could not be kept. Save it now.',
        tone: 'warning',
      });
    });
  };
  file.watch(keep);
  file.watchChanges(() => {
    clearTimeout(timer);
    timer = setTimeout(keep, PAUSE);
  });
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' && timer !== undefined) keep();
  });
};

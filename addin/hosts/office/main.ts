import type { OpenedPane } from './openPane';
import { RIBBON, type RibbonButtonId } from './ribbon';
import { say } from './say';
import { associateFunctions } from './worksheetFunctions';

/**
 * The one script of the page that the pane, the functions and the ribbon's buttons share. The functions come first and
 * alone; the pane follows.
 */

const NO_PROGRAM =
  'This page belongs to a spreadsheet program that loads Office Add-ins. Open it from there.';

const associated = associateFunctions();

const write = (text: string): void => {
  const line = document.createElement('p');
  line.className = 'waiting';
  line.setAttribute('role', 'status');
  line.textContent = text;
  document.querySelector('#pane')?.replaceChildren(line);
};

const open = async (): Promise<OpenedPane> => {
  const element = document.querySelector<HTMLElement>('#pane');
  if (!element) throw new Error('The page has no place for the pane.');
  const { openPane } = await import(/* webpackChunkName: "pane" */ './openPane');
  element.replaceChildren();
  return openPane(element);
};

/** Answers a button of the ribbon; the program waits for `completed`, whatever happens. */
const answer = async (
  id: RibbonButtonId,
  pane: Promise<OpenedPane>,
  event: Office.AddinCommands.Event,
): Promise<void> => {
  try {
    const said = await (await pane).press(id);
    if (said !== undefined) say(said);
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
  } finally {
    event.completed();
  }
};

const begin = async (): Promise<void> => {
  if (typeof Office === 'undefined') return write(NO_PROGRAM);
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) return write(NO_PROGRAM);
  if (!associated) associateFunctions();
  const pane = open();
  for (const { id } of RIBBON)
    // The program takes no promise; what goes wrong is said there.
    Office.actions.associate(id, (event: Office.AddinCommands.Event) => void answer(id, pane, event));
  await pane;
};

// A runtime without a page runs functions only.
if (typeof document !== 'undefined')
  begin().catch((error: unknown) => {
    write('The pane could not be opened. Close it and open it again.');
    console.error(error);
  });

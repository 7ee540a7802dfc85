import { later } from '../../../taskpane/later';
import type { HostEvent } from '../../../taskpane/services';
import { areaOfReference } from '../../workbook/references';

import type { ExcelProgram } from './excelProgram';
import * as ownWriting from './later/ownWriting';
import * as renames from './later/renames';
import type { OfficeWorkbook } from './officeWorkbook';

/** The user's hand is followed this long after its last move, so that typing and dragging are told once, ms. */
const PAUSE = 200;

/**
 * Tells what the user and others do in the workbook, from when the program listens until the returned function is
 * called. The add-in's own writing is not told; what a user does meanwhile is, where the program tells the two apart.
 */
export const watchWorkbook = (
  program: ExcelProgram,
  workbook: OfficeWorkbook,
  listener: (event: HostEvent) => void,
): (() => void) => {
  let stopped = false;
  let names = new Map<string, string>();
  let at: HostEvent = { kind: 'workbookChanged' };
  const tell = (event: () => HostEvent) => later(() => void (stopped || listener(event())), PAUSE);
  const changed = tell(() => ({ kind: 'workbookChanged' }));
  const selected = tell(() => at);
  const tellsWhose = program.supports(ownWriting.NEEDS);

  const onChanged = async (event: Excel.WorksheetChangedEventArgs): Promise<void> => {
    if (tellsWhose ? !ownWriting.isOwn(event) : !workbook.writing) changed();
  };
  const onSheets = async (): Promise<void> => {
    if (!workbook.writing) changed();
    await readNames();
  };
  const onSelected = async (event: Excel.WorksheetSelectionChangedEventArgs): Promise<void> => {
    const sheet = names.get(event.worksheetId);
    const [first = ''] = event.address.split(',');
    const area = areaOfReference(first.replace(/^.*!/, ''), sheet);
    if (sheet === undefined || area === undefined || workbook.writing) return;
    at = { kind: 'selected', sheet, row: area.row, column: area.column };
    selected();
  };

  const readNames = (): Promise<void> =>
    program.run(
      async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load('items/id,items/name');
        await context.sync();
        names = new Map(worksheets.items.map(({ id, name }) => [id, name]));
      },
      { waitForCell: true },
    );

  const listen = async (): Promise<void> => {
    await program.run(
      async (context) => {
        const { worksheets } = context.workbook;
        worksheets.onChanged.add(onChanged);
        worksheets.onSelectionChanged.add(onSelected);
        worksheets.onAdded.add(onSheets);
        worksheets.onDeleted.add(onSheets);
        if (program.supports(renames.NEEDS)) renames.onRename(worksheets, onSheets);
        await context.sync();
      },
      { waitForCell: true },
    );
    await readNames();
  };
  listen().catch((reason: unknown) => console.error('The pane cannot follow the workbook.', reason));
  return () => {
    stopped = true;
  };
};

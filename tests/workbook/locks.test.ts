import { describe, expect, test } from 'vitest';

import type { Area, Edit } from '../../addin/workbook/change';
import { refuseLocked, touchedBy, type Locks } from '../../addin/workbook/locks';
import { WorkbookError } from '../../addin/workbook/port';

const at = (sheet: string): Area => ({ sheet, row: 0, column: 0, rows: 1, columns: 1 });

/** One edit of every kind. */
const KINDS: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'Added' },
  { kind: 'write', sheet: 'Written', row: 0, column: 0, cells: [[1]] },
  { kind: 'format', area: at('Format'), format: '0.0' },
  { kind: 'width', sheet: 'Width', column: 0, columns: 1, characters: 9 },
  { kind: 'style', area: at('Style'), style: 'input' },
  { kind: 'wrap', area: at('Wrap') },
  { kind: 'merge', area: at('Merge') },
  { kind: 'freeze', sheet: 'Freeze', rows: 1, columns: 0 },
  { kind: 'list', area: at('List'), source: at('Read only from'), message: '' },
  { kind: 'name', name: 'Named', area: at('Named') },
  { kind: 'note', sheet: 'Note', row: 0, column: 0, text: 'Counted.' },
  {
    kind: 'chart',
    id: 'fills',
    sheet: 'Chart',
    row: 0,
    column: 0,
    type: 'bar',
    title: 'Fills',
    finding: 'Fewer.',
    labels: at('Labels'),
    series: [{ name: 'Fills', values: at('Values') }],
  },
  { kind: 'page', area: at('Page'), landscape: false, repeatRows: 0 },
  { kind: 'activate', sheet: 'Shown', row: 0, column: 0 },
];

describe('what a change touches', () => {
  test('is every sheet that it changes, not those that it adds, reads, names or goes to', () => {
    expect(touchedBy(KINDS)).toEqual({
      workbook: true,
      structure: true,
      sheets: [
        ...['Written', 'Format', 'Width', 'Style', 'Wrap', 'Merge'],
        ...['Freeze', 'List', 'Note', 'Chart', 'Page'],
      ],
    });
  });

  test('is told once for each sheet', () => {
    const beds: Edit = { kind: 'wrap', area: at('Beds') };
    expect(touchedBy([beds, { kind: 'wrap', area: at('Doses') }, beds])).toMatchObject({
      structure: false,
      sheets: ['Beds', 'Doses'],
    });
  });

  test.each(KINDS)(
    'is the workbook with an edit of the kind $kind, unless it only goes to a cell',
    (edit) => {
      expect(touchedBy([edit]).workbook).toBe(edit.kind !== 'activate');
    },
  );
});

describe('a lock', () => {
  const sentence = (locks: Partial<Locks>): string => {
    try {
      refuseLocked({ readOnly: false, structure: false, sheets: [], ...locks });
    } catch (error) {
      expect(error).toBeInstanceOf(WorkbookError);
      return (error as WorkbookError).message;
    }
    return 'not refused';
  };
  const READ_ONLY =
    'This workbook is open for reading only. Open it for editing, or save a copy and open that, then try again.';

  test.each<[string, Partial<Locks>]>([
    ['not refused', {}],
    [READ_ONLY, { readOnly: true }],
    [READ_ONLY, { readOnly: true, structure: true, sheets: ['Beds'] }],
    [
      "The workbook's structure is protected, so no sheet can be added. Take the protection off, then try again.",
      { structure: true, sheets: ['Beds'] },
    ],
    ['The sheet “Beds” is protected. Take the protection off, then try again.', { sheets: ['Beds'] }],
    [
      'The sheets “Beds”, “Doses” are protected. Take the protection off, then try again.',
      { sheets: ['Beds', 'Doses'] },
    ],
  ])('%s', (said, locks) => expect(sentence(locks)).toBe(said));
});

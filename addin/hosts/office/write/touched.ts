import type { Area, Edit } from '../../../workbook/change';

import { writtenArea } from './cells';

type Kind = Edit['kind'];
type Of<K extends Kind> = Extract<Edit, { kind: K }>;

/** The edits of some kinds, in their order. */
export const only = <K extends Kind>(edits: readonly Edit[], ...kinds: readonly K[]): Of<K>[] =>
  edits.filter((edit): edit is Of<K> => kinds.some((kind) => edit.kind === kind));

/** The sheet that an edit changes; undefined for one that changes none. */
const changedSheet = (edit: Edit): string | undefined => {
  switch (edit.kind) {
    case 'format':
    case 'style':
    case 'wrap':
    case 'merge':
    case 'list':
    case 'page':
      return edit.area.sheet;
    case 'write':
    case 'width':
    case 'freeze':
    case 'note':
    case 'chart':
      return edit.sheet;
    case 'addSheet':
    case 'name':
    case 'activate':
      return undefined;
  }
};

/** Every sheet that the edits change, once. */
export const changedSheets = (edits: readonly Edit[]): string[] => [
  ...new Set(edits.flatMap((edit) => changedSheet(edit) ?? [])),
];

/** Columns that an edit makes wider or narrower, as their first row. */
export const widenedArea = ({ sheet, column, columns }: Of<'width'>): Area => ({
  sheet,
  row: 0,
  column,
  rows: 1,
  columns,
});

/** Cells whose content or number format the edits change. */
export const writtenAreas = (edits: readonly Edit[]): Area[] => [
  ...only(edits, 'write').map(writtenArea),
  ...only(edits, 'format', 'merge').map(({ area }) => area),
];

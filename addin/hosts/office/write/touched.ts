import type { Area, Edit } from '../../../workbook/change';

import { writtenArea } from './cells';

type Kind = Edit['kind'];
type Of<K extends Kind> = Extract<Edit, { kind: K }>;

/** The edits of some kinds, in their order. */
export const only = <K extends Kind>(edits: readonly Edit[], ...kinds: readonly K[]): Of<K>[] =>
  edits.filter((edit): edit is Of<K> => kinds.some((kind) => edit.kind === kind));

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

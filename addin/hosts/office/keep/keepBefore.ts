import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import type { ExcelProgram } from '../excelProgram';
import type { KnownBook } from '../read/readOutline';
import { remarks } from '../remarks';
import type { FormatAt } from '../write/cells';
import { step, type Step } from '../write/step';
import { only, widenedArea, writtenAreas } from '../write/touched';

import { keepAspects, outermost, type Aspect } from './aspect';
import { keepCells } from './cells';
import { keepCharts } from './charts';
import { listAspect } from './lists';
import { lookAspect } from './looks';
import { byStep, type PutBack } from './putBack';
import { keepFreezes, keepPages } from './sheets';
import { widthAspect } from './widths';

/** What a change is written over. */
export interface Before {
  readonly formatAt: FormatAt;
  /** The steps that write its notes: they differ with what stands there. */
  readonly notes: readonly Step[];
  /** Charts of the change that take the place of one that is there, by sheet and id. */
  readonly hasChart: (sheet: string, id: string) => boolean;
  /** Puts everything back, in order. */
  readonly putBack: readonly PutBack[];
}

const keepNames = (book: KnownBook, edits: readonly Edit[]): Step[] =>
  [...new Set(only(edits, 'name').map(({ name }) => name))].map((name) => {
    const formula = book.nameFormulas.get(name.toLowerCase());
    return step(2, ({ context }: BookAt) => {
      const item = context.workbook.names.getItem(name);
      if (formula === undefined) item.delete();
      else item.formula = formula;
    });
  });

/** Reads everything that a change would overwrite, so that it can be put back where the rest cannot be written. */
export const keepBefore = async (
  program: ExcelProgram,
  at: BookAt,
  book: KnownBook,
  edits: readonly Edit[],
): Promise<Before> => {
  const isNew = (sheet: string): boolean => !book.ids.has(sheet);
  const old = edits.filter(
    (edit) => !('area' in edit ? isNew(edit.area.sheet) : 'sheet' in edit && isNew(edit.sheet)),
  );
  const kept = (areas: Parameters<typeof outermost>[0], aspect: Aspect) =>
    outermost(areas).map((area) => ({ area, aspect }));
  const cells = await keepCells(at, outermost(writtenAreas(old)));
  const aspects = await keepAspects(at, [
    ...kept(
      only(old, 'style', 'wrap').map(({ area }) => area),
      lookAspect,
    ),
    ...kept(
      only(old, 'list').map(({ area }) => area),
      listAspect,
    ),
    ...kept(only(old, 'width').map(widenedArea), widthAspect),
  ]);
  const sheets = (kind: 'freeze' | 'page'): string[] => [
    ...new Set(only(old, kind).map((edit) => (edit.kind === 'page' ? edit.area.sheet : edit.sheet))),
  ];
  const freezes = await keepFreezes(at, sheets('freeze'));
  const pages = await keepPages(at, sheets('page'));
  const notes = await remarks(program, at, only(edits, 'note'), isNew);
  const charts = await keepCharts(at, edits, isNew);
  const merges = only(old, 'merge').map(({ area }) => step(1, (now: BookAt) => now.range(area).unmerge()));
  return {
    formatAt: cells.formatAt,
    notes: notes.steps,
    hasChart: charts.hasChart,
    putBack: [
      ...charts.putBack,
      ...[
        ...pages,
        ...notes.putBack,
        ...freezes,
        ...merges,
        ...cells.steps,
        ...aspects,
        ...keepNames(book, edits),
        step(1, (now: BookAt) => now.sheet(book.active).activate()),
      ].map(byStep),
    ],
  };
};

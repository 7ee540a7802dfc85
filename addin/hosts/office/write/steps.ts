import { fixedReference, sameArea } from '../../../workbook/address';
import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import type { Before } from '../keep/keepBefore';
import type { KnownBook } from '../read/readOutline';

import { writeCells } from './cells';
import { layChart, replaceChart } from './chart';
import { pointsOf } from './columnWidth';
import { drawLook } from './drawLook';
import { setFreeze } from './freeze';
import { setListRule } from './listRule';
import { LOOKS } from './looks';
import { setPage } from './page';
import { step, type Step } from './step';
import { only, widenedArea } from './touched';

const addSheet = (sheet: string): Step =>
  step(1, ({ context }: BookAt) => void context.workbook.worksheets.add(sheet));

const nameArea = ({ name, area }: Extract<Edit, { kind: 'name' }>, isKnown: boolean, formula: string): Step =>
  step(2, (at: BookAt) => {
    const { names } = at.context.workbook;
    if (isKnown) names.getItem(name).formula = formula;
    else names.add(name, at.range(area));
  });

const formatCells = ({ area, format }: Extract<Edit, { kind: 'format' }>): Step => {
  const formats = Array.from({ length: area.rows }, () => Array<string>(area.columns).fill(format));
  return {
    bytes: JSON.stringify(formats).length,
    queue: (at: BookAt) => {
      at.range(area).numberFormat = formats;
    },
  };
};

const nameSteps = (edits: readonly Edit[], book: KnownBook): Step[] => {
  const known = new Set(book.nameFormulas.keys());
  return only(edits, 'name').map((edit) => {
    const key = edit.name.toLowerCase();
    const isKnown = known.has(key);
    known.add(key);
    return nameArea(edit, isKnown, `=${fixedReference(edit.area)}`);
  });
};

const isMerged = (book: KnownBook, edit: Extract<Edit, { kind: 'merge' }>): boolean =>
  book.sheets.some(({ merges }) => merges.some((merge) => sameArea(merge, edit.area)));

const lookSteps = (edits: readonly Edit[]): Step[] =>
  only(edits, 'style', 'wrap').map((edit) =>
    edit.kind === 'style'
      ? drawLook(edit.area, LOOKS[edit.style])
      : step(2, (at: BookAt) => {
          at.range(edit.area).format.wrapText = true;
        }),
  );

const widthSteps = (edits: readonly Edit[]): Step[] =>
  only(edits, 'width').map((edit) =>
    step(2, (at: BookAt) => {
      at.range(widenedArea(edit)).format.columnWidth = pointsOf(edit.characters);
    }),
  );

const activateSteps = (edits: readonly Edit[]): Step[] =>
  only(edits, 'activate')
    .slice(-1)
    .map((edit) =>
      step(2, (at: BookAt) => {
        at.sheet(edit.sheet).activate();
        at.range({ ...edit, rows: 1, columns: 1 }).select();
      }),
    );

/**
 * A change as steps of writing, in the order that the program needs: sheets and names before what uses them, formats
 * after the cells they lie on, and last what could not be put back: page set-up and the end of a replaced chart.
 */
export const stepsOf = (edits: readonly Edit[], book: KnownBook, before: Before): Step[] => {
  const charts = new Map(only(edits, 'chart').map((chart) => [`${chart.sheet}\n${chart.id}`, chart]));
  return [
    ...only(edits, 'addSheet').map(({ sheet }) => addSheet(sheet)),
    ...nameSteps(edits, book),
    ...only(edits, 'merge')
      .filter((edit) => !isMerged(book, edit))
      .map(({ area }) => step(1, (at: BookAt) => at.range(area).merge(false))),
    ...only(edits, 'write').flatMap((edit) => writeCells(edit, before.formatAt)),
    ...only(edits, 'format').map(formatCells),
    ...lookSteps(edits),
    ...widthSteps(edits),
    ...only(edits, 'freeze').map(setFreeze),
    ...only(edits, 'list').map(setListRule),
    ...before.notes,
    ...[...charts.values()].map(layChart),
    ...only(edits, 'page').map(setPage),
    ...activateSteps(edits),
    ...[...charts.values()].map((chart) => replaceChart(chart, before.hasChart(chart.sheet, chart.id))),
  ];
};

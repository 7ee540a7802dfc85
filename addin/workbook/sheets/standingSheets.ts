import type { System } from '../../core';
import { fixedReference } from '../address';
import { WorkbookError, type Snapshot } from '../port';
import { areaNamed } from '../snapshot';
import { placeSheets, type BuiltSheets } from '../tables/buildSheets';
import { layOut, placesIn } from '../tables/layOut';
import { hasForm } from '../tables/readForm';
import { columnArea, tokensIn, type Places } from '../tables/template';
import { gardenSheets } from './gardenSheets';

/** Formulas by what they work out: "beds.plants", "Rig_flow". */
const TEMPLATES: ReadonlyMap<string, { readonly template: string; readonly table?: string }> = new Map(
  gardenSheets.sheets.flatMap((entry) =>
    entry.kind === 'form'
      ? Object.values(entry.form.lines).flatMap(({ name, formula }) =>
          formula === undefined ? [] : [[name, { template: formula }] as const],
        )
      : Object.entries(entry.table.columns).flatMap(([key, column]) =>
          'formula' in column
            ? [[`${entry.table.key}.${key}`, { template: column.formula, table: entry.table.key }] as const]
            : [],
        ),
  ),
);

/** The columns and lines that references read, and those that these are worked out from. */
const readBy = (references: ReadonlySet<string>, places: Places): ReadonlySet<string> => {
  const read = new Set<string>();
  const take = (what: string): void => {
    if (read.has(what)) return;
    read.add(what);
    // A table beside a form is made with what is read of it.
    read.add(what.split('.')[0]!);
    const { template, table } = TEMPLATES.get(what) ?? { template: '' };
    for (const token of tokensIn(template)) {
      const own = table !== undefined && places.sites[table]!.columns[token] !== undefined;
      take(own ? `${table}.${token}` : token);
    }
  };
  for (const [table, { columns }] of Object.entries(places.sites))
    for (const key of Object.keys(columns))
      for (const part of ['whole', 'body'] as const)
        if (references.has(fixedReference(columnArea(places, table, key, part)))) take(`${table}.${key}`);
  for (const [name, area] of Object.entries(places.cells))
    if (references.has(fixedReference(area))) take(name.replace(/_unit$/, ''));
  return read;
};

const textsIn = (value: unknown): string[] =>
  typeof value === 'string' ? [value] : Object.values(value as object).flatMap(textsIn);

/**
 * The garden's sheets for others to be built on: where everything stands, with what the others read of it put back
 * where the user took it away.
 *
 * @param sourcesOf the references that the others read
 * @param then what the user wanted, as the end of a sentence: 'make the card'
 * @throws WorkbookError where a whole sheet is not there
 */
export const standingSheets = (
  snapshot: Snapshot,
  measures: System,
  sourcesOf: (places: Places) => object,
  then: string,
): BuiltSheets => {
  const gone = gardenSheets.sheets.flatMap((entry) => {
    if (entry.kind === 'form') return hasForm(entry.form, snapshot) ? [] : [entry.form.title];
    const { name, title, beside } = entry.table;
    return beside !== undefined || areaNamed(snapshot, name) ? [] : [title];
  });
  if (gone.length > 0)
    throw new WorkbookError(
      `The sheet “${gone[0]}” is not there any more. Put it back under Garden, then ${then}.`,
    );
  const whole = placesIn(layOut(gardenSheets, snapshot, { measures, make: 'all' }), snapshot);
  const make = readBy(new Set(textsIn(sourcesOf(whole))), whole);
  return placeSheets(gardenSheets, snapshot, { measures, make });
};

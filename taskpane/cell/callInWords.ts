import { andList } from '../../addin/workbook/fields/holds';
import { explain, findFunction } from '../../functions';

import { cellsInWords, heldInWords, togetherInWords, valueInWords } from './cellsInWords';
import type { FeedCall, Worth } from './workOut';

const argumentInWords = (name: string, { value, plain, cells, calls }: Worth, seenFrom: string): string[] => {
  if (cells.length + calls.length === 0) return [];
  if (plain) return [`${name}: ${heldInWords(cells[0]!)}, from ${cellsInWords(cells[0]!, seenFrom)}`];
  const sources = [
    ...new Set(calls.map((call) => call.name)),
    ...(cells.length > 0 ? [togetherInWords(cells, seenFrom)] : []),
  ];
  return [
    `${name}: ${value === undefined ? 'not worked out here' : valueInWords(value)}, from ${andList(sources)}`,
  ];
};

/**
 * A call of a FEED function told line by line: what it is for, where its arguments come from, its steps with their
 * sources. No steps where it was refused, as its sentence says why.
 *
 * @param seenFrom the sheet of the formula
 */
export const callInWords = ({ name, args, outcome }: FeedCall, seenFrom: string): string[] => {
  const entry = findFunction(name);
  if (!entry) return [];
  const given = args.flatMap((arg, at) =>
    argumentInWords(entry.parameters[at]?.name ?? 'more', arg, seenFrom),
  );
  const lost = args.flatMap(({ value }, at) =>
    value === undefined ? [entry.parameters[at]?.name ?? 'more'] : [],
  );
  const told =
    outcome &&
    explain(
      name,
      args.map(({ value }) => value),
    );
  const steps = told && 'steps' in told ? told : undefined;
  if (!steps && given.length === 0) return [];
  return [
    `${name}: ${entry.summary}.`,
    ...given,
    ...(steps?.steps ?? []).map(({ text, source }) => (source ? `${text} (${source})` : text)),
    ...(lost.length > 0
      ? [
          `The steps are not told, because ${andList(lost)} cannot be followed here. Put it into a cell of its own to see them.`,
        ]
      : []),
    ...(steps ? [`Source: ${steps.source}.`] : []),
  ];
};

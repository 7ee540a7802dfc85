import { nameKey } from '../addin/core';

/**
 * A name as part of a field's id. What is typed belongs to the thing of that name: its row may move before the field is
 * kept.
 *
 * @example inId(' Large bush') // '"large bush"'
 */
export const inId = (name: string): string => JSON.stringify(nameKey(name));

/** The first thing of each name, in their order. */
export const firstOfEach = <Thing>(things: readonly Thing[], nameOf: (thing: Thing) => string): Thing[] => {
  const first = new Map<string, Thing>();
  for (const thing of things) if (!first.has(inId(nameOf(thing)))) first.set(inId(nameOf(thing)), thing);
  return [...first.values()];
};

import { BaseSequencer } from 'vitest/node';

/** Tests that wait most of their time, that start programs, and that only compute. */
const KINDS = [/\/hosts\/calc\/window\//, /\/hosts\//, /./];

/** The files of each kind spread over the whole run, so that some compute while others wait. */
export class ByTurns extends BaseSequencer {
  /** Within a kind the order stays: what failed last time first, then the longest. */
  async sort(specifications) {
    const sorted = await super.sort(specifications);
    const kindOf = ({ moduleId }) => KINDS.findIndex((kind) => kind.test(moduleId));
    return KINDS.flatMap((_, kind) => {
      const files = sorted.filter((file) => kindOf(file) === kind);
      return files.map((file, index) => ({ file, place: index / files.length }));
    })
      .sort((a, b) => a.place - b.place)
      .map(({ file }) => file);
  }
}

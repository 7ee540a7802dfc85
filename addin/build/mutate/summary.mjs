/** A number from 0 to 1 after another, the same for the same seed (mulberry32). */
const chances = (seed) => () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
};

/** So many of the mutants, drawn by chance; all of them where no number is given. */
export const drawn = (mutants, sample = mutants.length, seed = 0) => {
  const chance = chances(seed);
  return mutants
    .map((mutant) => ({ mutant, lot: chance() }))
    .sort((a, b) => a.lot - b.lot)
    .slice(0, sample)
    .map(({ mutant }) => mutant)
    .sort((a, b) => Number(a.id) - Number(b.id));
};

const LONGEST = 70;
const short = (code) => {
  const line = code.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST ? `${line.slice(0, LONGEST)}…` : line;
};

const alive = ({ fate }) => fate === 'survived' || fate === 'unreached';
const rate = (killed, all) => `${killed} of ${all} killed (${((100 * killed) / all).toFixed(1)} %)`;
const killedOf = (mutants) => rate(mutants.filter((mutant) => !alive(mutant)).length, mutants.length);

/** Killed and survived by file, every survivor with its place, and the sum. */
export const summary = (mutants, of) => {
  const lines = [...new Set(mutants.map(({ file }) => file))].flatMap((file) => {
    const its = mutants.filter((mutant) => mutant.file === file);
    const survivors = its.filter(alive).map(({ line, column, before, after, fate }) => {
      const note = fate === 'unreached' ? ' (no test reaches it)' : '';
      return `  ${file}:${line}:${column} ${short(before)} → ${short(after)}${note}`;
    });
    return [`${file}: ${killedOf(its)}`, ...survivors];
  });
  const hung = mutants.filter(({ fate }) => fate === 'hung').length;
  const unreached = mutants.filter(({ fate }) => fate === 'unreached').length;
  return [
    '',
    ...lines,
    '',
    `${killedOf(mutants)}${of}; ${hung} of the killed by the time they took, ${unreached} of the others reached by no test`,
  ].join('\n');
};

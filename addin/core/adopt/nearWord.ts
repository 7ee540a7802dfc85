/** Letters that differ at least between two words (swaps of neighbours count once); `most` + 1 where it is more. */
const lettersOff = (a: string, b: string, most: number): number => {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let off = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        off = Math.min(off, beforeLast[j - 2]! + 1);
      row.push(off);
    }
    if (Math.min(...row) > most) return most + 1;
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
};

/**
 * The known word that a misspelt one means: one letter off from five letters on, two from nine on, the same
 * first letter.
 *
 * @returns undefined where no known word is near, or two are equally near
 * @example nearWord('flouribunda', ['floribunda', 'miniature']) // 'floribunda'
 */
export const nearWord = (word: string, known: readonly string[]): string | undefined => {
  if (word.length < 5 || word.length > 20 || /\d/.test(word)) return undefined;
  let best: string | undefined;
  let fewest = word.length >= 9 ? 2 : 1;
  let rivals = 0;
  for (const candidate of known) {
    if (candidate.length < 5 || candidate[0] !== word[0]) continue;
    const off = lettersOff(word, candidate, fewest);
    if (off > fewest) continue;
    rivals = off < fewest || best === undefined ? 1 : rivals + 1;
    best = candidate;
    fewest = off;
  }
  return rivals === 1 ? best : undefined;
};

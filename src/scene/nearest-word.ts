/** Longer words are no slip of the keys, and comparing them costs time. */
const LONGEST = 40;

/** One slip is forgiven in every so many letters: fewer misses more slips, more finds wrong words. */
const LETTERS_PER_SLIP = 3;

/**
 * The known word that a misspelt one most likely stands for, or undefined when none is near.
 * Of two equally near words the first wins; a difference in case alone is always near.
 */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  if (word.length > LONGEST) return undefined;
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(1, Math.floor(word.length / LETTERS_PER_SLIP)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= fewest) continue;
    const slips = slipsBetween(wanted, candidate.toLowerCase());
    // A word of which no letter is left is another word.
    if (slips < fewest && slips < word.length) {
      best = candidate;
      fewest = slips;
    }
  }
  return best;
}

/**
 * Letters added, left out, changed or swapped with a neighbour, to come from one word to the other
 * (optimal string alignment: Damerau, Communications of the ACM 7 (1964) 171-176).
 */
export function slipsBetween(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let slips = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      if (swapped) slips = Math.min(slips, beforeLast[j - 2] + 1);
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length];
}

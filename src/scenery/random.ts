/** A seeded stream of random numbers: the same key always gives the same stream. */
export interface Random {
  /** Evenly spread in 0 <= x < 1. */
  next(): number;
  /** Evenly spread in low <= x < high. */
  between(low: number, high: number): number;
  /** A whole number in low <= n <= high. */
  whole(low: number, high: number): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  pick<T>(list: readonly T[]): T;
  /** Bell-shaped with mean 0 and standard deviation 1, cut off at 2.5. */
  bell(): number;
  /** A stream of its own that this one's later draws do not disturb. */
  branch(label: string | number): Random;
}

/** Keys are joined, so `randomFrom(7, 'hedge')` and `randomFrom(7, 'tree')` are unrelated. */
export function randomFrom(...keys: (string | number)[]): Random {
  const key = keys.join('\u001f');
  const next = sfc32(hash128(key));
  const self: Random = {
    next,
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    chance: (probability) => next() < probability,
    pick: (list) => list[Math.floor(next() * list.length)],
    bell: () => {
      const r = Math.sqrt(-2 * Math.log(1 - next()));
      const value = r * Math.cos(2 * Math.PI * next());
      return Math.max(-2.5, Math.min(2.5, value));
    },
    branch: (label) => randomFrom(key, label),
  };
  return self;
}

/** Four 32-bit words from a text (FNV-1a, one pass a word with its own offset). */
function hash128(text: string): [number, number, number, number] {
  const words = [0x811c9dc5, 0x9e3779b9, 0x85ebca6b, 0xc2b2ae35].map((offset) => {
    let h = offset;
    for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
    return (h ^ (h >>> 15)) >>> 0;
  });
  return words as [number, number, number, number];
}

/** The "small fast counting" generator of C. Doty-Humphrey (PractRand), 32-bit form. */
function sfc32([a, b, c, d]: [number, number, number, number]): () => number {
  const step = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 16; i++) step();
  return step;
}

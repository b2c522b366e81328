import type { Point } from '../types.js';
import type { EdgeSamples } from './inscribed.js';

/** A stretch of outline along which card is narrow and holds nothing. */
export interface FreeEnd {
  /** `tip`: the outline goes round its end. `whole`: all of the contour is narrow. */
  readonly kind: 'tip' | 'whole';
  /** In the middle of its card where that is narrowest. */
  readonly at: Point;
  /** The mean. */
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Its samples, in the outline's order. */
  readonly run: readonly number[];
}

/** A tip is this many times as long as wide somewhere: sharper than about 37 degrees. */
const TIP_LENGTHS = 1.5;

/**
 * Runs of narrow outline that no neck has taken: tips at least `leastMm` long, and parts narrow all
 * round.
 */
export function freeEnds(
  samples: EdgeSamples,
  taken: Uint8Array,
  belowMm: number,
  leastMm: number,
): FreeEnd[] {
  const ends: FreeEnd[] = [];
  const isFree = (s: number): boolean => samples.widthMm[s] < belowMm && taken[s] === 0;
  for (let q = 0; q + 1 < samples.first.length; q++) {
    const [from, to] = [samples.first[q], samples.first[q + 1]];
    // Start just after a sample that is not free, so that no run is cut in two by the start.
    let start = from;
    while (start < to && isFree(start)) start++;
    const isWhole = start === to;
    let run: number[] = [];
    for (let k = 0; k < to - from; k++) {
      const s = isWhole ? from + k : from + ((start - from + 1 + k) % (to - from));
      if (isFree(s)) run.push(s);
      if (run.length > 0 && (!isFree(s) || k + 1 === to - from)) {
        const end = freeEnd(samples, run, isWhole);
        if (isWhole || isSlender(samples, run, belowMm, leastMm)) ends.push(end);
        run = [];
      }
    }
  }
  return ends;
}

function freeEnd(samples: EdgeSamples, run: readonly number[], isWhole: boolean): FreeEnd {
  const { x, y, nx, ny, widthMm, stretchMm } = samples;
  let [length, area] = [0, 0];
  let narrowest = run[0];
  for (const s of run) {
    length += stretchMm[s];
    area += stretchMm[s] * widthMm[s];
    if (widthMm[s] < widthMm[narrowest]) narrowest = s;
  }
  const half = widthMm[narrowest] / 2;
  const at = {
    x: x[narrowest] + half * nx[narrowest],
    y: y[narrowest] + half * ny[narrowest],
  };
  return {
    kind: isWhole ? 'whole' : 'tip',
    at,
    widthMm: area / length,
    // Both sides of it were walked.
    lengthMm: length / 2,
    run,
  };
}

/**
 * Whether some stretch of a run is long for its width. What is so at one width is so when more is
 * asked for, whatever the card is like round the stretch: that would not hold if only the whole run
 * were looked at, as a wide root makes a short stub of a tip.
 */
function isSlender(
  { widthMm, stretchMm }: EdgeSamples,
  run: readonly number[],
  belowMm: number,
  leastMm: number,
): boolean {
  // Stretches grow from the narrowest sample on, and join where they meet. Each is known by its
  // two ends: at either one, `other` says which run index the stretch ends at.
  const other = new Int32Array(run.length).fill(-1);
  const lengths = new Float64Array(run.length);
  const widthAt = (k: number): number => (k < 0 || k >= run.length ? belowMm : widthMm[run[k]]);
  const rising = run.map((_, k) => k).sort((a, b) => widthAt(a) - widthAt(b));
  for (const k of rising) {
    const from = k > 0 && other[k - 1] >= 0 ? other[k - 1] : k;
    const to = k + 1 < run.length && other[k + 1] >= 0 ? other[k + 1] : k;
    const length =
      stretchMm[run[k]] + (from < k ? lengths[k - 1] : 0) + (to > k ? lengths[k + 1] : 0);
    other[from] = to;
    other[to] = from;
    lengths[from] = lengths[to] = length;
    // It ends half way to the next sample, so its width there is the mean of the two.
    const next = Math.min(
      belowMm,
      Math.max(widthAt(k), Math.min(widthAt(from - 1), widthAt(to + 1))),
    );
    const width = (widthAt(k) + next) / 2;
    if (length / 2 >= Math.max(TIP_LENGTHS * width, leastMm)) return true;
  }
  return false;
}

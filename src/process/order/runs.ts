import { isPolylined, markPolylined } from '../../geometry/polylined.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Point } from '../../geometry/types.js';
import type { PlacedMark } from '../layers.js';

/** Marks that are run one after the other, such as a contour broken by nibs or one perforated fold. */
export interface Run {
  readonly marks: readonly PlacedMark[];
  /** How it may be run; there is always one. */
  readonly ways: readonly Way[];
  /** Runs of one contour have the same number; -1 for what encloses nothing. */
  readonly contour: number;
}

/** One way to run a run. */
export interface Way {
  readonly entry: Point;
  readonly exit: Point;
  /** The mark that comes first or, in a closed mark by itself, the cubic. */
  readonly first: number;
  readonly reversed: boolean;
  /** The way that runs the same points backwards: itself for a ring, -1 where there is none. */
  readonly back: number;
}

/** What a process allows. Lengths in mm. */
export interface RunRules {
  /** Closed marks may start at any of their nodes. */
  readonly anyStart: boolean;
  /** Open marks may be run in either direction. */
  readonly eitherWay: (mark: PlacedMark) => boolean;
  /** Open cuts of one contour that follow each other are no further apart. */
  readonly nibMm: number;
  /** Cuts of one perforated fold that follow each other are no further apart. */
  readonly tieMm: number;
}

/** A run that ends this near (mm) to its start is a ring for the tour's purposes. */
const RING_MM = 1;
/** Starting points that are tried on one contour: more gain little and cost time. */
const MOST_STARTS = 80;
/** Cuts of one fold follow each other within this angle. */
const STRAIGHT_ON_COSINE = Math.cos(Math.PI / 12);

/** The runs of marks, in the order of their first marks. */
export function runsOf(marks: readonly PlacedMark[], rules: RunRules): Run[] {
  let contours = 0;
  return contoursAndOthers(marks, rules).flatMap(({ marks: all, isContour }) => {
    const contour = isContour ? contours++ : -1;
    if (all.length === 1) return [{ marks: all, ways: waysOfOne(all[0], rules), contour }];
    return chains(all, isContour ? rules.nibMm : rules.tieMm).map((chain): Run => {
      const ways = chain.length === 1 ? waysOfOne(chain[0], rules) : waysOfChain(chain, rules);
      return { marks: chain, ways, contour };
    });
  });
}

interface Cluster {
  readonly marks: PlacedMark[];
  readonly isContour: boolean;
}

/**
 * Open cuts of one contour follow each other in the order of their piece until they are back at
 * the contour's start; so do the cuts of one fold while they run straight on.
 */
function contoursAndOthers(marks: readonly PlacedMark[], { nibMm, tieMm }: RunRules): Cluster[] {
  const clusters: Cluster[] = [];
  let open: Cluster | null = null;
  for (const mark of marks) {
    const first: PlacedMark | undefined = open?.marks[0];
    const last = open?.marks.at(-1);
    const goesOn =
      first !== undefined &&
      last !== undefined &&
      isSamePiece(first, mark) &&
      (isPartOfContour(mark)
        ? isPartOfContour(first)
        : mark.kind === 'perforation' && first.kind === 'perforation' && runsOn(last, mark, tieMm));
    if (goesOn) open!.marks.push(mark);
    else {
      const isContour = isPartOfContour(mark) || isRing(mark);
      open = { marks: [mark], isContour };
      clusters.push(open);
    }
    const isDone = isPartOfContour(mark) && distance(endOf(mark), startOf(open!.marks[0])) <= nibMm;
    if (isDone || isRing(mark)) open = null;
  }
  return clusters;
}

const isSamePiece = (a: PlacedMark, b: PlacedMark): boolean =>
  a.piece === b.piece && a.copy === b.copy;

const isRing = (mark: PlacedMark): boolean =>
  mark.relief === undefined && (mark.closed || mark.kind === 'overcut');

const isPartOfContour = (mark: PlacedMark): boolean =>
  !mark.closed && (mark.kind === 'nib' || mark.kind === 'shared');

function runsOn(a: PlacedMark, b: PlacedMark, mostMm: number): boolean {
  const gap = distance(endOf(a), startOf(b));
  if (gap > mostMm) return false;
  const along = direction(startOf(a), endOf(a));
  const onward = direction(startOf(a), endOf(b));
  return along.x * onward.x + along.y * onward.y >= STRAIGHT_ON_COSINE;
}

/** Stretches of marks that start where the one before them ended, to `mostMm`. */
function chains(marks: readonly PlacedMark[], mostMm: number): PlacedMark[][] {
  const out: PlacedMark[][] = [];
  for (const mark of marks) {
    const last = out.at(-1)?.at(-1);
    if (last && distance(endOf(last), startOf(mark)) <= mostMm) out.at(-1)!.push(mark);
    else out.push([mark]);
  }
  return out;
}

function waysOfOne(mark: PlacedMark, rules: RunRules): Way[] {
  const entry = startOf(mark);
  const exit = endOf(mark);
  const asDrawn: Way = { entry, exit, first: 0, reversed: false, back: 0 };
  if (mark.closed) {
    if (!rules.anyStart) return [asDrawn];
    const nodes = mark.cubics.length / 8;
    const step = Math.max(1, Math.ceil(nodes / MOST_STARTS));
    return Array.from({ length: Math.ceil(nodes / step) }, (_, k): Way => {
      const node = { x: mark.cubics[k * step * 8], y: mark.cubics[k * step * 8 + 1] };
      return { entry: node, exit: node, first: k * step, reversed: false, back: k };
    });
  }
  if (rules.eitherWay(mark)) {
    return [
      { ...asDrawn, back: 1 },
      { entry: exit, exit: entry, first: 0, reversed: true, back: 0 },
    ];
  }
  return [{ ...asDrawn, back: distance(entry, exit) <= RING_MM ? 0 : -1 }];
}

/** A chain may begin at any of its marks where it comes back to its start. */
function waysOfChain(marks: readonly PlacedMark[], rules: RunRules): Way[] {
  const isLoop = distance(endOf(marks.at(-1)!), startOf(marks[0])) <= rules.nibMm;
  const eitherWay = marks.every((mark) => rules.eitherWay(mark));
  const firsts = isLoop ? marks.map((_, k) => k) : [0];
  return firsts.flatMap((first, k): Way[] => {
    const entry = startOf(marks[first]);
    const exit = endOf(marks[(first + marks.length - 1) % marks.length]);
    const onward = { entry, exit, first, reversed: false };
    if (!eitherWay) return [{ ...onward, back: isLoop ? k : -1 }];
    return [
      { ...onward, back: 2 * k + 1 },
      { entry: exit, exit: entry, first, reversed: true, back: 2 * k },
    ];
  });
}

/** The marks of a run as they are run in that way. */
export function marksInWay({ marks, ways }: Run, way: number): PlacedMark[] {
  const { first, reversed: backwards } = ways[way];
  if (marks.length === 1) {
    const [mark] = marks;
    if (mark.closed)
      return [first === 0 ? mark : { ...mark, cubics: startedAt(mark.cubics, first) }];
    return [backwards ? turned(mark) : mark];
  }
  const onward = [...marks.slice(first), ...marks.slice(0, first)];
  return backwards ? onward.reverse().map(turned) : onward;
}

const turned = (mark: PlacedMark): PlacedMark => ({ ...mark, cubics: reversed(mark.cubics) });

/** The same closed chain, started at another of its nodes. */
function startedAt(cubics: Cubics, node: number): Cubics {
  const out = new Float64Array(cubics.length);
  out.set(cubics.subarray(8 * node));
  out.set(cubics.subarray(0, 8 * node), cubics.length - 8 * node);
  if (isPolylined(cubics)) markPolylined([out]);
  return out;
}

export const startOf = ({ cubics }: PlacedMark): Point => ({ x: cubics[0], y: cubics[1] });

export const endOf = ({ cubics }: PlacedMark): Point => ({
  x: cubics[cubics.length - 2],
  y: cubics[cubics.length - 1],
});

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

function direction(a: Point, b: Point): Point {
  const length = distance(a, b) || 1;
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

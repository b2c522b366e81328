import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { degrees, radians } from '../tree/angles.js';
import type { Branch } from '../tree/branches.js';
import { sizeOf } from '../tree/crown-frame.js';
import { bowed } from '../tree/lobes.js';
import type { Clump, Tuft } from '../tree/tufts.js';
import type { BushValues } from './parameters.js';

/** A bush before it is drawn. Lengths in mm. */
export interface BushPlan {
  /** In laying order: the last lies in front. */
  readonly tufts: readonly Tuft[];
  /** From the ground up into the head, left to right. */
  readonly stems: readonly Branch[];
  /** From within the head to the middle of each lobe. */
  readonly twigs: readonly Branch[];
  /** Half the width of the ground that the stems stand on. */
  readonly bank: number;
}

/** The ellipse that a head's lobes are set round. */
interface Head {
  readonly middle: Point;
  readonly rx: number;
  readonly ry: number;
}

export function bushPlan(plot: Plot, values: BushValues, random: Random): BushPlan {
  const { width, height } = plot;
  const ry = ((1 - values.clear) * height) / 2;
  const head = { middle: { x: 0, y: ry - height }, rx: width / 2, ry };
  const lobes = lobesOf(head, random.branch('lobes'));
  const bank = width * 0.22;
  return {
    tufts: tuftsOf(head, lobes, random.branch('tufts')),
    stems: stemsTo(lobes, plot, values, bank, random.branch('stems')),
    twigs: lobes.map((lobe, i) => twigTo(lobe, head, i)),
    bank,
  };
}

/** A lobe's twig begins this far out from the head's middle. */
const TWIG_FROM = 0.35;

function twigTo(lobe: Clump, { middle }: Head, id: number): Branch {
  const on = (share: number): Point => ({
    x: middle.x + share * (lobe.x - middle.x),
    y: middle.y + share * (lobe.y - middle.y),
  });
  const points = [on(TWIG_FROM), bowed(on(TWIG_FROM), on(1), id % 2 ? 0.06 : -0.06), on(1)];
  return { id, parent: -1, thickness: 0, held: false, points };
}

/** The lowest lobes lie this far round from straight up. */
const RING_DEG = 134;

/** A ring of lobes, large and small by turns, left to right. A wide head has more of them. */
function lobesOf({ middle, rx, ry }: Head, random: Random): Clump[] {
  const wide = Math.max(1, Math.min(2.4, (0.75 * rx) / ry));
  const count = Math.round(random.whole(6, 7) * wide ** 0.7);
  const largeFirst = random.whole(0, 1);
  const around = (2 * radians(RING_DEG)) / (count - 1);
  return Array.from({ length: count }, (_, i): Clump => {
    const own = random.branch(i);
    const share = (i + largeFirst) % 2 ? 1.2 : 0.88;
    const a = (i - (count - 1) / 2) * around + 0.1 * around * own.bell();
    const size = share * own.between(0.9, 1.1);
    const r = { x: Math.min(0.36, 0.62 * around) * rx * size, y: 0.37 * ry * size };
    const out = own.between(0.84, 1);
    return {
      x: middle.x + (out * rx - r.x) * Math.sin(a),
      y: middle.y - (out * ry - r.y) * Math.cos(a),
      rx: r.x,
      ry: r.y,
      headingDeg: degrees(Math.atan2(-Math.cos(a) * rx, Math.sin(a) * ry)),
    };
  });
}

/** The core of the head, and each lobe over it with a gap of light toward the core. */
function tuftsOf({ middle, rx, ry }: Head, lobes: readonly Clump[], random: Random): Tuft[] {
  const core: Clump = { ...middle, rx: 0.66 * rx, ry: 0.7 * ry, headingDeg: -90 };
  const laid = lobes.map((lobe, i) => ({ lobe, own: random.branch(i) }));
  const keyed = laid.map((l) => ({ ...l, key: -l.lobe.y + 0.5 * ry * l.own.next() }));
  keyed.sort((a, b) => a.key - b.key);
  return [
    { clumps: [core], fill: [], shade: { x: 0, y: 0 }, random: random.branch('core') },
    ...keyed.map(({ lobe, own }): Tuft => {
      const turn = own.between(-0.5, 0.5);
      const inward = Math.atan2(middle.y - lobe.y, middle.x - lobe.x) + turn;
      return {
        clumps: [lobe],
        fill: [],
        shade: { x: 0.9 * lobe.rx * Math.cos(inward), y: 0.9 * lobe.ry * Math.sin(inward) },
        random: own,
      };
    }),
  ];
}

/** Thickness of a stem as a share of the bush's size, and in smallest webs at least. */
const STEM = { share: 0.045, webs: 1.3 };
/** Light between two stems at the ground, in smallest holes. */
const STEM_GAP = 1;

/** Stems that fan out from the ground, each to a lobe, as many as leave light between them. */
function stemsTo(
  lobes: readonly Clump[],
  plot: Plot,
  values: BushValues,
  bank: number,
  random: Random,
): Branch[] {
  const thickness = Math.max(STEM.share * sizeOf(plot), STEM.webs * plot.smallestWeb);
  const pitch = thickness + STEM_GAP * plot.smallestHole;
  const room = Math.floor((1.5 * bank) / pitch) + 1;
  const count = Math.max(1, Math.min(values.stems, room));
  return Array.from({ length: count }, (_, i): Branch => {
    const own = random.branch(i);
    const f = count === 1 ? 0.5 : i / (count - 1);
    const to = lobes[Math.round((0.12 + 0.76 * f) * (lobes.length - 1))];
    const spread = (f - 0.5) * (count - 1) * pitch;
    const foot = { x: spread * own.between(0.9, 1.05), y: 0.5 };
    const end = { x: to.x, y: to.y };
    const bow = 0.16 * (0.5 - f) + 0.03 * own.bell();
    return {
      id: i,
      parent: -1,
      thickness: thickness * own.between(0.92, 1.2),
      held: false,
      points: [foot, bowed(foot, end, bow), end],
    };
  });
}

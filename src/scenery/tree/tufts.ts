import { union } from '../../geometry/boolean/boolean.js';
import { containsPoint } from '../../geometry/components.js';
import { smoothContour } from '../../geometry/pen.js';
import { moveRegion, translation } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';
import type { Layer } from './layers.js';

/** A rounded lump of foliage at a twig's end. Lengths in mm. */
export interface Clump extends Point {
  readonly rx: number;
  readonly ry: number;
  /** The way its twig grows, 0 = right, 90 = down: its leaves lean toward it. */
  readonly headingDeg: number;
}

/** Clumps that hang together, laid over the tufts before them. */
export interface Tuft {
  readonly clumps: readonly Clump[];
  /** Corners of the foliage that joins the clumps; none for a tuft of one clump. */
  readonly fill: readonly Point[];
  /** Its gap of light is its own shape moved this far, times the crown's openness. */
  readonly shade: Point;
  /** Its gap of light where that is a shape of its own, by the crown's openness. */
  readonly slit?: (openness: number) => Region;
  readonly random: Random;
}

export interface TuftLayer extends Layer {
  readonly tuft: Tuft;
}

export function tuftLayer(tuft: Tuft): TuftLayer {
  const clumps = tuft.clumps.map((c, i) => clumpRegion(c, tuft.random.branch(`outline ${i}`)));
  const fill = tuft.fill.length > 2 ? [{ contours: [smoothContour(tuft.fill)] }] : [];
  const body = union([...fill, ...clumps]);
  const { slit } = tuft;
  if (slit) {
    let known: { openness: number; region: Region } | null = null;
    const gap = (openness: number): Region => {
      if (known?.openness !== openness) known = { openness, region: slit(openness) };
      return known.region;
    };
    return { tuft, body, gap, isInGap: (p, openness) => containsPoint(gap(openness), p) };
  }
  const { x, y } = tuft.shade;
  return {
    tuft,
    body,
    gap: (openness) => moveRegion(body, translation(x * openness, y * openness)),
    isInGap: (p, openness) => containsPoint(body, { x: p.x - x * openness, y: p.y - y * openness }),
  };
}

/** How far a clump's radius swings, as a share of it: a true ellipse looks turned on a lathe. */
const SWING: readonly [number, number] = [0.02, 0.07];
/** Nodes of a clump's outline: enough for three swings to the round. */
const CLUMP_NODES = 10;

function clumpRegion(clump: Clump, random: Random): Region {
  const swings = [2, 3].map((times) => ({
    times,
    size: random.between(...SWING),
    phase: random.between(0, 2 * Math.PI),
  }));
  const points = Array.from({ length: CLUMP_NODES }, (_, i) => {
    const a = (2 * Math.PI * i) / CLUMP_NODES;
    const r = 1 + swings.reduce((sum, w) => sum + w.size * Math.cos(w.times * a + w.phase), 0);
    return { x: clump.x + clump.rx * r * Math.cos(a), y: clump.y + clump.ry * r * Math.sin(a) };
  });
  return { contours: [smoothContour(points)] };
}

import { subtract, union } from '../../geometry/boolean/boolean.js';
import { containsPoint } from '../../geometry/components.js';
import { contourArea, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Bounds, Point, Region } from '../../geometry/types.js';

/**
 * Foliage laid like a shingle over what was laid before it: its body hides that, and a gap of light
 * beside the body, the wider the more open the crown is, is cut out of that.
 */
export interface Layer {
  readonly body: Region;
  gap(openness: number): Region;
  isInGap(point: Point, openness: number): boolean;
}

/** What shows of layers, each laid over all before it. */
export function shown(layers: readonly Layer[], openness: number): Region {
  const gaps = layers.map((layer) => layer.gap(openness));
  const gapBoxes = gaps.map(regionBounds);
  const parts = layers.map(({ body }, i) => {
    const box = regionBounds(body);
    return subtract(
      body,
      gaps.filter((_, j) => j > i && meet(box, gapBoxes[j])),
    );
  });
  return union(parts);
}

const meet = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Points to a side of the grid on which the sky is counted: half a percent of a crown is two. */
const GRID = 28;
const BISECTIONS = 7;

/** Bays narrower than twice this share of the size belong to the crown when its sky is counted. */
const BAY = 0.07;

/**
 * How open to lay the layers so that the sky takes `light` of the crown with its bays filled; held
 * to `range` where that is out of reach. `wood` crosses the gaps, `size` is the tree's.
 */
export function opennessFor(
  layers: readonly Layer[],
  wood: Region,
  size: number,
  light: number,
  range: readonly [number, number],
): number {
  const crown = union(layers.map((l) => l.body));
  const closed = offset(offset(crown, BAY * size), -BAY * size);
  const envelope = { contours: closed.contours.filter((c) => contourArea(c) > 0) };
  const places = gridOver(envelope).map((at) => ({
    at,
    isWood: containsPoint(wood, at),
    // Only gaps of layers above the topmost body over a place can let light through there.
    top: layers.findLastIndex(({ body }) => containsPoint(body, at)),
  }));
  const sky = (openness: number): number => {
    const open = places.filter(
      ({ at, isWood, top }) =>
        !isWood && (top < 0 || layers.slice(top + 1).some((l) => l.isInGap(at, openness))),
    );
    return open.length / places.length;
  };
  let [low, high] = range;
  for (let k = 0; k < BISECTIONS; k++) {
    const middle = (low + high) / 2;
    if (sky(middle) < light) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function gridOver(envelope: Region): Point[] {
  const { minX, minY, maxX, maxY } = regionBounds(envelope);
  const points: Point[] = [];
  for (let i = 0; i < GRID; i++) {
    for (let j = 0; j < GRID; j++) {
      const at = {
        x: minX + ((i + 0.5) / GRID) * (maxX - minX),
        y: minY + ((j + 0.5) / GRID) * (maxY - minY),
      };
      if (containsPoint(envelope, at)) points.push(at);
    }
  }
  return points;
}

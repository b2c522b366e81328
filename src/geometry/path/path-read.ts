import { pen } from '../pen.js';
import type { Cubics, Line, Point } from '../types.js';
import { paperScope } from './paper.js';
import { readSegments } from './path-grammar.js';

/** The subpaths of a path: those that its data closes with Z, and those that it leaves open. */
export interface PathChains {
  readonly closed: Cubics[];
  readonly open: Line[];
  /** Where a subpath draws, but has no length: a stroke with round or square caps shows there. */
  readonly dots: Point[];
  /** Why and where reading stopped before the end of the data, else null. */
  readonly fault: string | null;
}

/**
 * Reads SVG path data, in the units and direction of the data: quadratic curves and straight lines
 * become cubics exactly, arcs as paper.js approximates them (3e-4 of the radius). A lone M draws
 * nothing. Faulty data gives what comes before the fault, as SVG 2 section 9.5.4 asks.
 * Asynchronous because paper.js is loaded on the first call only.
 */
export async function chainsFromPathData(d: string): Promise<PathChains> {
  const { segments, fault } = readSegments(d);
  const closed: Cubics[] = [];
  const open: Line[] = [];
  const dots: Point[] = [];
  if (segments.length > 0) {
    const { CompoundPath } = await paperScope();
    const pathData = segments.map(({ command, numbers }) => command + numbers.join(' ')).join('');
    const paths = new CompoundPath({ pathData, insert: false }).children as paper.Path[];
    for (const path of paths) {
      const cubics = drawnBy(path);
      if (cubics.length === 0) {
        const { x, y } = path.firstSegment.point;
        if (path.closed || path.segments.length > 1) dots.push({ x, y });
      } else if (path.closed) closed.push(cubics);
      else open.push({ cubics });
    }
  }
  return { closed, open, dots, fault };
}

/** All curves of a path as one chain; empty where they have no length. */
function drawnBy(path: paper.Path): Cubics {
  const curves = path.curves.filter((curve) => curve.hasLength());
  if (curves.length === 0) return new Float64Array(0);
  const drawn = pen(curves[0].point1.x, curves[0].point1.y);
  for (const { point1, handle1, handle2, point2 } of curves) {
    if (handle1.isZero() && handle2.isZero()) {
      drawn.lineTo(point2.x, point2.y);
    } else {
      const [c1, c2] = [point1.add(handle1), point2.add(handle2)];
      drawn.curveTo(c1.x, c1.y, c2.x, c2.y, point2.x, point2.y);
    }
  }
  return path.closed ? drawn.close() : drawn.line().cubics;
}

import { distanceTo } from '../../geometry/components.js';
import { pen, polyline } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { handCut, inStrokes, mix, shape, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Front } from './plan.js';

const WANDER_MM = 0.15;
/** Steps of a stepped gable: how many at most, and the least height in webs and mm. */
const MOST_STEPS = 5;
const LEAST_STEP_WEBS = 0.9;
const LEAST_STEP_MM = 1.5;
/** Half the width of a gable's top as a share of the front's. */
const TOP_SHARE = 0.13;
/** A cornice stands out this far over a free end, mm. */
const CORNICE_OUT_MM = 1.3;

/** A front's outline above its eaves, and lines on it. */
export interface GableParts {
  readonly solids: readonly Region[];
  readonly lines: readonly Line[];
}

/** How the row ends beside a front: a cornice hangs over on the free sides. */
export interface Ends {
  readonly freeLeft: boolean;
  readonly freeRight: boolean;
}

export function gableOn(front: Front, plot: Plot, ends: Ends, random: Random): GableParts {
  switch (front.gable) {
    case 'stepped':
      return { solids: [steppedOn(front, plot)], lines: [] };
    case 'curved':
      return curvedOn(front, plot);
    case 'pitched':
      return pitchedOn(front, random);
    case 'flat':
      return corniceOn(front, plot, ends, random);
  }
}

const topHalf = ({ x0, x1 }: Front, { smallestWeb: web }: Plot): number =>
  Math.max(1.15 * web, TOP_SHARE * (x1 - x0));

/** Steps of equal height; the lowest treads lie on the eaves. */
function steppedOn(front: Front, plot: Plot): Region {
  const { x0, x1, eaves, top } = front;
  const middle = (x0 + x1) / 2;
  const half = (x1 - x0) / 2;
  const least = Math.max(LEAST_STEP_WEBS * plot.smallestWeb, LEAST_STEP_MM);
  const peak = Math.min(topHalf(front, plot), half * 0.8);
  const byRise = Math.floor((eaves - top) / least) - 1;
  const byRun = Math.floor((half - peak) / (0.7 * least));
  const count = Math.max(1, Math.min(MOST_STEPS, byRise, byRun));
  const right: Point[] = [];
  for (let k = 0; k <= count; k++) {
    const x = mix(half, peak, k / count);
    const foot = mix(eaves, top, k / (count + 1));
    const head = mix(eaves, top, (k + 1) / (count + 1));
    right.push({ x, y: k === 0 ? foot + 1 : foot }, { x, y: head });
  }
  const left = right.map((p) => ({ x: middle - p.x, y: p.y })).reverse();
  return shape([...right.map((p) => ({ x: middle + p.x, y: p.y })), ...left]);
}

/** Hollow shoulders, a straight neck and a round head. */
function curvedOn(front: Front, plot: Plot): GableParts {
  const { x0, x1, eaves, top } = front;
  const middle = (x0 + x1) / 2;
  const half = (x1 - x0) / 2;
  const neck = Math.min(Math.max(1.3 * topHalf(front, plot), 0.36 * half), 0.7 * half);
  const rise = eaves - top;
  const shoulder = eaves - 0.14 * rise;
  const collar = top + Math.min(0.34 * rise, neck);
  const out = Math.min(0.16 * neck, 0.8);
  const outline = pen(x0, eaves + 1)
    .lineTo(x0, shoulder)
    .curveTo(
      x0 + 0.5 * (half - neck),
      shoulder,
      middle - neck,
      shoulder - 0.1 * rise,
      middle - neck,
      collar,
    )
    .lineTo(middle - neck - out, collar)
    .curveTo(middle - neck, top, middle - 0.5 * neck, top, middle, top)
    .curveTo(middle + 0.5 * neck, top, middle + neck, top, middle + neck + out, collar)
    .lineTo(middle + neck, collar)
    .curveTo(middle + neck, shoulder - 0.1 * rise, x1 - 0.5 * (half - neck), shoulder, x1, shoulder)
    .lineTo(x1, eaves + 1)
    .close();
  const line = polyline([
    { x: middle - neck, y: collar },
    { x: middle + neck, y: collar },
  ]);
  return { solids: [shapeOf(outline)], lines: [line] };
}

function pitchedOn({ x0, x1, eaves, top }: Front, random: Random): GableParts {
  const middle = (x0 + x1) / 2;
  const rise = eaves - top;
  const corners = [
    { x: x0, y: eaves + 1 },
    { x: x0, y: eaves },
    { x: middle, y: top },
    { x: x1, y: eaves },
    { x: x1, y: eaves + 1 },
  ];
  // Its verge boards follow the slopes.
  const deep = 2.4;
  const inner = [
    { x: x0 + 1, y: eaves + deep },
    { x: middle, y: top + deep * (1 + rise / (x1 - x0)) },
    { x: x1 - 1, y: eaves + deep },
  ];
  const slopes = [polyline(inner.slice(0, 2)), polyline(inner.slice(1))];
  return {
    solids: [handCut(corners, WANDER_MM, random)],
    lines: slopes.flatMap((line, i) => inStrokes(line, random.branch(i))),
  };
}

function corniceOn(front: Front, plot: Plot, ends: Ends, random: Random): GableParts {
  const { x0, x1, eaves, top } = front;
  const deep = Math.max(1.25 * plot.smallestWeb, Math.min(0.3 * (eaves - top), 3));
  const out = Math.min(CORNICE_OUT_MM, 0.3 * deep + 0.4);
  const [l, r] = [x0 - (ends.freeLeft ? out : 0), x1 + (ends.freeRight ? out : 0)];
  const under = polyline([
    { x: l, y: top + deep },
    { x: r, y: top + deep },
  ]);
  return {
    solids: [
      rectangle(x0, top + deep / 2, x1 - x0, eaves - top - deep / 2 + 1),
      rectangle(l, top, r - l, deep),
    ],
    lines: inStrokes(under, random),
  };
}

/** A round window's share of its front, and where it sits in the gable's height. */
const LIGHT_SHARE = 0.12;
const LIGHT_UP = 0.34;

/** A round window in the gable, where one can be cut with card all round it. */
export function atticWindow(front: Front, body: Region, plot: Plot): Region | null {
  if (front.gable === 'flat') return null;
  const { x0, x1, eaves, top } = front;
  const { smallestWeb: web, smallestHole: hole } = plot;
  const up = LIGHT_UP * (eaves - top);
  const centre = { x: (x0 + x1) / 2, y: eaves - up };
  const room = (distanceTo(body, centre)?.distanceMm ?? 0) - 1.1 * web;
  const radius = Math.min(room, up - 0.4 * web, LIGHT_SHARE * (x1 - x0));
  return radius < 0.56 * hole ? null : circle(centre.x, centre.y, radius);
}

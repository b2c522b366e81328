import { pen, smoothContour } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { CLEAR_MM } from '../land/ground.js';
import { inset, type Station } from '../window/walk.js';
import type { Teeth } from './edging.js';
import type { Measures } from './measures.js';

/** The echo lies this far out from what a score must keep clear of, mm. */
const OUT_MM = 0.5;
/** Its depth as a share of the edging's, and the least worth drawing, mm. */
const SHARE = 0.55;
const LEAST_MM = 0.5;

export type Edge = 'scallop' | 'point' | 'wave' | 'lace';

/** The edging mirrored out onto the frame as a scored line; nothing where there is no room. */
export function echoOf(
  edge: Edge,
  teeth: Teeth,
  { depth, hem }: Measures,
  marginMm: number,
): Line[] {
  const from = hem + CLEAR_MM + OUT_MM;
  const reach = Math.min(SHARE * depth, marginMm + hem - from - CLEAR_MM);
  if (reach < LEAST_MM) return [];
  const out = (station: Station, mm: number): Point => inset(station, -station.mitre * mm);
  const { crests, troughs } = teeth;
  const count = crests.length;
  const points = crests.flatMap((crest, k) => [out(crest, from + reach), out(troughs[k], from)]);
  if (edge === 'wave') return [{ cubics: smoothContour(points) }];
  const start = points[points.length - 1];
  const line = pen(start.x, start.y);
  crests.forEach((crest, k) => {
    const [tip, end] = [points[2 * k], points[2 * k + 1]];
    if (edge === 'point') line.lineTo(tip.x, tip.y).lineTo(end.x, end.y);
    else
      arch(line, troughs[(k + count - 1) % count], crest.along, troughs[k], tip, end, from, reach);
  });
  return [line.line()];
}

/** Handle of a quarter ellipse of radius 1. */
const ROUND = 0.5523;

/** From trough to trough over a tip, upright at both ends and along the edge at the tip. */
function arch(
  line: ReturnType<typeof pen>,
  before: Station,
  along: Point,
  after: Station,
  tip: Point,
  end: Point,
  fromMm: number,
  reachMm: number,
): void {
  const rise = ROUND * reachMm;
  const half = Math.hypot(end.x - tip.x, end.y - tip.y);
  const run = ROUND * Math.sqrt(Math.max(0, half * half - reachMm * reachMm));
  const start = inset(before, -fromMm - rise);
  const last = inset(after, -fromMm - rise);
  line
    .curveTo(start.x, start.y, tip.x - along.x * run, tip.y - along.y * run, tip.x, tip.y)
    .curveTo(tip.x + along.x * run, tip.y + along.y * run, last.x, last.y, end.x, end.y);
}

import { offset } from '../../geometry/offset/offset.js';
import { polyline } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { handCut, inStrokes, shape } from '../brick/craft.js';
import { type Built, joinBuilt, NOTHING } from '../cottage/plan.js';
import type { Random } from '../random.js';
import { arched, edgeAnchor, lightsIn, type Site } from './parts.js';

const WANDER_MM = 0.2;
/** Heights as shares of the whole: shaft, nave's eaves and ridge, belfry's foot, clock. */
const SHAFT = [0.54, 0.6] as const;
const EAVES = 0.2;
const RIDGE = 0.36;
const BELFRY = 0.72;
const CLOCK = 0.58;
/** Buttresses: how far out, for the shaft's half width, and up to which shares of the shaft. */
const BUTTRESS = [
  { out: 0.3, up: 0.34 },
  { out: 0.15, up: 0.66 },
] as const;
/** The spire's eaves stand out by this share of the shaft's half width. */
const SPIRE_OUT = 0.13;
const STRINGS = [0.36, 0.68];
const LEAST_CLOCK_MM = 1.1;

/** A church tower with buttresses, a belfry and a spire; its nave beside it where there is room. */
export function churchOn(site: Site, random: Random): Built {
  const { plot, half } = site;
  const { height, smallestWeb: web } = plot;
  const shaft = height * random.between(...SHAFT);
  const top = -shaft;
  const tip = 0.55 * web;
  const out = half * (1 + SPIRE_OUT);
  const spire = [
    { x: -out, y: top + 0.5 },
    { x: -out, y: top },
    { x: -0.62 * half, y: top - 0.13 * (height - shaft) },
    { x: -tip, y: -height },
    { x: tip, y: -height },
    { x: 0.62 * half, y: top - 0.13 * (height - shaft) },
    { x: out, y: top },
    { x: out, y: top + 0.5 },
  ];
  const solids: Region[] = [
    rectangle(-half, top, 2 * half, shaft + 0.5),
    shape(spire),
    ...buttresses(site, shaft),
  ];
  const belfry = { x0: -half, x1: half, y0: top, y1: top * BELFRY };
  const parts = [
    shaftFace(site, shaft, random),
    lightsIn(site, belfry, 'pointed', 2, 0.5 * half, 0.3 * shaft),
    naveOn(site, random.branch('nave')),
  ];
  const anchors = [edgeAnchor(-half, top * 0.8), edgeAnchor(half, top * 0.8)];
  return joinBuilt([...parts, { ...NOTHING, solids, anchors }]);
}

/** Set-offs on both sides, sloping so that rain runs off. */
function buttresses({ half }: Site, shaft: number): Region[] {
  return BUTTRESS.map(({ out, up }) => {
    const reach = half * (1 + out);
    const high = -shaft * up;
    return shape([
      { x: -reach, y: 0.5 },
      { x: -reach, y: high },
      { x: -half, y: high - half * out },
      { x: half, y: high - half * out },
      { x: reach, y: high },
      { x: reach, y: 0.5 },
    ]);
  });
}

/** String courses, the clock and the west door; no joints on those two. */
function shaftFace({ half, plot }: Site, shaft: number, random: Random): Built {
  const levelAt = (y: number) =>
    polyline([
      { x: -1.3 * half, y },
      { x: 1.3 * half, y },
    ]);
  const strings = STRINGS.flatMap((t, i) =>
    inStrokes(levelAt(-shaft * t), random.branch(`string ${i}`)),
  );
  const radius = Math.min(0.32 * half, 0.07 * shaft);
  const y = -shaft * CLOCK;
  const hands = polyline([
    { x: 0, y: y - 0.65 * radius },
    { x: 0, y },
    { x: 0.45 * radius, y: y + 0.2 * radius },
  ]);
  const isClock = radius >= LEAST_CLOCK_MM;
  const isDoor = half > 1.6 * plot.smallestWeb;
  const dial = isClock ? [circle(0, y, radius)] : [];
  const door = isDoor ? [arched(0, 0, Math.max(2, 0.7 * half), 0.22 * shaft, 'pointed')] : [];
  const outlines: Line[] = [...dial, ...door].flatMap((r) =>
    r.contours.map((cubics) => ({ cubics })),
  );
  return {
    ...NOTHING,
    lines: [...strings, ...outlines, ...(isClock ? [hands] : [])],
    bare: [...dial, ...door].map((r) => offset(r, 0.7)),
  };
}

/** The nave seen from its side: a wall of lancets under a steep roof. */
function naveOn(site: Site, random: Random): Built {
  const { plot, half, left, right, hand } = site;
  const { height, smallestWeb: web } = plot;
  const parts = [left, right].map((end): Built => {
    const way = Math.sign(end);
    const long = Math.abs(end) - half;
    // A short bit beside the tower is its porch, lower than the nave.
    const isNave = way === hand;
    if (long < 3 * web) return NOTHING;
    const scale = isNave ? 1 : 0.72;
    const eaves = -height * EAVES * scale;
    const ridge = -height * RIDGE * scale;
    const inner = way * half * 0.5;
    const hip = Math.min(0.25 * long, 0.5 * (eaves - ridge));
    const over = Math.min(0.9, 0.1 * long);
    const wall = [
      { x: inner, y: 0.5 },
      { x: end - way * over, y: 0.5 },
      { x: end - way * over, y: eaves - 0.3 },
      { x: inner, y: eaves - 0.3 },
    ];
    const roof = [
      { x: inner, y: eaves },
      { x: end, y: eaves },
      { x: end - way * hip, y: ridge },
      { x: inner, y: ridge },
    ];
    const [x0, x1] = [way * half * 1.3, end - way * over].sort((a, b) => a - b);
    const bays = Math.max(1, Math.round((x1 - x0) / Math.max(4.5, -0.75 * eaves)));
    const face = { x0, x1, y0: eaves, y1: 0 };
    const lights = lightsIn(site, face, 'pointed', bays, -0.26 * eaves, -0.66 * eaves);
    const line = polyline([
      { x: inner, y: eaves },
      { x: end, y: eaves },
    ]);
    return {
      ...NOTHING,
      ...lights,
      solids: [shape(wall), handCut(roof, WANDER_MM, random.branch(way))],
      lines: [...lights.lines, ...inStrokes(line, random.branch(`eaves ${way}`))],
      anchors: [edgeAnchor(end, eaves)],
    };
  });
  return joinBuilt(parts);
}

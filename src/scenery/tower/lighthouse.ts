import { pen, polyline } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { inStrokes, mix, shape, shapeOf } from '../brick/craft.js';
import { type Built, joinBuilt, NOTHING } from '../cottage/plan.js';
import type { Random } from '../random.js';
import { edgeAnchor, lightsIn, type Site } from './parts.js';

/** Levels as shares of the height: gallery, lantern's foot and head. */
const GALLERY = 0.74;
const LANTERN_HEAD = 0.89;
/** The shaft's width under the gallery for that at its foot. */
const TAPER = 0.62;
/** Bands painted round the shaft. */
const BANDS = 5;
/** Joints keep this far from a painted band, mm. */
const BAND_APART_MM = 0.8;
const GALLERY_OUT = 0.32;
/** A ball's radius is less than this share of the height. */
const BALL_SHARE = 0.045;
/** The rock it stands on: its height for the whole. */
const ROCK = 0.11;

/** A lighthouse with its gallery and lantern, on a rock where there is room. */
export function lighthouseOn(site: Site, random: Random): Built {
  const { plot, half } = site;
  const { height, smallestWeb: web } = plot;
  const deck = Math.max(1.15 * web, 0.035 * height);
  const ball = ballOn(height, web);
  // On a low tower the gallery comes down, so that lantern and dome still stand over it.
  const head = -Math.min(height * LANTERN_HEAD, height - 2 * ball - 0.5 * web);
  const gallery = -Math.min(height * GALLERY, -head - 0.6 * deck);
  const neck = Math.max(half * TAPER, 1.2 * web);
  const lantern = Math.max(neck * 0.8, 1.1 * web);
  const out = Math.max(neck * (1 + GALLERY_OUT), lantern + 0.5 * web);
  const shaft = shapeOf(
    pen(-half, 0.5)
      .curveTo(-0.84 * half, 0.35 * gallery, -neck, 0.7 * gallery, -neck, gallery)
      .lineTo(neck, gallery)
      .curveTo(neck, 0.7 * gallery, 0.84 * half, 0.35 * gallery, half, 0.5)
      .close(),
  );
  const solids: Region[] = [
    shaft,
    shape([
      { x: -neck, y: gallery + deck },
      { x: -out, y: gallery },
      { x: -out, y: gallery - deck * 0.6 },
      { x: out, y: gallery - deck * 0.6 },
      { x: out, y: gallery },
      { x: neck, y: gallery + deck },
    ]),
    rectangle(-lantern, head, 2 * lantern, gallery - head),
    ...domeOn(site, lantern, head, ball),
  ];
  const light = { x0: -lantern, x1: lantern, y0: head, y1: gallery - deck * 0.6 };
  const widthAt = (t: number) => mix(half, neck, Math.min(1, 1.25 * t));
  const windows = [0.24, 0.52].map((t) => {
    const y = gallery * t;
    const room = { x0: -widthAt(t), x1: widthAt(t), y0: y - 0.1 * height, y1: y + 0.02 * height };
    return lightsIn(site, room, 'round', 1, 0.4 * half, 0.09 * height);
  });
  return joinBuilt([
    {
      ...NOTHING,
      solids,
      lines: bands(widthAt, gallery, random.branch('bands')),
      anchors: [edgeAnchor(-half, gallery), edgeAnchor(half, gallery)],
      bare: paintedOn(half, gallery),
    },
    lightsIn(site, light, 'round', 2, lantern, 0.12 * height),
    ...windows,
    rockUnder(site, random.branch('rock')),
  ]);
}

/** Radius of the ball on the dome; none on a tower too low for one. */
function ballOn(height: number, web: number): number {
  const radius = Math.max(0.55 * web, 0.012 * height);
  return radius < BALL_SHARE * height ? radius : 0;
}

/** A dome over the lantern, and the ball on it. */
function domeOn({ plot }: Site, lantern: number, head: number, ball: number): Region[] {
  const { height, smallestWeb: web } = plot;
  const rise = height + head - ball;
  const out = lantern * 1.22;
  const dome = pen(-out, head + 0.4)
    .lineTo(-out, head)
    .curveTo(-0.8 * out, head - 0.7 * rise, -0.35 * out, head - rise, 0, head - rise)
    .curveTo(0.35 * out, head - rise, 0.8 * out, head - 0.7 * rise, out, head)
    .lineTo(out, head + 0.4)
    .close();
  if (ball === 0) return [shapeOf(dome)];
  const neck = rectangle(-0.55 * web, -height + ball, 1.1 * web, ball + 0.3 * rise);
  return [shapeOf(dome), circle(0, -height + ball, ball), neck];
}

/** Edges of the painted bands, bowed as on a round shaft. */
function bands(widthAt: (t: number) => number, gallery: number, random: Random): Line[] {
  return Array.from({ length: BANDS - 1 }, (_, k) => {
    const t = (k + 1) / BANDS;
    const [half, y] = [widthAt(t), gallery * t];
    const line = pen(-half, y)
      .quadTo(0, y + 0.22 * half, half, y)
      .line();
    return inStrokes(line, random.branch(k));
  }).flat();
}

/** Every second band, and all over the gallery, is painted: no joints show. */
function paintedOn(half: number, gallery: number): Region[] {
  const band = -gallery / BANDS;
  const painted = [1, 3].map((k) =>
    rectangle(-2 * half, -(k + 1) * band - BAND_APART_MM, 4 * half, band + 2 * BAND_APART_MM),
  );
  return [...painted, rectangle(-4 * half, 4 * gallery, 8 * half, -3 * gallery)];
}

/** Rock, highest beside the tower and falling away to both ends. */
function rockUnder({ plot, left, right, half }: Site, random: Random): Built {
  if (right - left < 3 * half) return NOTHING;
  const high = plot.height * ROCK;
  const count = Math.max(4, Math.round((right - left) / Math.max(5, 0.5 * half)));
  const crest: Point[] = Array.from({ length: count + 1 }, (_, k) => {
    const luck = random.branch(k);
    const t = k / count;
    const rise = Math.sin(Math.PI * mix(0.08, 0.92, t)) ** 0.7;
    const off = k === 0 || k === count ? 0 : luck.between(-0.35, 0.35) / count;
    return {
      x: mix(left, right, t + off),
      y: k === 0 || k === count ? -0.18 * high : -high * rise * luck.between(0.72, 1.05),
    };
  });
  const outline = shape([{ x: left, y: 0.5 }, ...crest, { x: right, y: 0.5 }]);
  const cracks = crest.slice(1, -1).map((p, i) => {
    const luck = random.branch(`crack ${i}`);
    return polyline([
      p,
      { x: p.x + luck.between(-0.3, 0.3) * high, y: p.y * luck.between(0.15, 0.4) },
    ]);
  });
  return { ...NOTHING, solids: [outline], lines: cracks, bare: [outline] };
}

import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { outlineLines } from '../geometry/clip-lines.js';
import { regionArea } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { circle, rectangle } from '../geometry/primitives.js';
import { movePoint, moveRegion } from '../geometry/transform.js';
import type { Line, Point, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot, type Relief } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import { crescentOf, type Disc, discOf, FORMS, HOLDS, raysOf } from './moon/disc.js';
import { faceOf } from './moon/face.js';
import { bandsOf, bankOf, crossingOf, isBanded, staysOf } from './moon/hold.js';
import type { Random } from './random.js';
import { type Sky, skyOf } from './sky/upright.js';

const parameters = {
  form: {
    kind: 'choice',
    options: FORMS,
    default: 'moon',
    says: 'A full moon, a crescent, or a sun with rays.',
  },
  held: {
    kind: 'choice',
    options: HOLDS,
    default: 'cloud',
    says: 'How it is tied to the frame: by cloud across it, by stays (a sun by its rays), or by an edge of the window that hides a part of it.',
  },
  rays: {
    kind: 'number',
    whole: true,
    default: 18,
    min: 8,
    max: 32,
    says: 'How many rays a sun has, long and short by turns; fewer where they would not hold.',
  },
  thickness: {
    kind: 'number',
    default: 0.36,
    min: 0.15,
    max: 0.6,
    says: 'How thick a crescent is at its middle, as a share of its width.',
  },
  relief: {
    kind: 'choice',
    options: ['plain', 'scored', 'embossed'],
    default: 'scored',
    says: 'Craters on a moon or rings on a sun: none, scored, or pressed.',
  },
} as const;

/** Further than any panel reaches, mm. */
const FAR_MM = 1000;
const RELIEF_MM = 0.35;
/** Rays that point within this of the foot hold a sun that has no cloud. */
const HOLDING_DEG = 48;
/** A crescent leans by up to this. */
const LEAN_DEG = 24;

/** The sun or the moon in the sky. */
export const moon = family({
  name: 'moon',
  says: 'A full moon, a crescent or a sun, tied to the frame by cloud, stays, rays or an edge.',
  sides: ['head', 'left', 'right', 'sill'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 0.55 } },
  made: {
    cut: 'the disc, its rays, and the cloud or stays that hold it',
    scored: 'craters or rings, and where cloud crosses the disc',
    embossed: 'craters sunk, or a sun raised, where asked',
  },
  parts: ['disc', 'rays', 'cloud'],
  parameters,
  stance: 'turned',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const sky = skyOf(plot);
  const { form, held, thickness } = values;
  const banded = held === 'cloud' && isBanded(plot, sky);
  const disc = discOf(plot, { form, held, thickness, banded });
  const lit = litDeg(values.held, sky, random.branch('lit'));
  const isCrescent = values.form === 'crescent';
  const thick = Math.max(values.thickness, (1.15 * plot.smallestWeb) / disc.radius);
  const isSun = values.form === 'sun';
  const sinks = isSun && banded;
  const above = (region: Region) => (sinks ? subtract(region, [sunken(sky, disc)]) : region);
  const whole = above(circle(disc.centre.x, disc.centre.y, disc.radius));
  const orb = isCrescent ? crescentOf(disc, Math.min(0.8, thick), lit) : whole;
  const rays = isSun
    ? above(
        raysOf(
          plot,
          disc,
          values.rays,
          values.held === 'cloud' ? 0 : HOLDING_DEG,
          random.branch('rays'),
        ),
      )
    : null;
  const cloud =
    values.held === 'cloud'
      ? cloudOf(plot, sky, disc, values.form === 'moon', random.branch('cloud'))
      : [];
  const stays =
    values.held === 'stays' && rays === null
      ? [staysOf(plot, disc, stayEnds(disc, isCrescent ? lit : null), random.branch('stays'))]
      : [];
  const foot = stays.length > 0 || banded ? [] : [footOf(plot, disc, values.held)];
  const heart = isCrescent ? onCrescent(disc, lit, thick) : disc.centre;
  const shapes = union([orb, ...(rays ? [rays] : []), ...cloud, ...stays, ...foot]);
  const drawn = subtract(shapes, [rectangle(-FAR_MM, plot.root, 2 * FAR_MM, FAR_MM)]);
  const { body, holes } = fitToCut(drawn, plot, heart);
  const card = subtract(body, [holes]);
  const face = faceOf(disc, values.form, random.branch('face'));
  const bare = subtract(orb, cloud);
  const edges = keptClear(outlineLines(union(cloud)), offset(orb, -CLEAR_MM), 0.01);
  const lines: Line[] = [...edges];
  if (values.relief === 'scored') lines.push(...keptClear(face.lines, bare, CLEAR_MM));
  return {
    body,
    holes,
    scores: keptClear(lines, card, CLEAR_MM),
    reliefs: values.relief === 'embossed' ? pressed(face.rounds, bare, isSun) : [],
    parts: { disc: orb, rays: rays ?? { contours: [] }, cloud: union(cloud) },
  };
}

const cloudOf = (plot: Plot, sky: Sky, disc: Disc, both: boolean, random: Random): Region[] =>
  isBanded(plot, sky) ? bandsOf(plot, sky, disc, both, random) : [bankOf(plot, disc, random)];

/** What runs into the frame of a disc that the edge hides, or of the bank before it. */
function footOf(plot: Plot, { centre, radius }: Disc, held: string): Region {
  const chord = Math.sqrt(Math.max(0, radius ** 2 - centre.y ** 2));
  const half = held === 'edge' ? Math.min(0.9 * chord, plot.width / 2) : plot.smallestWeb;
  return rectangle(-half, 0, 2 * half, plot.root);
}

/** What lies below the band that a sun sinks behind. */
function sunken(sky: Sky, disc: Disc): Region {
  const { x, y } = crossingOf(sky, disc);
  const far = 2 * disc.reach;
  return moveRegion(rectangle(x - far, y, 2 * far, 2 * far), sky.toPlot);
}

/** Where a crescent's lit side faces, in the plot: to a side, or to the edge that hides it. */
function litDeg(held: string, sky: Sky, random: Random): number {
  const lean = random.between(-LEAN_DEG, LEAN_DEG);
  if (held === 'edge') return 90 + lean;
  const hand = random.chance(0.5) ? 1 : -1;
  const a = ((lean + 12 * hand) * Math.PI) / 180;
  const way = { x: hand * Math.cos(a), y: Math.sin(a) };
  const turned = movePoint(way, { ...sky.toPlot, e: 0, f: 0 });
  return (Math.atan2(turned.y, turned.x) * 180) / Math.PI;
}

const onCrescent = ({ centre, radius }: Disc, deg: number, thick: number): Point => {
  const r = radius * (1 - Math.min(0.8, thick));
  const a = (deg * Math.PI) / 180;
  return { x: centre.x + r * Math.cos(a), y: centre.y + r * Math.sin(a) };
};

/** Where stays end: along the disc's top, or well on a crescent's lit side. */
function stayEnds(disc: Disc, lit: number | null): Point[] {
  const { centre, radius } = disc;
  const at = (deg: number, r: number): Point => ({
    x: centre.x + radius * r * Math.cos((deg * Math.PI) / 180),
    y: centre.y + radius * r * Math.sin((deg * Math.PI) / 180),
  });
  if (lit === null) return [at(90 - 42, 0.9), at(90, 0.9), at(90 + 42, 0.9)];
  const towards = Math.cos((lit * Math.PI) / 180) > 0 ? 1 : -1;
  return [at(lit + 8 * towards, 0.9), at(lit + 64 * towards, 0.95)];
}

function pressed(rounds: readonly Region[], bare: Region, raised: boolean): Relief[] {
  const place = offset(bare, -CLEAR_MM);
  return rounds
    .map((region) => intersect(region, place))
    .filter((region) => regionArea(region) > 1)
    .map((region) => ({ region, side: raised ? 'raised' : 'sunk', depthMm: RELIEF_MM }));
}

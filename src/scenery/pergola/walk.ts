import { subtract } from '../../geometry/boolean/boolean.js';
import { stroke } from '../../geometry/offset/offset.js';
import { pen, polyline } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { shape, shapeOf } from '../brick/craft.js';
import { levelOf } from '../built/finish.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Built } from './row.js';
import { beamOf, type End, postOf, sizesOf } from './timber.js';

/** Each frame along the path looks this much smaller than the one before. */
const RATIO = 0.66;
/** Height of the eye as a share of the pergola's. */
const EYE = 0.4;
const PATH = 0.55;
/** Handle length of a quarter circle of radius 1, 4/3 (sqrt 2 - 1). */
const KAPPA = (4 / 3) * (Math.SQRT2 - 1);

/** One frame across the path as it looks from the path's near end. */
interface Frame {
  readonly scale: number;
  /** Middle of a post from the axis, its foot and the top of what it carries (y), mm. */
  readonly half: number;
  readonly foot: number;
  readonly top: number;
  readonly post: number;
  readonly beam: number;
}

/** Seen along the path: one frame behind another, with straight beams or with hoops. */
export function walkOf(plot: Plot, most: number, hooped: boolean, end: End, random: Random): Built {
  const { width, height, root, smallestWeb } = plot;
  const { overhang } = sizesOf(plot);
  const frames = framesOf(plot, most, hooped);
  const last = frames[frames.length - 1];
  const [first] = frames;
  const timber = frames.flatMap((f, i) => frameOf(f, hooped, overhang, end, random.branch(i)));
  const plates = hooped ? [] : platesBetween(frames, smallestWeb);
  const verge = first.post * 0.9;
  const ground = shape([
    { x: -width / 2 + (hooped ? 0 : overhang * 0.5), y: 0.3 },
    { x: -last.half - verge * last.scale, y: last.foot - 0.3 },
    { x: last.half + verge * last.scale, y: last.foot - 0.3 },
    { x: width / 2 - (hooped ? 0 : overhang * 0.5), y: 0.3 },
  ]);
  const bed = rectangle(-first.half - verge, 0, 2 * (first.half + verge), root);
  return {
    solids: [bed, ...(frames.length > 1 ? [ground] : []), ...timber, ...plates],
    lines: frames.length > 1 ? pathLines(plot, first, last, random.branch('path')) : [],
    support: {
      beams: [
        {
          from: -first.half * (hooped ? 0.75 : 1),
          to: first.half * (hooped ? 0.75 : 1),
          y: hooped ? (x) => insideOf(first, x) : () => first.top + first.beam,
          thick: first.beam,
        },
      ],
      posts: [-1, 1].map((hand) => ({
        x: hand * first.half,
        top: -height * (hooped ? 0.55 : 0.9),
        foot: 0,
      })),
    },
    foot: -first.half,
  };
}

/** As many frames as leave gaps between them and an opening within the last. */
function framesOf(plot: Plot, most: number, hooped: boolean): Frame[] {
  const { width, height, smallestWeb, smallestHole } = plot;
  const { post, beam, overhang } = sizesOf(plot);
  const outer = hooped ? 0 : overhang;
  const eye = EYE * height;
  const frames: Frame[] = [];
  for (let i = 0; i < most; i++) {
    const scale = RATIO ** i;
    const frame = {
      scale,
      half: (width / 2 - outer - post / 2) * scale,
      foot: -eye * (1 - scale),
      top: -eye - (height - eye) * scale,
      post: Math.max(1.4 * smallestWeb, post * scale),
      beam: Math.max(1.15 * smallestWeb, beam * scale),
    };
    const before = frames[i - 1];
    if (before) {
      const aside = before.half - frame.half - (before.post + frame.post) / 2;
      const above = frame.top - before.top - before.beam;
      const inner = Math.min(2 * frame.half - frame.post, frame.foot - frame.top - frame.beam);
      if (Math.min(aside, above) < 1.3 * smallestHole || inner < 1.5 * smallestHole) break;
    }
    frames.push(frame);
  }
  return frames;
}

function frameOf(f: Frame, hooped: boolean, overhang: number, end: End, random: Random): Region[] {
  if (hooped) return [hoop(f)];
  const posts = [-1, 1].flatMap((hand) =>
    postOf(hand * f.half, f.foot, f.top + f.beam / 2, f.post, random.branch(hand)),
  );
  const out = f.half + f.post / 2 + overhang * f.scale;
  return [...posts, beamOf(-out, out, f.top, f.beam, overhang * f.scale, end)];
}

const hoopThick = (f: Frame): number => Math.max(f.post * 0.85, f.beam);

/** A hoop's head is round, or flatter where it is broad for its height. */
const riseOf = (f: Frame, half: number, top: number): number =>
  Math.min(half, (f.foot - top) * 0.6);

/** The inside of a hoop over x. */
function insideOf(f: Frame, x: number): number {
  const thick = hoopThick(f);
  const [half, top] = [f.half - thick / 2, f.top + thick];
  const rise = riseOf(f, half, top);
  return top + rise * (1 - Math.sqrt(Math.max(0, 1 - (x / half) ** 2)));
}

function hoop(f: Frame): Region {
  const outline = (half: number, top: number) => {
    const rise = riseOf(f, half, top);
    const spring = top + rise;
    return shapeOf(
      pen(-half, f.foot + 0.5)
        .lineTo(-half, spring)
        .curveTo(-half, spring - rise * KAPPA, -half * KAPPA, top, 0, top)
        .curveTo(half * KAPPA, top, half, spring - rise * KAPPA, half, spring)
        .lineTo(half, f.foot + 0.5)
        .close(),
    );
  };
  const thick = hoopThick(f);
  return subtract(outline(f.half + thick / 2, f.top), [outline(f.half - thick / 2, f.top + thick)]);
}

/** The plates along both sides, running away to the eye's height. */
function platesBetween(frames: readonly Frame[], smallestWeb: number): Region[] {
  return frames.slice(1).flatMap((far, i) => {
    const near = frames[i];
    return [-1, 1].map((hand) =>
      stroke(
        [
          polyline([
            { x: hand * near.half, y: near.top + near.beam / 2 },
            { x: hand * far.half, y: far.top + far.beam / 2 },
          ]),
        ],
        1.15 * smallestWeb,
      ),
    );
  });
}

/** Both edges of the path and a few joints of its paving, closer together farther off. */
function pathLines(plot: Plot, first: Frame, last: Frame, random: Random): Line[] {
  const near = first.half * PATH;
  const edges = [-1, 1].map((hand) =>
    polyline([
      { x: hand * near, y: 0 },
      { x: hand * near * last.scale, y: last.foot },
    ]),
  );
  const joints = Array.from({ length: 1 + levelOf(plot) }, (_, i) => {
    const luck = random.branch(i);
    const y = last.foot * (1 - RATIO ** (i + luck.between(0.4, 0.8)));
    const half = near * (1 + y / (EYE * plot.height));
    const from = luck.between(-0.8, -0.2);
    return polyline([
      { x: half * from, y },
      { x: half * (from + luck.between(0.5, 0.9)), y },
    ]);
  });
  return [...edges, ...joints];
}

import { smoothLine } from '../../geometry/pen.js';
import type { Region } from '../../geometry/types.js';
import { handCut } from '../brick/craft.js';
import type { Drawing } from '../built/finish.js';
import type { Random } from '../random.js';
import { at, bar, type Layout, postAt, type Run, SUNK_MM, WANDER_MM } from './plan.js';

/** Gate over the ground, and its height, as shares of the fence's. */
const CLEAR = 0.09;
const HEIGHT = 0.86;
const RAIL = 0.08;
/** The top of a garden gate dips or rises in the middle by this share. */
const CURVE = 0.09;
/** A brace needs a web and this many smallest holes between the rails. */
const BRACED = 1.1;

/** A gate on its two posts: stiles, rails and a brace up from the foot of the hinges. */
export function gateOf(layout: Layout, gate: Run, isField: boolean, random: Random): Drawing {
  const { plot, post } = layout;
  const { height, smallestWeb, smallestHole } = plot;
  const thick = Math.max(1.15 * smallestWeb, RAIL * height);
  const posts = [gate.from + post / 2, gate.to - post / 2].map((x, i) =>
    postAt(x, post * 1.15, height, 0, false, random.branch(`post ${i}`)),
  );
  const [from, to] = [gate.from + post, gate.to - post];
  const foot = Math.max(CLEAR * height, 1.35 * smallestHole);
  const top = HEIGHT * height;
  const bow = isField ? 0 : CURVE * height * random.branch('bow').pick([-1, 1]);
  const inner = to - from - 2 * thick;
  const hinge = random.branch('hinge').chance(0.5) ? 1 : -1;
  const [low, high] = hinge > 0 ? [from, to] : [to, from];
  const brace = () =>
    bar(
      at(low + hinge * thick, -foot - thick / 2),
      at(high - hinge * thick, -top + thick / 2),
      thick * 0.95,
      random.branch('brace'),
    );
  // A gate too small to see through is a door of boards.
  if (inner < 1.3 * smallestHole || top - foot - 2 * thick < 1.3 * smallestHole) {
    return { solids: [...posts, door(from, to, top, bow, random)], cuts: [], lines: [] };
  }
  const levels = levelsOf(foot, top, thick, isField ? 5 : 3, smallestHole);
  const rails = levels.map((y, i) => bar(at(from, -y), at(to, -y), thick, random.branch(i)));
  const braces =
    levels[1] - levels[0] - thick < smallestWeb + BRACED * smallestHole ? [] : [brace()];
  const stiles = [from + thick / 2 - 0.2, to - thick / 2 + 0.2].map((x, i) =>
    bar(at(x, -foot + 0.1), at(x, -top - thick * 0.4), thick, random.branch(`stile ${i}`)),
  );
  const crest = isField ? [] : [crestOf(from, to, top, bow, thick, random)];
  const lines = [from, to].map((x) => smoothLine([at(x, -foot - 1), at(x, -top + 1)]));
  return { solids: [...posts, ...stiles, ...rails, ...crest, ...braces], cuts: [], lines };
}

/** Heights of the rails' middles, as many as leave gaps that can be cut, closer at the foot. */
function levelsOf(
  foot: number,
  top: number,
  thick: number,
  most: number,
  smallestHole: number,
): number[] {
  const fitting = Math.floor((top - foot - thick) / (thick + 1.9 * smallestHole)) + 1;
  const count = Math.max(2, Math.min(most, fitting));
  const power = fitting > count ? 1.25 : 1;
  return Array.from({ length: count }, (_, i) => {
    return foot + thick / 2 + (i / (count - 1)) ** power * (top - foot - thick);
  });
}

/** The curved top of a garden gate, filled down to its top rail. */
function crestOf(
  from: number,
  to: number,
  top: number,
  bow: number,
  thick: number,
  random: Random,
): Region {
  const middle = (from + to) / 2;
  const rise = Math.max(0, bow);
  const ends = Math.max(0, -bow);
  const corners = [
    at(from, -top + thick),
    at(from, -top - ends),
    at(from * 0.6 + middle * 0.4, -top - ends * 0.45 - rise * 0.7),
    at(middle, -top - rise),
    at(to * 0.6 + middle * 0.4, -top - ends * 0.45 - rise * 0.7),
    at(to, -top - ends),
    at(to, -top + thick),
  ];
  return handCut(corners, WANDER_MM, random.branch('crest'));
}

function door(from: number, to: number, top: number, bow: number, random: Random): Region {
  const middle = (from + to) / 2;
  const corners = [
    at(from - 0.5, SUNK_MM),
    at(from - 0.5, -top),
    at(middle, -top - Math.max(0, bow)),
    at(to + 0.5, -top),
    at(to + 0.5, SUNK_MM),
  ];
  return handCut(corners, WANDER_MM, random.branch('door'));
}

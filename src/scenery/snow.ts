import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { polyline, smoothLine } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Point, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { creased } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM, groundOf, landUnder, levelsOf } from './land/ground.js';
import type { Random } from './random.js';
import { type Edge, LIES, lobesOf } from './snow/drift.js';
import { iciclesOf, ledgeHoles } from './snow/icicles.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['drift', 'icicles'],
    default: 'drift',
    says: 'Soft snow, or snow with icicles: along the head, or under a ledge of snow on the sill where there is room for them.',
  },
  lumps: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How the snow lies: 0 in one long sweep, 1 in many mounds or small lobes.',
  },
  sparkle: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How many small crystals are scored on it, 0 for none.',
  },
  shade: {
    kind: 'flag',
    default: true,
    says: 'Lines scored within the edge of each lobe, on its lee side.',
  },
} as const;

/** Snow on the sill, or hanging from the head. */
export const snow = family({
  name: 'snow',
  says: 'Snow drifted along the sill or hanging over from the head, with icicles where asked.',
  sides: ['head', 'sill'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 0.3 } },
  made: {
    cut: 'the edge of the snow, icicles, and openings under a ledge',
    scored: 'the lee of lobes, and small crystals',
    embossed: null,
  },
  parameters,
  stance: 'turned',
  grow,
});

/** The snow's own share of the height where icicles hang below it from the head. */
const LOAD = 0.4;
/** Radius of the hollows between lobes, at least so many webs, or as a share of the height. */
const FILLET_WEBS = 0.5;
const FILLET = { hanging: 0, capped: 0.08, drifted: 0.3 } as const;

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const onHead = plot.side === 'head';
  const isIcy = values.form === 'icicles';
  const { left, right } = groundOf(plot);
  const deep = onHead && isIcy ? { ...plot, height: LOAD * plot.height } : plot;
  const lie = onHead ? 'hanging' : isIcy ? 'capped' : 'drifted';
  const edge = lobesOf(deep, LIES[lie], values.lumps, random.branch('edge'));
  const levelAt = levelsOf(edge.line);
  const mass = union([
    landUnder(edge.line, plot.root),
    rectangle(left, -0.6, right - left, plot.root + 0.6),
  ]);
  const hung =
    onHead && isIcy
      ? iciclesOf(plot, [left, right], levelAt, plot.height - deep.height, -1, random.branch('ice'))
      : [];
  const reach = rectangle(left, -plot.height, right - left, plot.height + plot.root);
  const snowy = intersect(union([mass, ...hung]), reach);
  const { body, holes } = fitToCut(
    creased(snowy, Math.max(FILLET_WEBS * plot.smallestWeb, FILLET[lie] * plot.height)),
    plot,
  );
  const isOpen = plot.frame.window.contours.length > 0;
  const ledge =
    isIcy && !onHead && isOpen
      ? ledgeHoles(
          plot,
          Math.max(left, -plot.width / 2),
          Math.min(right, plot.width / 2),
          levelAt,
          random.branch('ledge'),
        )
      : EMPTY_REGION;
  const cut = union([holes, ledge]);
  const lines = [
    ...(values.shade ? shadeOf(edge, plot, levelAt) : []),
    ...crystals(edge, plot, values.sparkle, levelAt, random.branch('sparkle')),
  ];
  const card = subtract(body, [cut, belowGround(plot)]);
  return { body, holes: cut, scores: keptClear(lines, card, CLEAR_MM), reliefs: [] };
}

const belowGround = ({ width, root }: Plot): Region =>
  rectangle(-2 * width, 0, 4 * width, root + 10);

/** Lines that follow the edge of each lobe on its lee side, the inner ones shorter. */
function shadeOf({ crests }: Edge, plot: Plot, levelAt: (x: number) => number): Line[] {
  return crests.flatMap((crest) => {
    const at = (along: number, down: number) => {
      const x = crest.x + crest.lee * along * crest.half;
      return { x, y: Math.max(crest.y, levelAt(x)) * (1 - down) };
    };
    const outer = smoothLine([at(-0.12, 0.14), at(0.2, 0.14), at(0.46, 0.18), at(0.64, 0.3)]);
    const inner = smoothLine([at(0.08, 0.28), at(0.26, 0.29), at(0.42, 0.35)]);
    return crest.half > 4 * plot.smallestWeb ? [outer, inner] : [];
  });
}

/** Crystals of three strokes, mm across, and one for so much of the face, mm2. */
const CRYSTAL_MM = [1.6, 2.8] as const;
const FACE_MM2 = 45;
const APART_MM = 4.5;

function crystals(
  { crests }: Edge,
  plot: Plot,
  amount: number,
  levelAt: (x: number) => number,
  random: Random,
): Line[] {
  if (crests.length === 0) return [];
  const tries = Math.round((plot.width * plot.height) / FACE_MM2);
  const taken: Point[] = [];
  return Array.from({ length: tries }, (_, i): Line[] => {
    const luck = random.branch(i);
    if (!luck.chance(amount)) return [];
    const x = luck.between(-0.5, 0.5) * plot.width;
    const y = levelAt(x) * luck.between(0.1, 0.85);
    const r = luck.between(...CRYSTAL_MM) / 2;
    if (taken.some((p) => Math.hypot(p.x - x, p.y - y) < APART_MM)) return [];
    taken.push({ x, y });
    const turn = luck.between(0, 60);
    return [0, 60, 120].map((deg) => {
      const a = ((turn + deg) * Math.PI) / 180;
      const [dx, dy] = [r * Math.cos(a), r * Math.sin(a)];
      return polyline([
        { x: x - dx, y: y - dy },
        { x: x + dx, y: y + dy },
      ]);
    });
  }).flat();
}

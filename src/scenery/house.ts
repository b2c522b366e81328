import { subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { polyline } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import type { ValuesOf } from '../scene/parameter.js';
import { endsOf, inStrokes, keptClear } from './brick/craft.js';
import { jointsOn } from './brick/facing.js';
import type { Anchor } from './brick/patches.js';
import { type Built, joinBuilt, NOTHING } from './cottage/plan.js';
import { family, type Growth, type Plot } from './family.js';
import { creased } from './grass/tidy.js';
import { gableOn } from './house/gable.js';
import { openingsOf, stackOn } from './house/openings.js';
import { type Front, GABLES, type GableChoice, rowOf } from './house/plan.js';
import type { Random } from './random.js';

/** Scores keep this clear of cut edges, mm; wall joints stay a little further off. */
const CLEAR_MM = 1.5;
const JOINT_CLEAR_MM = 1.75;
const COURSE_MM = 2.6;
/** Creases between neighbours are filled to this radius, mm. */
const CREASE_MM = 0.35;
/** Fronts lap into one another, mm, so that no slit is left between them. */
const LAP_MM = 0.3;

const parameters = {
  gable: {
    kind: 'choice',
    options: GABLES,
    default: 'mixed',
    says: 'Form of the gables: stepped, curved, pitched, flat with a cornice, or one of each.',
  },
  storeys: {
    kind: 'number',
    default: 3,
    min: 2,
    max: 4,
    whole: true,
    says: 'Floors under the gable, as far as windows of that height can be cut.',
  },
  lit: {
    kind: 'flag',
    default: true,
    says: 'Windows are cut out, so that light falls through; otherwise they are scored.',
  },
  coverage: {
    kind: 'number',
    default: 0.3,
    min: 0,
    max: 1,
    says: 'Share of the fronts whose bricks are drawn.',
  },
} as const;

/** Town houses in a row. */
export const house = family({
  name: 'house',
  says: 'Town house fronts, one or a whole row as the width allows, with gables and windows.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.6 }, height: { share: 0.6 } },
  made: {
    cut: 'outline, and windows where they are large enough',
    scored: 'bricks, doors, sills, cornices',
    embossed: null,
  },
  parameters,
  parts: ['fronts', 'roofs'],
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const row = rowOf(plot, values.gable as GableChoice, values.storeys, random.branch('row'));
  const ends = endsOf(plot);
  const [first, last] = [row[0], row[row.length - 1]];
  const isBehind = { left: ends.left < -plot.width / 2, right: ends.right > plot.width / 2 };
  const gables = row.map((front, i) =>
    gableOn(
      front,
      plot,
      {
        freeLeft: i === 0 && !isBehind.left,
        freeRight: i === row.length - 1 && !isBehind.right,
      },
      random.branch(`gable ${i}`),
    ),
  );
  const stacks = row.map((front, i) => stackOn(front, plot, random.branch(`stack ${i}`)));
  const walls = row.map(({ x0, x1, eaves }) =>
    rectangle(x0 - LAP_MM, eaves, x1 - x0 + 2 * LAP_MM, plot.root - eaves),
  );
  // A row as wide as its plot runs on behind a jamb that it meets.
  const isWide = row.length > 1 || last.x1 - first.x0 > plot.width - 0.1;
  if (isWide && isBehind.left) walls.push(beyond(first, ends.left, plot));
  if (isWide && isBehind.right) walls.push(beyond(last, ends.right, plot));
  const roofs = union([...gables.flatMap((g) => g.solids), ...stacks.flatMap((s) => s.solids)]);
  const body = creased(union([...walls, roofs]), CREASE_MM);
  const openings = joinBuilt(
    row.map((front, i) =>
      openingsOf(front, body, plot, values.lit, random.branch(`openings ${i}`)),
    ),
  );
  const holes = union(openings.holes);
  const card = subtract(body, [holes]);
  const ground = rectangle(ends.left - 5, 0, ends.right - ends.left + 10, plot.root + 5);
  const face = subtract(offset(card, -JOINT_CLEAR_MM), [ground, ...openings.bare]);
  const joints = jointsOn(
    face,
    {
      masonry: 'brick',
      courseMm: COURSE_MM,
      anchors: [...openings.anchors, ...cornersOf(row)],
      coverage: values.coverage,
      fineness: plot.fineness,
    },
    random.branch('face'),
  );
  const lines = [
    ...joinBuilt([openings, ...stacks, { ...NOTHING, lines: gables.flatMap((g) => g.lines) }])
      .lines,
    ...partyLines(row, random.branch('party')),
  ];
  const drawn = subtract(card, [ground]);
  return {
    body,
    holes,
    scores: [...keptClear(lines, drawn, CLEAR_MM), ...joints],
    reliefs: [],
    parts: { fronts: union(walls), roofs },
  };
}

const beyond = ({ x0, eaves }: Front, x: number, plot: Plot) =>
  rectangle(Math.min(x, x0), eaves, Math.abs(x - x0), plot.root - eaves);

/** Where two fronts meet, below the lower one's eaves. */
function partyLines(row: readonly Front[], random: Random): Built['lines'] {
  return row.slice(1).flatMap((front, i) => {
    const top = Math.max(front.eaves, row[i].eaves);
    const ends = [
      { x: front.x0, y: top },
      { x: front.x0, y: 0 },
    ];
    return inStrokes(polyline(ends), random.branch(i));
  });
}

/** Bricks gather at the quoins, from the ground up. */
function cornersOf(row: readonly Front[]): Anchor[] {
  const anchorAt = (x: number, { eaves }: Front): Anchor => ({
    x0: x,
    x1: x,
    y0: eaves * 0.7,
    y1: 0,
    reach: 7,
    pull: 0.5,
  });
  return row.flatMap((f) => [anchorAt(f.x0, f), anchorAt(f.x1, f)]);
}

import { smoothLine } from '../geometry/pen.js';
import { circle, rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { handCut, shape } from './brick/craft.js';
import { type Drawing, finished, joinDrawings, levelOf } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import { HEADS, type Head, headOn } from './railings/heads.js';
import { type Plan, planOf } from './railings/plan.js';
import { ringsIn, scrollsIn } from './railings/scrolls.js';
import type { Random } from './random.js';

const WANDER_MM = 0.1;
/** A wall lower than this is a kerb without coping, mm. */
const COPED_MM = 4;

const parameters = {
  heads: {
    kind: 'choice',
    options: HEADS,
    default: 'spear',
    says: 'What the bars end in: spears, balls or lilies.',
  },
  scrolls: {
    kind: 'flag',
    default: true,
    says: 'A band of scrolls, or of rings where those would be too fine to cut.',
  },
  spacing: {
    kind: 'number',
    default: 0.35,
    min: 0,
    max: 1,
    says: 'How far apart the bars stand: 0 close, 1 wide.',
  },
  wall: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How high a wall they stand on, 0 for none.',
  },
} as const;

/** Iron railings in panels between standards. */
export const railings = family({
  name: 'railings',
  says: 'Iron railings on a low wall, with spear or ball heads, scrolls and standards.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.34 } },
  made: {
    cut: 'heads, and the gaps between bars, rails and scrolls',
    scored: 'coping and joints of the wall',
    embossed: null,
  },
  parts: ['wall'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const head = values.heads as Head;
  const plan = planOf(plot, head, values.scrolls, values.spacing, values.wall);
  const wall = wallOf(plan, random.branch('wall'));
  const panels = plan.standards.slice(1).map((to, i) => panelOf(plan, head, plan.standards[i], to));
  const standards = plan.standards.flatMap((x) => standardAt(plan, x));
  const rails = plan.rails.map((y, i) =>
    handCut(
      [
        { x: plan.from, y: -y - plan.rail / 2 },
        { x: plan.to, y: -y - plan.rail / 2 },
        { x: plan.to, y: -y + plan.rail / 2 },
        { x: plan.from, y: -y + plan.rail / 2 },
      ],
      WANDER_MM / 2,
      random.branch(`rail ${i}`),
    ),
  );
  const { lines } = wall;
  const solids = [...wall.solids, ...panels.flat(), ...standards, ...rails];
  const drawing = { solids, cuts: [], lines, parts: { wall: wall.solids } };
  return finished(drawing, plot, { x: plan.standards[0], y: plot.root });
}

/** Bars with their heads, and what fills the band, between two standards. */
function panelOf(plan: Plan, head: Head, left: number, right: number): Region[] {
  const { bar, pitch, rails, wall, filling, rail, standard } = plan;
  const room = right - left;
  const count = Math.max(0, Math.floor(room / pitch) - 1);
  const step = room / (count + 1);
  const top = rails[0] ?? plan.plot.height * 0.6;
  const xs = Array.from({ length: count }, (_, i) => left + (i + 1) * step);
  const under = filling ? rails[1] : top;
  const bars = xs.flatMap((x) => [
    rectangle(x - bar / 2, -under, bar, under - wall + 0.5),
    rectangle(x - bar / 2, -top - rail, bar, rail),
    ...headOn(head, x, -top - rail / 2, plan.head, bar),
  ]);
  if (!filling) return bars;
  const band = {
    from: left + standard / 2,
    to: right - standard / 2,
    top: -rails[0] + rail / 2,
    foot: -rails[1] - rail / 2,
    bar,
  };
  return [...bars, ...(filling === 'scrolls' ? scrollsIn(band) : ringsIn(band))];
}

/** A cast standard: a stouter bar with a foot, a collar at the top rail and a ball. */
function standardAt({ plot, standard, rails, wall, head }: Plan, x: number): Region[] {
  const half = standard / 2;
  const top = -plot.height;
  const ball = Math.max(half * 0.98, head.width * 0.52);
  const neck = half * 0.62;
  const collar = -(rails[0] ?? plot.height * 0.7) - half * 1.3;
  const shaft = shape([
    { x: x - half * 1.5, y: 0.5 },
    { x: x - half * 1.5, y: -wall - half },
    { x: x - half, y: -wall - half * 1.8 },
    { x: x - half, y: collar },
    { x: x - half * 1.35, y: collar - half * 0.2 },
    { x: x - half * 1.35, y: collar - half * 0.7 },
    { x: x - neck, y: collar - half * 1.1 },
    { x: x - neck, y: top + ball },
    { x: x + neck, y: top + ball },
    { x: x + neck, y: collar - half * 1.1 },
    { x: x + half * 1.35, y: collar - half * 0.7 },
    { x: x + half * 1.35, y: collar - half * 0.2 },
    { x: x + half, y: collar },
    { x: x + half, y: -wall - half * 1.8 },
    { x: x + half * 1.5, y: -wall - half },
    { x: x + half * 1.5, y: 0.5 },
  ]);
  return [shaft, circle(x, top + ball, ball)];
}

/** The wall under them, with its coping and a few joints. */
function wallOf(plan: Plan, random: Random): Drawing {
  const { from, to, wall, plot } = plan;
  const bed = rectangle(from, -wall, to - from, plot.root + wall);
  if (wall < COPED_MM) return { solids: [bed], cuts: [], lines: [] };
  const lines: Line[] = [];
  const coping = Math.max(1.8, 0.35 * wall);
  const stones = Math.max(1, Math.round((to - from) / (2.6 * wall)));
  for (let i = 0; i < stones; i++) {
    const luck = random.branch(i);
    const x = from + ((i + luck.between(0.2, 0.5)) * (to - from)) / stones;
    const run = ((to - from) / stones) * luck.between(0.3, 0.6);
    const y = -wall + coping;
    lines.push(
      smoothLine([
        { x, y },
        { x: x + run, y: y + luck.between(-0.1, 0.1) },
      ]),
    );
    const joint = x + run * luck.between(0.2, 0.8);
    if (levelOf(plot) > 0)
      lines.push(
        smoothLine([
          { x: joint, y },
          { x: joint, y: -0.6 },
        ]),
      );
  }
  const overhang = Math.min(0.6, wall * 0.1);
  const stone = rectangle(from - overhang, -wall, to - from + 2 * overhang, coping);
  return joinDrawings([{ solids: [bed, stone], cuts: [], lines }]);
}

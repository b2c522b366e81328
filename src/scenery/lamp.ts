import { subtract } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { polyline } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { CLEAR_MM, finished, levelOf } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import { bracketLamp } from './lamp/bracket.js';
import type { Room } from './lamp/lantern.js';
import { type Arms, postLamp } from './lamp/post.js';
import type { Random } from './random.js';

/** Rays round a lantern, coarse to fine, and how far they run in lantern heights. */
const RAYS = [12, 16, 20] as const;
const RAY = [0.72, 1.2] as const;
const SHORT_RAY = 0.6;

/** A bracket ends this far under its plate, mm. */
const FOOT_MM = 0.3;

const parameters = {
  arms: {
    kind: 'choice',
    options: ['none', 'single', 'double'],
    default: 'none',
    says: 'How its lanterns are carried: one standing, one hung from an arm, or two.',
  },
  ladder: {
    kind: 'flag',
    default: true,
    says: "The bar under the lantern for the lamplighter's ladder; a bracket has none.",
  },
  glow: {
    kind: 'number',
    default: 0,
    min: 0,
    max: 1,
    says: 'Rays scored round the lantern on whatever card is there: 0 none, 1 long ones.',
  },
} as const;

/** A street lamp. */
export const lamp = family({
  name: 'lamp',
  says: 'A street lamp on a cast post, or on a bracket where it grows from a jamb.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { mm: 32 }, height: { mm: 60 } },
  made: {
    cut: 'outline, and the panes of its lanterns',
    scored: 'rays of light where card lies behind',
    embossed: null,
  },
  parts: ['lantern'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const arms = values.arms as Arms;
  const onJamb = plot.side === 'left' || plot.side === 'right';
  const { drawing, lanterns, foot } = onJamb
    ? bracketLamp(plot, arms, plot.side === 'left' ? 1 : -1, random.branch('bracket'))
    : postLamp(plot, arms, values.ladder, random.branch('post'));
  const depth = onJamb ? FOOT_MM : plot.root;
  const parts = { lantern: lanterns.map(boxOf) };
  const growth = finished({ ...drawing, parts }, plot, { x: foot, y: depth });
  const rays = lanterns.flatMap((room) => raysOf(plot, room, values.glow, random.branch('rays')));
  return { ...growth, scores: [...growth.scores, ...onCard(rays, plot, growth.body)] };
}

const boxOf = ({ x, foot, width, height }: Room): Region =>
  rectangle(x - 0.6 * width, foot - height, 1.2 * width, height);

/** Rays from the light, short and long by turns. */
function raysOf(plot: Plot, room: Room, glow: number, random: Random): Line[] {
  if (glow === 0) return [];
  const count = RAYS[levelOf(plot)];
  const centre = { x: room.x, y: room.foot - 0.4 * room.height };
  return Array.from({ length: count }, (_, i) => {
    const luck = random.branch(i);
    const a = ((i + luck.between(-0.15, 0.15)) * 2 * Math.PI) / count;
    const long = (i % 2 ? SHORT_RAY : 1) * luck.between(0.85, 1.1) * (0.3 + 0.7 * glow);
    const at = (r: number) => ({
      x: centre.x + r * room.height * Math.cos(a),
      y: centre.y + r * room.height * Math.sin(a),
    });
    return polyline([at(RAY[0]), at(RAY[0] + (RAY[1] - RAY[0]) * long)]);
  });
}

/** The rays where they lie on the frame, clear of its edge and of the lamp itself. */
const onCard = (rays: readonly Line[], plot: Plot, lamp: Region): Line[] =>
  rays.length === 0
    ? []
    : keptClear(rays, subtract(plot.frame.card, [offset(lamp, CLEAR_MM / 2)]), CLEAR_MM);

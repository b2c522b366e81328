import { subtract, union } from '../geometry/boolean/boolean.js';
import { linesOutside, outlineLines } from '../geometry/clip-lines.js';
import { containsPoint } from '../geometry/components.js';
import { rectangle } from '../geometry/primitives.js';
import { moveLine, movePoint, moveRegion } from '../geometry/transform.js';
import type { Line, Point, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { headBanks, jambBanks } from './clouds/banks.js';
import { family, type Growth, type Plot } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import { heldAt } from './net.js';
import type { Random } from './random.js';
import { type Billow, billowOf, curl, type Heap } from './sky/billow.js';
import { skyOf } from './sky/upright.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['heaped', 'drifting'],
    default: 'heaped',
    says: 'Tall heaped clouds, or long low banks drifting one under the other.',
  },
  banks: {
    kind: 'number',
    whole: true,
    default: 3,
    min: 1,
    max: 5,
    says: 'How many banks of cloud there are; fewer where there is no room for them.',
  },
  billows: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How large their rounds are: 0 many small ones, 1 a few great ones.',
  },
  curls: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How many of the larger rounds have a curl scored in them, 0 for none.',
  },
} as const;

/** Banks of cloud from the head or a jamb. */
export const clouds = family({
  name: 'clouds',
  says: 'Banks of cloud with level bases that hang from the head or drift in from a jamb.',
  sides: ['head', 'left', 'right'],
  defaultSide: 'head',
  defaultSize: { width: { share: 0.8 }, height: { share: 0.35 } },
  made: {
    cut: 'the outline of the banks',
    scored: 'nearer banks over farther ones, and curls',
    embossed: null,
  },
  parameters,
  stance: 'turned',
  grow,
});

/** Least radius of a round in webs. */
const LEAST_ROUND = 1.1;
/** A round smaller than this has no room for a curl, mm. */
const CURLED_MM = 4.2;

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const sky = skyOf(plot);
  const luck = random.branch('banks');
  const heaps =
    plot.side === 'head'
      ? headBanks(plot, values.form, values.banks, luck)
      : jambBanks(plot, sky, values.form, values.banks, luck);
  const billows = heaps.map((heap, i) =>
    billowOf(heap, LEAST_ROUND * plot.smallestWeb, random.branch(`billow ${i}`), values.billows),
  );
  const feet = plot.side === 'head' ? headFeet(plot, heaps, values.form) : [];
  const banks = billows.map(({ region }) => region);
  const shape = moveRegion(union([...banks, ...feet]), sky.toPlot);
  const summit = movePoint({ x: summitOf(heaps[0]), y: 0.2 * heaps[0].base }, sky.toPlot);
  const heart = plot.side === 'head' ? summit : middleOf(shape);
  const { body, holes } = fitToCut(shape, plot, heart);
  const lines = billows.flatMap((billow, i) => {
    const nearer = banks.slice(i + 1);
    const own = [
      ...edgeOver(billow, banks.slice(0, i)),
      ...curlsOf(billow, values.curls, random.branch(`curls ${i}`)),
    ];
    return nearer.length > 0 ? linesOutside(own, union(nearer)) : own;
  });
  const card = subtract(body, [holes]);
  const scores = keptClear(
    lines.map((line) => moveLine(line, sky.toPlot)),
    card,
    CLEAR_MM,
  );
  return { body, holes, scores, reliefs: [] };
}

/** What carries each bank into the head: a part of its summit, as deep as its shoulders. */
function headFeet(plot: Plot, heaps: readonly Heap[], form: string): Region[] {
  const rooted = form === 'heaped' ? heaps : heaps.slice(0, 1);
  return rooted.map((heap) => {
    const broad = Math.max(2 * plot.smallestWeb, 0.3 * (heap.right - heap.left));
    return rectangle(summitOf(heap) - broad / 2, -plot.root, broad, plot.root + 0.4 * heap.base);
  });
}

/** Where banks on a jamb are card: over the middle of their foot, or where they are broadest there. */
function middleOf(shape: Region): Point {
  const middle = { x: 0, y: -0.5 };
  return containsPoint(shape, middle) ? middle : heldAt(shape);
}

const summitOf = ({ left, right, summit = 0.5 }: Heap): number => left + summit * (right - left);

/** A bank's outline where it lies before farther ones. */
const edgeOver = ({ region }: Billow, farther: readonly Region[]): Line[] =>
  farther.length > 0 ? keptClear(outlineLines(region), union(farther), 0.3) : [];

function curlsOf({ lobes }: Billow, share: number, random: Random): Line[] {
  return lobes.flatMap((lobe, i) => {
    const luck = random.branch(i);
    if (lobe.radius < CURLED_MM || !luck.chance(share)) return [];
    const hand = luck.chance(0.5) ? 1 : -1;
    return [curl(lobe, hand > 0 ? 190 : -10, hand * luck.between(190, 270))];
  });
}

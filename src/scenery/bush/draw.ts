import { subtract, union } from '../../geometry/boolean/boolean.js';
import { pen } from '../../geometry/pen.js';
import type { Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { sizeOf } from '../tree/crown-frame.js';
import { cutSafe } from '../tree/finish.js';
import { edgeLeaves } from '../tree/foliage.js';
import { opennessFor, shown } from '../tree/layers.js';
import { leafForm } from '../tree/leafy.js';
import { scoresOn, sprigsOn } from '../tree/scores.js';
import { tuftLayer } from '../tree/tufts.js';
import { fruitOn } from './fruit.js';
import type { BushValues } from './parameters.js';
import type { BushPlan } from './plan.js';

/** From a closed head to gaps as wide as half a lobe. */
const OPENNESS: readonly [number, number] = [0, 0.7];

export function drawBush(plan: BushPlan, plot: Plot, values: BushValues, random: Random): Growth {
  const size = sizeOf(plot);
  const layers = plan.tufts.map(tuftLayer);
  const stems = {
    contours: plan.stems.map(({ points, thickness }) =>
      limb(points.map((p, i) => ({ ...p, thickness: thickness * (i === 0 ? 1.15 : 1) }))),
    ),
  };
  const openness = opennessFor(layers, stems, size, values.light, OPENNESS);
  const mass = shown(layers, values.light > 0 ? openness : 0);
  const form = leafForm(plot, { length: 0.1, width: 0.06, widest: 0.45 });
  const leaves = edgeLeaves(mass, layers, openness, form, plot.smallestHole);
  const bank = bankOf(plan.bank, plot, random.branch('bank'));
  const drawn = union([mass, leaves, stems, bank]);
  const { body, holes } = cutSafe(drawn, plot, { x: 0, y: plot.root });
  const card = subtract(body, [holes]);
  const fruit = fruitOn(card, plot, values, random.branch('fruit'));
  const sprigs = values.fruit === 'none' ? sprigsOn(plan.twigs, random.branch('sprigs')) : [];
  const foot = union([stems, bank]);
  const crown = subtract(card, [foot]);
  return {
    body,
    holes,
    scores: [...scoresOn(body, holes, [], sprigs), ...fruit.scores],
    reliefs: fruit.reliefs,
    parts: { crown, stems: subtract(card, [crown]), fruit: fruit.region },
  };
}

/** Height of the ground that stems stand on, as a share of the plot's and in smallest webs. */
const BANK = { share: 0.035, webs: 0.8 };
/** How far a bush on a jamb is carried from below, as a share of its height. */
const CORBEL = 0.45;

/** The ground under the stems, thinning out to both sides; on a jamb carried from below. */
function bankOf(half: number, plot: Plot, random: Random): Region {
  const high = Math.max(BANK.share * plot.height, BANK.webs * plot.smallestWeb);
  const crest = (share: number) => ({ x: share * half, y: -high * random.between(0.75, 1.15) });
  const top = [crest(-0.7), crest(-0.1), crest(0.55)];
  const p = pen(-1.15 * half, 0).smoothTo([...top, { x: 1.15 * half, y: 0 }]);
  const root = plot.side === 'sill' ? plot.root : Math.min(plot.root, CORBEL * plot.height);
  if (plot.side === 'left') p.curveTo(0.9 * half, 0.4 * root, 0.3 * half, root, 0, root);
  else p.lineTo(1.15 * half, root);
  if (plot.side === 'right') {
    p.lineTo(0, root).curveTo(-0.3 * half, root, -0.9 * half, 0.4 * root, -1.15 * half, 0);
  } else p.lineTo(-1.15 * half, root);
  return shapeOf(p.close());
}

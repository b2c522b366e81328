import { union } from '../geometry/boolean/boolean.js';
import { linesInside, linesOutside } from '../geometry/clip-lines.js';
import type { Line } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { boardOf } from './curtain/board.js';
import { drape } from './curtain/drape.js';
import { gathered, swagged } from './curtain/pelmet.js';
import { type Stage, stageOf } from './curtain/stage.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { fitInWindow, inWindow } from './window/fit.js';
import { inOpening } from './window/growth.js';
import { openingFor } from './window/opening.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['drapes', 'swags', 'proscenium'],
    default: 'swags',
    says: 'Drapes under a gathered pelmet, under swags with tassels, or behind a cut arch.',
  },
  open: {
    kind: 'number',
    default: 0.58,
    min: 0.3,
    max: 0.9,
    says: 'Share of the width that the drapes leave open under the head.',
  },
  drop: {
    kind: 'number',
    default: 0.2,
    min: 0.08,
    max: 0.4,
    says: 'How far the pelmet hangs down, as a share of the height.',
  },
  swags: {
    kind: 'number',
    default: 3,
    min: 1,
    max: 7,
    whole: true,
    says: 'How many swags hang side by side; a gathered pelmet has four gathers for each.',
  },
  folds: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How many folds are scored, 0 for few.',
  },
} as const;

/** A stage curtain in the window. */
export const curtain = family({
  name: 'curtain',
  says: 'A stage curtain: drapes tied back to both sides under a pelmet along the head.',
  sides: ['head'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: {
    cut: 'drapes, hem, fringe and tassels',
    scored: 'folds and mouldings',
    embossed: null,
  },
  parameters,
  stance: 'frame',
  grow,
});

/** The least that a swag is wide, in webs and holes: narrower ones close up. */
const LEAST_SWAG = 4.5;
/** The least drop of a pelmet with tassels, in webs. */
const LEAST_DROP = 3.4;

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const opening = openingFor(plot);
  const { window } = opening;
  const whole = stageOf(opening, plot);
  const dropMm = Math.min(
    0.45 * whole.height,
    Math.max(values.drop * whole.height, LEAST_DROP * whole.web),
  );
  const behind = values.form === 'proscenium' ? boardOf(whole, window, dropMm) : null;
  const stage: Stage = behind ? { ...whole, head: behind.soffit } : whole;
  const room = stage.width / (LEAST_SWAG * (stage.web + stage.hole));
  const count = Math.max(1, Math.min(values.swags, Math.floor(room)));

  const hang = values.form === 'drapes' ? gathered : swagged;
  const pelmetMm = behind ? 0.55 * dropMm : dropMm;
  const pelmet = hang(stage, pelmetMm, count, values.folds, random.branch('pelmet'));
  const reach = ((1 - values.open) / 2) * stage.width;
  const drapes = ([-1, 1] as const).map((side) =>
    drape(stage, side, reach, values.folds, random.branch(`drape ${side}`)),
  );

  const shapes = [
    ...(behind ? [behind.shape] : []),
    ...pelmet.shapes,
    ...drapes.flatMap((d) => d.shapes),
  ];
  const card = fitInWindow(inWindow(shapes, window), window, plot);

  // The board hangs in front of the pelmet, and the pelmet in front of the drapes.
  const cloth = union(pelmet.shapes);
  const front = behind ? [behind.shape] : [];
  const hidden = (lines: readonly Line[], by: typeof front): Line[] =>
    by.length > 0 ? linesOutside(lines, union(by)) : [...lines];
  const edges = drapes.flatMap((d) => linesInside(d.folds, window));
  const scores = [
    ...hidden(edges, [cloth, ...front]),
    ...hidden(linesInside(pelmet.folds, window), front),
    ...(behind ? linesInside(behind.mouldings, window) : []),
  ];
  return inOpening(plot, opening, card, scores);
}

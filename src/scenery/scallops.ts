import { subtract, union } from '../geometry/boolean/boolean.js';
import { outlineLines } from '../geometry/clip-lines.js';
import { EMPTY_REGION } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';
import { type Edge, echoOf } from './scallops/echo.js';
import { pointed, scalloped, teethOf, waved } from './scallops/edging.js';
import { leastLace, pierced } from './scallops/lace.js';
import { measuresOf } from './scallops/measures.js';
import { openingFor } from './window/opening.js';

const parameters = {
  edge: {
    kind: 'choice',
    options: ['scallop', 'point', 'wave', 'lace'],
    default: 'scallop',
    says: "How the window's edge runs: round scallops, points, waves or pierced lace.",
  },
  pitch: {
    kind: 'length',
    default: 8,
    min: 3,
    max: 30,
    says: 'From one scallop to the next; evened out so that whole ones fill each side.',
  },
  depth: {
    kind: 'length',
    default: 4,
    min: 1,
    max: 20,
    says: 'How far the scallops reach in from their hem; no deeper than they are wide.',
  },
  hem: {
    kind: 'length',
    default: 1,
    min: 0,
    max: 12,
    says: "Width of the plain strip between the window's own edge and the scallops.",
  },
  echo: {
    kind: 'flag',
    default: true,
    says: 'A scored line that answers the edge on the frame.',
  },
} as const;

/** The window's edge in scallops, points, waves or lace. */
export const scallops = family({
  name: 'scallops',
  says: "The window's edge all round in scallops, points, waves or pierced lace.",
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: 'the edge and the holes of lace', scored: 'a line that echoes it', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const edge = values.edge as Edge;
  const opening = openingFor(plot);
  const { window } = opening;
  const { smallestWeb: web, smallestHole: hole } = plot;
  const least = edge === 'lace' ? leastLace(web, hole) : { pitch: web + 1.6 * hole, depth: 0 };
  const measures = measuresOf(values, least, opening, plot);
  const teeth = teethOf(window, measures, random.branch('depth'));
  const draw = edge === 'point' ? pointed : edge === 'wave' ? waved : scalloped;
  const card = draw(window, teeth, measures);
  const holes = edge === 'lace' ? union(pierced(teeth, measures, plot.fineness)) : EMPTY_REGION;
  const echo = values.echo ? echoOf(edge, teeth, measures, opening.margin) : [];
  const scores = keptClear(echo, plot.frame.card, CLEAR_MM);
  if (opening.cut) return { body: card, holes, scores, reliefs: [] };
  const drawn = keptClear(outlineLines(subtract(window, [card])), plot.frame.card, CLEAR_MM);
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [...drawn, ...scores], reliefs: [] };
}

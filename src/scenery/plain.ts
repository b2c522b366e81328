import { intersect, union } from '../geometry/boolean/boolean.js';
import { outlineLines } from '../geometry/clip-lines.js';
import { offset, stroke, strokeContours } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { CLEAR_MM } from './land/ground.js';
import { type Moulding, roundWindow, withinCard } from './plain/moulding.js';
import { fans, leaves } from './plain/ornaments.js';
import type { Random } from './random.js';
import { openingFor } from './window/opening.js';

/** The first line lies this far from a cut, mm: what a score must keep clear, and a hair. */
const FIRST_MM = CLEAR_MM + 0.3;
/** A pressed line's width and least distance to the next, mm: common practice, no source. */
const PRESSED_MM = 0.9;
const PRESSED_GAP_MM = 2;
const PRESS_DEPTH_MM = 0.3;
/** Radius of a quarter round, in margins, and its bounds, mm. */
const ROUND = { share: 0.35, least: 2.5, most: 9 };

const parameters = {
  corner: {
    kind: 'choice',
    options: ['none', 'quarter-round', 'leaf'],
    default: 'quarter-round',
    says: "What stands in the card's corners.",
  },
  beside: {
    kind: 'choice',
    options: ['both', 'window', 'edge'],
    default: 'both',
    says: "Whether the lines follow the window, the card's edge or both.",
  },
  work: {
    kind: 'choice',
    options: ['score', 'raise', 'sink'],
    default: 'score',
    says: 'Lines scored, or pressed up or down.',
  },
  lines: {
    kind: 'number',
    default: 2,
    min: 1,
    max: 3,
    whole: true,
    says: 'How many lines lie side by side; fewer where the frame is too narrow.',
  },
  gap: {
    kind: 'length',
    default: 1.6,
    min: 0.8,
    max: 6,
    says: 'From one line to the next; pressed lines keep 2 mm at least.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** A plain moulded frame. */
export const plain = family({
  name: 'plain',
  says: "A plain moulded frame: lines along the window and the card's edge, with mitred corners.",
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: null, scored: 'lines, mitres and ornaments', embossed: 'the same, where asked' },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const { card, bounds } = plot.frame;
  const opening = openingFor(plot);
  const pressed = values.work !== 'score';
  const gap = pressed ? Math.max(PRESSED_GAP_MM, values.gap) : values.gap;
  const first = FIRST_MM + (pressed ? PRESSED_MM / 2 : 0);
  const groups = values.beside === 'both' ? 2 : 1;
  const room = (opening.margin - 2 * first - (groups - 1) * gap) / (groups * gap);
  const count = Math.max(1, Math.min(values.lines, 1 + Math.floor(room)));
  const distances = Array.from({ length: count }, (_, i) => first + i * gap);
  const reach = distances[count - 1];

  const round = Math.max(ROUND.least, Math.min(ROUND.most, ROUND.share * opening.margin));
  const atEdge = values.beside !== 'window';
  const incurved = atEdge && values.corner === 'quarter-round';
  const mouldings: Moulding[] = [
    ...(values.beside === 'edge' ? [] : [roundWindow(opening.window, distances)]),
    ...(atEdge ? [withinCard(bounds, distances, incurved ? round : 0)] : []),
  ];
  const from = atEdge ? reach + gap : first;
  const clear =
    (values.beside === 'edge' ? first : reach + gap / 2) + (pressed ? PRESSED_MM / 2 : 0);
  const spray =
    values.corner === 'leaf'
      ? leaves(bounds, from, offset(opening.window, clear, 'mitre'), random.branch('leaves'))
      : [];
  const arcs =
    values.corner === 'quarter-round' && !atEdge
      ? fans(
          bounds,
          first,
          distances.map((mm) => round + mm - first),
        )
      : [];

  if (!pressed) {
    const ruled = mouldings.flatMap((m) => [...m.lines.map((cubics) => ({ cubics })), ...m.mitres]);
    const leafy = spray.flatMap(({ region, rib }) => [...outlineLines(region), rib]);
    const scores = keptClear([...ruled, ...arcs, ...leafy], card, CLEAR_MM);
    return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
  }
  const within = offset(card, -CLEAR_MM);
  const side = values.work === 'raise' ? 'raised' : 'sunk';
  const reliefs = [
    ...mouldings.flatMap((m) => m.lines.map((line) => pressedRing(line))),
    ...arcs.map(pressedLine),
    ...(spray.length > 0 ? [union(spray.map((s) => s.region))] : []),
  ]
    .map((region) => intersect(region, within))
    .filter((region) => region.contours.length > 0)
    .map((region) => ({ region, side, depthMm: PRESS_DEPTH_MM }) as const);
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [], reliefs };
}

const pressedRing = (line: Line['cubics']): Region =>
  strokeContours([line], PRESSED_MM, { join: 'mitre' });

const pressedLine = (line: Line): Region => stroke([line], PRESSED_MM);

import type { Book, PanelPlan } from '../book/book.js';
import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { linesInside, linesOutside, outlineLines } from '../geometry/clip-lines.js';
import { lineLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ProcessLimits, Scene } from '../scene/scene.js';
import type { Relief } from '../scenery/family.js';
import { randomFrom } from '../scenery/random.js';
import { textureLines } from '../scenery/texture/texture.js';
import type { Drawn } from './draw.js';
import type { Panel } from './panel.js';
import { frameCard, keepBox, type Setting } from './place/place.js';
import type { Score } from './score.js';

/** The pressed half of an outline ends this near to the cut half: they read as one curve, and the
 * score still does not nick the edge. */
const MEET_MM = 0.2;
/** A pressed outline that stays within the clearance of the window's edge for longer than this many
 * clearances runs along it, and would double the cut line. */
const STEEP = 2.5;
/** Shorter scraps of score than this are not worth a tool move. */
export const SHORTEST_SCORE_MM = 1;
/** Shorter scraps of an outline, left where hinge or edge cut it off, say nothing. */
const SHORTEST_OUTLINE_MM = 3;
/** How deep an element is pressed on the frame. Common practice, no source: about one caliper. */
const PRESS_DEPTH_MM = 0.3;

/** The places of one panel in which something may be pressed. */
interface Zones {
  readonly window: Region;
  /** Card of the frame between hinges and edges, window taken off. */
  readonly frame: Region;
  /** The finished card drawn in by MEET_MM, and by the clearance. */
  readonly meeting: Region;
  readonly clear: Region;
  /** A band along the window's edge, `clearance` wide on the frame's side. */
  readonly nearWindow: Region;
}

/** Scores and reliefs of all elements on the finished card. */
export function pressElements(
  { scene, book, plan, limits }: Setting,
  card: Region,
  drawn: readonly Drawn[],
  inFront: readonly Region[],
): Pick<Panel, 'scores' | 'reliefs'> {
  if (drawn.length === 0) return { scores: [], reliefs: [] };
  const zones = zonesOf(book, plan, card, limits);
  const scores: Line[] = [];
  const reliefs: Relief[] = [];
  let behind: Region = EMPTY_REGION;
  drawn.forEach((element, i) => {
    const front = inFront[i];
    scores.push(
      ...scoredOutline(element, front, zones, limits),
      ...outlineOnBodies(element, front, behind, zones),
      ...details(element, front, zones),
    );
    const pressed = reliefsOf(element, front, zones);
    reliefs.push(...pressed.map((relief) => patterned(relief, element, scene)));
    if (i + 1 < drawn.length) behind = union([behind, element.standing]);
  });
  return {
    scores: scores
      .filter((line) => lineLength(line) >= SHORTEST_SCORE_MM)
      .map((line): Score => ({ line, kind: 'detail' })),
    reliefs,
  };
}

function zonesOf(book: Book, plan: PanelPlan, card: Region, limits: ProcessLimits): Zones {
  const window = plan.window?.outline ?? EMPTY_REGION;
  const box = keepBox(book);
  return {
    window,
    frame: frameCard(book, plan),
    meeting: intersect(offset(card, -MEET_MM), box),
    clear: intersect(offset(card, -limits.scoreClearance), box),
    nearWindow: plan.window === null ? EMPTY_REGION : offset(window, limits.scoreClearance),
  };
}

/** The drawn shape itself: its body with its holes. */
const silhouette = ({ growth }: Drawn): Region => subtract(growth.body, [growth.holes]);

/** Where on the panel an element may be pressed: on the frame above its foot, and in the window. */
const pressable = ({ aboveGround }: Drawn, zones: Zones): Region =>
  union([intersect(zones.frame, aboveGround), zones.window]);

/**
 * The part of the outline that is scored: on the frame, taken up where the cut half ends, and in
 * the window where it is not cut but other card stands there.
 */
function scoredOutline(drawn: Drawn, front: Region, zones: Zones, limits: ProcessLimits): Line[] {
  const { works } = drawn;
  const scored = union([works.score, intersect(works.cut, zones.frame)]);
  if (scored.contours.length === 0) return [];
  const place = intersect(intersect(pressable(drawn, zones), scored), zones.meeting);
  const lines = linesOutside(linesInside(outlineLines(silhouette(drawn)), place), front);
  return lines
    .flatMap((line) => withoutDoubling(line, zones.nearWindow, limits))
    .filter((line) => lineLength(line) >= SHORTEST_OUTLINE_MM);
}

/** Takes off what runs along the window's edge rather than crossing it. */
function withoutDoubling(line: Line, nearWindow: Region, limits: ProcessLimits): Line[] {
  const near = linesInside([line], nearWindow);
  const isSteep = (part: Line) => lineLength(part) <= STEEP * limits.scoreClearance;
  if (near.every(isSteep)) return [line];
  return [...linesOutside([line], nearWindow), ...near.filter(isSteep)];
}

/** Where an element stands before others in the window, its outline is drawn on them. */
function outlineOnBodies(drawn: Drawn, front: Region, behind: Region, zones: Zones): Line[] {
  if (behind.contours.length === 0) return [];
  const cut = intersect(drawn.works.cut, zones.window);
  const place = intersect(intersect(behind, cut), zones.clear);
  return linesOutside(linesInside(outlineLines(drawn.growth.body), place), front);
}

function details(drawn: Drawn, front: Region, zones: Zones): Line[] {
  const place = subtract(zones.clear, [drawn.works.none]);
  return linesOutside(linesInside(drawn.growth.scores, place), front);
}

function reliefsOf(drawn: Drawn, front: Region, zones: Zones): Relief[] {
  const { works, growth } = drawn;
  const hidden = [works.none, front];
  const own = growth.reliefs.map((relief) => ({
    ...relief,
    region: subtract(intersect(relief.region, zones.clear), hidden),
  }));
  const whole = (['raise', 'sink'] as const).map((work): Relief => {
    const place = intersect(pressable(drawn, zones), works[work]);
    const shape = place.contours.length > 0 ? intersect(silhouette(drawn), place) : EMPTY_REGION;
    return {
      region: subtract(intersect(shape, zones.meeting), [front]),
      side: work === 'raise' ? 'raised' : 'sunk',
      depthMm: PRESS_DEPTH_MM,
    };
  });
  return [...own, ...whole].filter((relief) => relief.region.contours.length > 0);
}

/** Filled with strokes of the element's pattern; too small an area is pressed plain. */
function patterned(relief: Relief, { element }: Drawn, { seed, ballMm }: Scene): Relief {
  if (element.pattern === null) return relief;
  const random = randomFrom(seed, element.id, element.seed, 'pattern');
  const strokes = textureLines(relief.region, element.pattern, ballMm, random);
  return strokes.length > 0 ? { ...relief, strokes } : relief;
}

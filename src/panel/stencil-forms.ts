import type { PanelPlan } from '../book/book.js';
import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { components } from '../geometry/components.js';
import { contourArea, regionArea } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import { stripAlong } from '../geometry/width/strip.js';
import { narrowSlots, narrowWebs } from '../geometry/width/webs.js';
import type { ProcessLimits, StencilChoice, Stock } from '../scene/scene.js';
import type { Relief } from '../scenery/family.js';
import { braceWebs } from './brace.js';

/** What a stencil and its counter plate press of one panel from one side; panel coordinates. */
export interface Stencil {
  readonly side: Relief['side'];
  /** The board of the plates. */
  readonly card: Stock;
  /** How much larger than the form the opening is, all round. */
  readonly clearanceMm: number;
  /** Shallowest first. Each form lies within the one before; none where nothing can be pressed. */
  readonly terraces: readonly Terrace[];
  /** Narrowest form that can be pressed and held in the board, and narrowest gap between two. */
  readonly leastFormMm: number;
  readonly leastGapMm: number;
  /** Forms, or parts of them, that are narrower. */
  readonly leftOut: Region;
  /** Gaps that are narrower: pressed over, as the stencil cannot hold board in them. */
  readonly filled: Region;
  /** How many areas should have been filled with a pattern, and are pressed plain. */
  readonly patterned: number;
}

/** All that is pressed at least so many layers of board deep. */
export interface Terrace {
  readonly layers: number;
  readonly depthMm: number;
  readonly form: Region;
}

/** Card bends over an edge of the form: what is narrower than this comes out as a crease.
 * Common practice, no source. */
const LEAST_FORM_CALIPERS = 2;
/** A part of board with less area than a circle this wide cannot be picked up and glued.
 * Common practice, no source. */
const LEAST_PART_MM = 3;
/** What has lost more than this share is not there any more. */
const GONE_SHARE = 0.9;
/** Mending one narrow place can leave another; what is left after this many rounds is reported. */
const ROUNDS = 4;

/** The stencils of one panel, one for each side that it is pressed to. */
export function stencilsOf(
  reliefs: readonly Relief[],
  plan: PanelPlan,
  choice: StencilChoice,
  limits: ProcessLimits,
): Stencil[] {
  return (['raised', 'sunk'] as const).flatMap((side): Stencil[] => {
    const own = reliefs.filter((relief) => relief.side === side);
    return own.length === 0 ? [] : [stencilOf(side, own, plan, choice, limits)];
  });
}

function stencilOf(
  side: Relief['side'],
  reliefs: readonly Relief[],
  plan: PanelPlan,
  { card, clearance }: StencilChoice,
  limits: ProcessLimits,
): Stencil {
  const clearanceMm = clearance * plan.card.caliperMm;
  // Board thinner than it is thick breaks away between two openings.
  const web = Math.max(limits.smallestWeb, card.caliperMm);
  const leastFormMm = Math.max(
    LEAST_FORM_CALIPERS * plan.card.caliperMm,
    web,
    limits.smallestHole - 2 * clearanceMm,
  );
  const leastGapMm = web + 2 * clearanceMm;
  const room = offset(plan.blank, -(web + clearanceMm));
  const layersOf = ({ depthMm }: Relief) => Math.max(1, Math.round(depthMm / card.caliperMm));
  const heights = [...new Set(reliefs.map(layersOf))].sort((a, b) => b - a);
  const terraces: Terrace[] = [];
  for (const layers of heights) {
    const here = reliefs.filter((relief) => layersOf(relief) === layers);
    const deeper = terraces[0]?.form ?? EMPTY_REGION;
    const asked = intersect(union([...here.map(({ region }) => region), deeper]), room);
    const wide = pressable(asked, leastFormMm);
    const form = handy(joined(wide, leastGapMm, leastFormMm, room), clearanceMm);
    const depthMm = Math.max(...here.map((relief) => relief.depthMm));
    if (form.contours.length > 0) terraces.unshift({ layers, depthMm, form });
  }
  const form = terraces[0]?.form ?? EMPTY_REGION;
  const asked = intersect(union(reliefs.map(({ region }) => region)), room);
  return {
    side,
    card,
    clearanceMm,
    terraces,
    leastFormMm,
    leastGapMm,
    leftOut: lostOf(asked, form, leastFormMm),
    filled: withoutCrumbs(components(subtract(form, [asked])), leastFormMm),
    patterned: reliefs.filter(({ strokes }) => strokes !== undefined).length,
  };
}

/** What is as wide as asked. A part that is so all over keeps its outline to the corners. */
function pressable(form: Region, leastMm: number): Region {
  const kept = components(form).map((part) => {
    const core = offset(part, -leastMm / 2);
    if (core.contours.length === 0) return EMPTY_REGION;
    return narrowWebs(part, leastMm).length === 0 ? part : offset(core, leastMm / 2);
  });
  return union(kept);
}

/** Forms nearer to each other than the gap made one, with no neck narrower than a form may be. */
function joined(forms: Region, gapMm: number, leastFormMm: number, room: Region): Region {
  let form = forms;
  for (let round = 0; round < ROUNDS; round++) {
    const closed = withoutGaps(form, gapMm, room);
    const { card } = braceWebs(closed, room, { smallestWeb: leastFormMm });
    if (card === form) break;
    form = card;
  }
  return form;
}

/** Without forms, and holes that islands of the stencil stand in, too small to be handled. */
const handy = (form: Region, clearanceMm: number): Region => ({
  contours: form.contours.filter((contour) => {
    const mm2 = contourArea(contour);
    const leastMm = mm2 > 0 ? LEAST_PART_MM : LEAST_PART_MM + 2 * clearanceMm;
    return Math.abs(mm2) >= (Math.PI / 4) * leastMm ** 2;
  }),
});

/** Where two forms all but meet in a point, closing by the gap's width still leaves one. */
function withoutGaps(form: Region, gapMm: number, room: Region): Region {
  if (narrowSlots(form, gapMm).length === 0) return form;
  const closed = offset(offset(form, gapMm / 2), -gapMm / 2);
  const left = narrowSlots(closed, gapMm).filter(({ kind }) => kind === 'neck');
  if (left.length === 0) return closed;
  const strips = left.map((slot) => stripAlong(slot, gapMm));
  return union([closed, intersect(union(strips), room)]);
}

/** Parts of which nothing is left, and stretches of others. */
function lostOf(asked: Region, form: Region, leastFormMm: number): Region {
  const parts = components(asked).map((part) => ({ part, lost: subtract(part, [form]) }));
  const isGone = ({ part, lost }: (typeof parts)[number]) =>
    regionArea(lost) > GONE_SHARE * regionArea(part);
  const gone = parts.filter(isGone).flatMap(({ lost }) => lost.contours);
  const shorter = parts.filter((p) => !isGone(p)).flatMap(({ lost }) => components(lost));
  return { contours: [...gone, ...withoutCrumbs(shorter, leastFormMm).contours] };
}

/** Without the corners that rounding takes or leaves. */
const withoutCrumbs = (parts: readonly Region[], leastFormMm: number): Region => ({
  contours: parts
    .filter((part) => regionArea(part) >= leastFormMm ** 2 / 2)
    .flatMap(({ contours }) => contours),
});

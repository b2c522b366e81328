import { intersect, union } from '../../geometry/boolean/boolean.js';
import { outlineLines } from '../../geometry/clip-lines.js';
import { chainLength, contourArea, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { pen } from '../../geometry/pen.js';
import type { Cubics, Line, Region } from '../../geometry/types.js';
import { keptClear, shapeOf } from '../brick/craft.js';
import type { Asked } from './asked.js';
import { fittedTo } from './fit.js';
import { alongContour, arched, type Guide, type SetLetter, setOn } from './guide.js';
import { type LineOfText, lineOfText } from './line-of-text.js';
import { squeezed } from './on-frame.js';
import { band, bolderMm, emboldened, standing } from './stand.js';
import { strokeOf } from './stencil.js';

/** A word of card on its bar. */
export interface Standing {
  readonly body: Region;
  /** What of the letters runs on into bar and frame, such as the tail of a g. */
  readonly scores: readonly Line[];
  /** The letters by themselves. */
  readonly letters: readonly SetLetter[];
  readonly capHeightMm: number;
}

/** The bar's height as a share of the whole, and in webs at least. */
const BAR = { share: 0.13, webs: 1.7, most: 0.4 };
/** How far letters sink into the bar, as a share of its height. */
const SINK = 0.45;
/** The bar runs on past the letters by this share of its height. */
const RUN_ON = 0.9;
/** Letters that do not meet keep so many smallest holes apart. */
const GAP_HOLES = 1.05;
/** How deep letters that meet are pushed into each other, in webs. */
const OVERLAP_WEBS = 0.6;
/** An arc rises by no more than this share of the height: the rest is for letters. */
const MOST_RISE = 0.45;
/** Scores keep this far from cuts, mm. */
const CLEAR_MM = 1.5;

/**
 * The word as card: standing on the sill on a bar, or hanging from the head under one, in capitals
 * there, since small letters would not reach it.
 */
export function inWindow(asked: Asked): Standing {
  const { font, limits, heightMm, view } = asked;
  const { smallestWeb, smallestHole } = limits;
  const text = view.onHead ? asked.text.toLocaleUpperCase('und') : asked.text;
  const barMm = Math.min(
    BAR.most * heightMm,
    Math.max(BAR.share * heightMm, BAR.webs * smallestWeb),
  );
  const outMm = barMm * (1 - SINK);
  const riseMm = asked.line === 'arc' ? Math.min(asked.riseMm, MOST_RISE * heightMm) : 0;
  const roomMm = heightMm - outMm - riseMm;
  const usual = lineOfText(font, text, { capHeightMm: roomMm, gapMm: 0 });
  const strokes = strokeOf(union(usual.letters.map((l) => l.shape))) / roomMm;
  const set = (capHeightMm: number): LineOfText =>
    lineOfText(font, text, {
      capHeightMm,
      gapMm: GAP_HOLES * smallestHole + 2 * bolderMm(strokes * capHeightMm, smallestWeb),
      overlapMm: OVERLAP_WEBS * smallestWeb,
      spacingMm: squeezed(asked, capHeightMm),
    });
  // Ascenders stand higher than capitals, accents too.
  const tallest = Math.max(1, -inkTop(usual) / roomMm);
  const { line, capHeightMm } = fittedTo(asked.lengthMm, roomMm / (view.onHead ? 1 : tallest), set);

  const bar = barOf(asked, line, { barMm, outMm, riseMm, capHeightMm });
  const letters = emboldened(setOn(line, bar.guide), smallestWeb);
  const shapes = union(letters.map((l) => l.shape));
  const body = standing(
    letters,
    { region: bar.region, toward: view.onHead ? 0 : 180 },
    smallestWeb,
  );
  const beyond = intersect(shapes, bar.beyond);
  const scores = keptClear(outlineLines(beyond), union([body, view.card]), CLEAR_MM);
  return { body, scores: keptClear(scores, bar.beyond, 0.2), letters, capHeightMm };
}

const inkTop = ({ letters }: LineOfText): number =>
  regionBounds(union(letters.map((l) => l.shape))).minY;

interface Heights {
  readonly barMm: number;
  /** From the window's edge to the letters' feet, or to their heads where they hang. */
  readonly outMm: number;
  readonly riseMm: number;
  readonly capHeightMm: number;
}

interface BarOnGuide {
  /** The letters' baseline. */
  readonly guide: Guide;
  readonly region: Region;
  /** Where letters are no longer free but lie on bar and frame. */
  readonly beyond: Region;
}

/** A bar that ends so near to a jamb (mm) runs on behind it: no slit is left there. */
const NEAR_JAMB_MM = 7;
const BEHIND_JAMB_MM = 0.4;

/** Half a bar's length, run on behind the jambs where it all but reaches one. */
function barHalf(window: Region, halfMm: number): number {
  if (window.contours.length === 0) return halfMm;
  const { minX, maxX } = regionBounds(window);
  const jambMm = [-minX, maxX].find((mm) => Math.abs(mm - halfMm) < NEAR_JAMB_MM);
  return jambMm === undefined ? halfMm : Math.max(halfMm, jambMm + BEHIND_JAMB_MM);
}

/** Far enough for any tail, mm. */
const FAR_MM = 500;

function barOf(asked: Asked, line: LineOfText, heights: Heights): BarOnGuide {
  const { view } = asked;
  const { barMm, outMm, riseMm, capHeightMm } = heights;
  const half = barHalf(view.window, line.widthMm / 2 + RUN_ON * barMm);
  const rootMm = Math.abs(view.endY);
  const edge = asked.line === 'edge' ? outerContour(view.window) : null;
  const sunk = barMm - outMm;
  const depth = view.onHead ? outMm + capHeightMm : outMm;
  const inner = edge && outerContour(offset(view.window, -depth));
  const guide = inner ? alongContour(inner, 0, !view.onHead) : null;
  const edgeGuide = guide && edge ? alongContour(edge, 0, !view.onHead) : null;
  if (guide && edgeGuide && edge && inner) {
    const along = (half * chainLength(edge)) / chainLength(inner);
    const region = view.onHead
      ? band(edgeGuide, -along, along, rootMm, barMm)
      : band(edgeGuide, -along, along, barMm, rootMm);
    return { guide, region, beyond: beyondOf(guide, half) };
  }
  const baseline = view.onHead
    ? arched(0, outMm + capHeightMm, line.widthMm, riseMm)
    : arched(0, -outMm - riseMm, line.widthMm, riseMm);
  // The bar fills all between the letters and the edge, under an arc as over one.
  const region = view.onHead
    ? mound(baseline, half, capHeightMm - sunk, view.endY)
    : mound(baseline, half, sunk, view.endY);
  return { guide: baseline, region, beyond: beyondOf(baseline, half) };

  function beyondOf(on: Guide, reach: number): Region {
    const hair = 0.04 * capHeightMm;
    return view.onHead
      ? band(on, -reach, reach, FAR_MM, -(capHeightMm + hair))
      : band(on, -reach, reach, -hair, FAR_MM);
  }
}

/** The card between a curve `upMm` over a baseline and a level far off. */
function mound(guide: Guide, half: number, upMm: number, levelY: number): Region {
  const steps = 40;
  const curve = Array.from({ length: steps + 1 }, (_, i) => {
    const { at, degrees } = guide(half * ((2 * i) / steps - 1));
    const radians = (degrees * Math.PI) / 180;
    return { x: at.x + upMm * Math.sin(radians), y: at.y - upMm * Math.cos(radians) };
  });
  const p = pen(curve[0].x, levelY).lineTo(curve[0].x, curve[0].y);
  p.smoothTo(curve.slice(1)).lineTo(curve[steps].x, levelY);
  return shapeOf(p.close());
}

const outerContour = ({ contours }: Region): Cubics | null =>
  [...contours].sort((a, b) => contourArea(b) - contourArea(a))[0] ?? null;

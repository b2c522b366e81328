import { boundsOf } from '../../geometry/measure.js';
import { regionPathData } from '../../geometry/path/path-data.js';
import type { Bounds, Line, Region } from '../../geometry/types.js';
import { lightnessOf } from '../../scene/colour.js';
import type { Stock } from '../../scene/scene.js';
import type { Relief } from '../../scenery/family.js';
import { lighter } from './colour.js';
import { blurFilter, box, grown, isEmpty, linesPath, n, overlap, PLACES } from './markup.js';

/** Width of a lit or shaded cut edge: seen, thin card would not show it at all. */
const RIM_MM = 0.17;
const GROOVE_MM = 0.24;
/** Softness of a pressed shoulder. */
const SHOULDER_MM = 0.28;
/** The deepest relief told apart; deeper ones look no stronger. */
const FULL_RELIEF_MM = 0.5;
/** Width of a slope drawn, for each millimetre of depth: true slopes are too narrow to be seen. */
const SLOPE_RUN = 1.2;
/** Slope and shoulder end within this distance of a pressed area. */
const SLOPE_REACH_MM = 3;
/** L* gained by a slope in the light and lost by one in shade. */
const SLOPE_LIGHT = 20;
/** L* gained by the top of a raised area, so that a broad one is still felt. */
const TOP_LIGHT = 1.5;

/** A card to be drawn, in its own millimetres. */
export interface DrawnCard {
  /** Unique in the picture. */
  readonly id: string;
  readonly stock: Stock;
  readonly card: Region;
  /** Pressed lines. */
  readonly grooves: readonly Line[];
  readonly reliefs: readonly Relief[];
  /** A box round the card. */
  readonly frame: Bounds;
  /** How much broader edges, grooves and slopes are drawn, for cards shown small. */
  readonly emphasis: number;
}

/** Definitions that all cards share. */
export const SHARED_DEFS =
  '<linearGradient id="fall-of-light" x1="0" y1="0" x2="1" y2="1">' +
  '<stop offset="0" stop-color="#fff" stop-opacity="0.09"/>' +
  '<stop offset="0.45" stop-color="#fff" stop-opacity="0"/>' +
  '<stop offset="0.55" stop-color="#000" stop-opacity="0"/>' +
  '<stop offset="1" stop-color="#000" stop-opacity="0.1"/></linearGradient>';

/** The shape of a card for `<use>`, and the clip that keeps what lies on it inside its edges. */
export function cardDefs({ id, card }: DrawnCard): string {
  return (
    `<path id="${id}" d="${regionPathData(card, PLACES)}"/>` +
    `<clipPath id="${id}-card"><use href="#${id}"/></clipPath>`
  );
}

/**
 * The card itself: its colour, pressed areas, grooves and cut edges; over them a fall of light and
 * `over`, such as shadows that fall on it or marks.
 */
export function cardMarkup(drawn: DrawnCard, over = ''): string {
  const { id, stock, frame } = drawn;
  return (
    `<g clip-path="url(#${id}-card)">` +
    `<rect ${box(frame)} fill="${stock.colour}"/>` +
    reliefMarkup(drawn) +
    grooveMarkup(drawn, drawn.grooves, 1) +
    patternMarkup(drawn) +
    rimMarkup(drawn) +
    `<rect ${box(frame)} fill="url(#fall-of-light)"/>` +
    over +
    '</g>'
  );
}

/** Cut edges: all of the plane but the card, moved by a rim's width, seen through the card. */
function rimMarkup({ card, stock, frame, emphasis }: DrawnCard): string {
  const { minX, minY, maxX, maxY } = grown(frame, 30);
  const outside = `M${n(minX)} ${n(minY)}H${n(maxX)}V${n(maxY)}H${n(minX)}Z${regionPathData(card, PLACES)}`;
  const width = RIM_MM * emphasis;
  const gain = lightnessOf(stock.colour) > 80 ? 8 : 16;
  const rim = (by: number, colour: string, opacity: number) =>
    shifted(outside, by, `fill-rule="evenodd" fill="${colour}" fill-opacity="${opacity}"`);
  return (
    rim(-width, lighter(stock.colour, -14), 0.55) + rim(width, lighter(stock.colour, gain), 0.9)
  );
}

/** Strokes of patterns: grooves where they are sunk, ridges where they are raised. */
function patternMarkup(drawn: DrawnCard): string {
  const strokes = (side: Relief['side']) =>
    drawn.reliefs
      .filter((relief) => relief.side === side)
      .flatMap((relief) => relief.strokes ?? []);
  return grooveMarkup(drawn, strokes('sunk'), 1) + grooveMarkup(drawn, strokes('raised'), -1);
}

/** Pressed lines: the near wall of each in shade, its far wall in light; ridges the other way. */
function grooveMarkup(
  { stock, emphasis }: DrawnCard,
  lines: readonly Line[],
  sign: 1 | -1,
): string {
  if (lines.length === 0) return '';
  const d = linesPath(lines);
  const width = GROOVE_MM * emphasis;
  const wall = (by: number, colour: string) =>
    shifted(
      d,
      by,
      `fill="none" stroke="${colour}" stroke-width="${n(width)}" stroke-opacity="0.7" ` +
        'stroke-linecap="round" stroke-linejoin="round"',
    );
  return (
    wall(sign * width * 0.35, lighter(stock.colour, 16)) +
    wall(sign * -width * 0.3, lighter(stock.colour, -20))
  );
}

/**
 * Pressed areas on the bare card: a soft light edge toward the light and a dark one away from it
 * (the other way round where the area is sunk), then the area itself over both.
 */
function reliefMarkup({ id, stock, reliefs: all, frame, emphasis }: DrawnCard): string {
  const reliefs = all.filter(({ strokes }) => strokes === undefined);
  const pressed = boundsOf(reliefs.flatMap(({ region }) => region.contours));
  const seen = overlap(grown(pressed, SLOPE_REACH_MM), frame);
  if (isEmpty(seen)) return '';
  const light = lighter(stock.colour, SLOPE_LIGHT);
  const dark = lighter(stock.colour, -SLOPE_LIGHT);
  let slopes = '';
  let tops = '';
  for (const { d, side, depthMm } of alikeReliefs(reliefs)) {
    const width = SLOPE_RUN * Math.min(depthMm, FULL_RELIEF_MM) * emphasis;
    const [upper, lower] = side === 'raised' ? [light, dark] : [dark, light];
    slopes += shifted(d, -width, `fill="${upper}"`) + shifted(d, width, `fill="${lower}"`);
    const top = lighter(stock.colour, side === 'raised' ? TOP_LIGHT : -TOP_LIGHT);
    tops += `<path d="${d}" fill="${top}"/>`;
  }
  return (
    blurFilter(`${id}-press`, seen, SHOULDER_MM * emphasis) +
    `<g filter="url(#${id}-press)">${slopes}</g>${tops}`
  );
}

/** All reliefs of one side and depth as one path, in the order of their first. */
function alikeReliefs(reliefs: readonly Relief[]): (Omit<Relief, 'region'> & { d: string })[] {
  const alike = new Map<string, Omit<Relief, 'region'> & { d: string }>();
  for (const { region, side, depthMm } of reliefs) {
    const key = `${side} ${depthMm}`;
    const d = (alike.get(key)?.d ?? '') + regionPathData(region, PLACES);
    alike.set(key, { side, depthMm, d });
  }
  return [...alike.values()];
}

/** A path moved right and down, or left and up: along the light. */
const shifted = (d: string, by: number, paint: string): string =>
  `<path d="${d}" transform="translate(${n(by)} ${n(by)})" ${paint}/>`;

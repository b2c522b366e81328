import { type Checked, unionChecked } from '../boolean/boolean.js';
import { linesInside } from '../clip-lines.js';
import type { Line, Region } from '../types.js';
import type { Chains } from './basic-shapes.js';
import { classesOf } from './cascade.js';
import { Clips } from './clip.js';
import type { Drawing } from './drawing.js';
import type { Element } from './element.js';
import { filled } from './fill.js';
import { warnOfOpacity } from './losses.js';
import type { Place } from './place.js';
import { centreLines, type Stroke, strokeOf, strokeRegion, strokeWidthMm } from './stroke.js';
import { colourOf, opacityOf, type Style } from './style.js';

/** One painted element of a drawing, in millimetres of its page, y down. */
export interface ImportedShape {
  readonly id: string | null;
  readonly classes: readonly string[];
  /** Ids of the elements round it, outermost first. */
  readonly groups: readonly string[];
  /** The colour that fills it as "#rrggbb", null where nothing does; likewise the stroke's. */
  readonly fill: string | null;
  readonly stroke: string | null;
  /** 0 without a stroke; the mean of its widths where a transform stretches it unevenly. */
  readonly strokeWidthMm: number;
  /** What is filled, and with outlined strokes what the stroke covers too. */
  readonly region: Region;
  /** With strokes as lines: their centre lines; closed ones end where they start. */
  readonly lines: readonly Line[];
}

/** Elements that bear markers. */
const MARKED = new Set(['path', 'line', 'polyline', 'polygon']);

/** Collects what is painted, in drawing order. */
export class Painter {
  readonly shapes: ImportedShape[] = [];
  exact = true;
  private readonly clips: Clips;

  constructor(
    private readonly drawing: Drawing,
    private readonly strokes: 'outlines' | 'lines',
  ) {
    this.clips = new Clips(drawing);
  }

  readonly paint = (element: Element, chains: Chains, place: Place): void => {
    const { style } = place;
    if (place.isClear || style.visibility !== 'visible') return;
    this.warnOfMarkers(element, style);
    const fill = element.name === 'line' ? null : this.colour(element, style, 'fill');
    const colour = this.colour(element, style, 'stroke');
    const stroke = colour === null ? null : strokeOf(this.drawing, element, chains, place);
    const covered: Checked[] = [];
    const { budget } = this.drawing;
    if (fill !== null) covered.push(filled(budget, element, chains, place.matrix, ruleOf(style)));
    if (stroke !== null && this.strokes === 'outlines') covered.push(strokeRegion(budget, stroke));
    const region = this.seenOf(element, covered, place);
    const lines = stroke !== null && this.strokes === 'lines' ? this.linesOf(stroke, place) : [];
    if (region.contours.length === 0 && lines.length === 0) return;
    this.shapes.push({
      id: element.attributes.get('id') ?? null,
      classes: classesOf(element),
      groups: place.groups,
      fill,
      stroke: stroke === null ? null : colour,
      strokeWidthMm: stroke === null ? 0 : strokeWidthMm(stroke),
      region,
      lines,
    });
  };

  /** All that an element covers, without what is clipped away. */
  private seenOf(element: Element, covered: readonly Checked[], { clip }: Place): Region {
    const { region, exact } = unionChecked(covered.map((part) => part.region));
    const whole = { region, exact: exact && covered.every((part) => part.exact) };
    const seen = this.clips.clipped(element, whole, clip);
    this.exact &&= seen.exact;
    return seen.region;
  }

  private linesOf(stroke: Stroke, { clip }: Place): Line[] {
    if (stroke.dots.length > 0) this.drawing.warnings.add('dot', stroke.element, DOT);
    const lines = centreLines(stroke);
    return clip === null ? lines : linesInside(lines, this.clips.seen(stroke.element, clip).region);
  }

  private colour(element: Element, style: Style, use: 'fill' | 'stroke'): string | null {
    const opacity = opacityOf(element, style[`${use}-opacity`]);
    if (opacity === 0) return null;
    const { document, warnings } = this.drawing;
    const colour = colourOf(element, style, use, document, warnings);
    if (colour !== null) warnOfOpacity(element, opacity, warnings);
    return colour;
  }

  private warnOfMarkers(element: Element, style: Style): void {
    const marks = [style['marker-start'], style['marker-mid'], style['marker-end']];
    if (!MARKED.has(element.name) || marks.every((mark) => mark === 'none')) return;
    this.drawing.warnings.add('marker', element, MARKER);
  }
}

const MARKER = 'markers, such as arrowheads, are left out. Convert them to paths.';
const DOT =
  'a dot, that is a stroke of no length, has no centre line and is left out. Draw a small circle, ' +
  'or ask for strokes as outlines.';

const ruleOf = (style: Style): 'nonzero' | 'even-odd' =>
  style['fill-rule'] === 'evenodd' ? 'even-odd' : 'nonzero';

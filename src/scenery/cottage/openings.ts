import { subtract } from '../../geometry/boolean/boolean.js';
import { pen } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { drawVoussoirs, radiatingJoints } from '../brick/arch.js';
import { handCut, handDrawn, mix, rounded, shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import { type Built, NOTHING, type Scale } from './plan.js';

/** A segmental head rises by this share of the opening's width. */
const HEAD_RISE = 0.13;
/** Depth of the brick arch over a window, mm at full size, and the width of its bricks. */
const HEAD_MM = 1.3;
const HEAD_BRICK_MM = 1.5;
/** Lines keep this far behind the cut edge, mm, where a house asks for nothing else. */
const SHY_MM = 1.3;
const CORNER_MM = 0.3;
const PIER_MM = 0.6;
/** A pane is at least this many smallest holes wide, as the hand wanders. */
const PANE = 1.12;
const WANDER_MM = 0.15;

/** Where an opening stands: its middle, its sill, its size, and the wall it must keep to, mm. */
export interface Place {
  readonly x: number;
  readonly sill: number;
  readonly width: number;
  readonly height: number;
  readonly wall: { readonly x0: number; readonly x1: number };
}

/** A window cut through, with glazing bars as far as panes and bars can be cut. */
export function windowOf(house: Scale, place: Place, random: Random): Built {
  const { size, bar, plot, shy = SHY_MM } = house;
  const { x, sill, height } = place;
  // The pier beside it is never narrower than a glazing bar, the hand's wander allowed for.
  const pier = bar + PIER_MM;
  const room = 2 * Math.min(x - place.wall.x0 - pier, place.wall.x1 - pier - x);
  const width = Math.min(place.width, room);
  if (Math.min(width, height) < plot.smallestHole * 1.1) return NOTHING;
  // A transom alone makes a letterbox: without an upright bar the window stays one light.
  const barred = panesFit(width, bar, plot.smallestHole);
  const [left, right] = [x - width / 2, x + width / 2];
  const light = shapeOf(arched(left, right, sill, height));
  const bars: Region[] = [];
  if (barred) {
    const play = Math.min(0.15, (width - bar) / 2 - plot.smallestHole * PANE);
    const at = x + random.between(-play, play);
    bars.push(
      barOf(at - bar / 2, sill - height - 1, at + bar / 2, sill + 1, random.branch('upright')),
    );
  }
  if (barred && panesFit(height, bar, plot.smallestHole)) {
    // The upper panes are a little the higher.
    const tall = height - bar;
    const lower = Math.max(plot.smallestHole * PANE, tall * random.between(0.42, 0.5));
    const at = sill - lower - bar;
    bars.push(barOf(left - 1, at, right + 1, at + bar, random.branch('level')));
  }
  const holes = rounded(bars.length > 0 ? subtract(light, bars) : light, CORNER_MM);
  const ledge = 0.9 * size;
  const lines: Line[] = [
    handDrawn(
      [
        { x: left - ledge, y: sill + shy },
        { x: right + ledge, y: sill + shy },
      ],
      WANDER_MM,
      random.branch('ledge'),
    ),
    ...headLines(house, { ...place, width }, random.branch('head')),
  ];
  const anchors = [left, right].map((ax) => ({
    x0: ax,
    y0: sill - height,
    x1: ax,
    y1: sill,
    reach: 3 * size,
    pull: 0.45,
  }));
  const above = shy + HEAD_MM * size;
  const bare = [
    rectangle(left - ledge, sill - height - above, width + 2 * ledge, height + above + shy),
  ];
  return { solids: [], holes: [holes], lines, anchors, bare };
}

/** Whether two panes and the bar between them can be cut. */
const panesFit = (room: number, bar: number, smallest: number): boolean =>
  (room - bar) / 2 >= smallest * PANE;

const barOf = (x0: number, y0: number, x1: number, y1: number, random: Random): Region =>
  handCut(
    [
      { x: x0, y: y0 },
      { x: x1, y: y0 },
      { x: x1, y: y1 },
      { x: x0, y: y1 },
    ],
    WANDER_MM / 2,
    random,
  );

/** A rectangle with a segmental head, from its sill up. */
function arched(left: number, right: number, sill: number, height: number) {
  const rise = HEAD_RISE * (right - left);
  return pen(left, sill)
    .lineTo(left, sill - height + rise)
    .quadTo((left + right) / 2, sill - height - rise, right, sill - height + rise)
    .lineTo(right, sill)
    .close();
}

function headLines(house: Scale, place: Place, random: Random): Line[] {
  const { x, sill, width, height } = place;
  const { shy = SHY_MM } = house;
  const rise = HEAD_RISE * width;
  const soffit = Array.from({ length: 13 }, (_, i) => {
    const t = i / 12;
    const y = sill - height + rise - 4 * rise * t * (1 - t);
    return { x: x - width / 2 + width * t, y: Math.min(y, sill - height + rise) };
  });
  const joints = radiatingJoints(soffit, shy + HEAD_MM * house.size, HEAD_BRICK_MM * house.size);
  const all = new Set(joints.slice(1).keys());
  return drawVoussoirs(joints, all, shy, random);
}

/** A planked door with a light over it, a step, and a little hood on brackets. */
export function doorOf(house: Scale, x: number, random: Random): Built {
  const { size } = house;
  const width = 4.6 * size;
  const height = 9 * size;
  const [left, right, top] = [x - width / 2, x + width / 2, -height];
  const lines: Line[] = [
    handDrawn(
      [
        { x: left, y: 0 },
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: 0 },
      ],
      WANDER_MM,
      random.branch('frame'),
    ),
  ];
  const planks = Math.max(2, Math.round(width / 1.5));
  for (let i = 1; i < planks; i++) {
    const px = mix(left, right, i / planks);
    const from = top + 0.6 + random.between(0, 0.5);
    lines.push(
      handDrawn(
        [
          { x: px, y: from },
          { x: px, y: -random.between(0.4, 1.4) },
        ],
        WANDER_MM,
        random.branch(i),
      ),
    );
  }
  const hood = hoodLines(x, top, width, size, random.branch('hood'));
  const light = fanlight(house, x, top - 1.5 * size, width);
  const anchors = [left, right].map((ax) => ({
    x0: ax,
    y0: top,
    x1: ax,
    y1: 0,
    reach: 3 * size,
    pull: 0.3,
  }));
  const bare = [rectangle(left - 0.4, top - 4.4 * size, width + 0.8, height + 4.4 * size)];
  return {
    solids: [],
    holes: light,
    lines: light.length > 0 ? lines : [...lines, ...hood],
    anchors,
    bare,
  };
}

/** A half-round light over the door, where it can be cut. */
function fanlight(house: Scale, x: number, sill: number, width: number): Region[] {
  const r = width / 2;
  if (r * 0.9 < house.plot.smallestHole) return [];
  return [
    rounded(
      shapeOf(
        pen(x - r, sill)
          .arcAround(x, sill, 180)
          .close(),
      ),
      CORNER_MM,
    ),
  ];
}

function hoodLines(x: number, top: number, width: number, size: number, random: Random): Line[] {
  const half = width / 2 + 1.3 * size;
  const low = top - 1.2 * size;
  const high = low - 2.6 * size;
  return [
    handDrawn(
      [
        { x: x - half, y: low },
        { x, y: high },
        { x: x + half, y: low },
        { x: x - half, y: low },
      ],
      WANDER_MM,
      random,
    ),
  ];
}

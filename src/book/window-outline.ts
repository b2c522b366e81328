import { pen, regionOf } from '../geometry/pen.js';
import { ellipse, rectangle, roundedRectangle } from '../geometry/primitives.js';
import type { Region } from '../geometry/types.js';
import type { WindowForm, WindowShape } from '../scene/scene.js';

/** Least height of a window of this shape, as a share of its width: the arch alone. */
export function leastHeightShare(shape: WindowShape): number {
  if (shape === 'arch') return 0.5;
  if (shape === 'pointed') return Math.sqrt(3) / 2;
  return 0;
}

/** A window's outline from its box, mm, clockwise. Circle and ellipse fill the box. */
export function windowOutline(
  form: WindowForm,
  x: number,
  y: number,
  width: number,
  height: number,
): Region {
  switch (form.shape) {
    case 'rectangle':
      return rectangle(x, y, width, height);
    case 'rounded':
      return roundedRectangle(x, y, width, height, form.radius);
    case 'circle':
    case 'ellipse':
      return ellipse(x + width / 2, y + height / 2, width / 2, height / 2);
    case 'arch':
      return roundArch(x, y, width, height);
    case 'pointed':
      return pointedArch(x, y, width, height);
  }
}

/** Straight jambs under a semicircle on the whole width. */
function roundArch(x: number, y: number, width: number, height: number): Region {
  const r = width / 2;
  return regionOf(
    pen(x, y + r)
      .arcAround(x + r, y + r, 180)
      .lineTo(x + width, y + height)
      .lineTo(x, y + height)
      .close(),
  );
}

/** Straight jambs under an equilateral arch: each side is struck from the other springing. */
function pointedArch(x: number, y: number, width: number, height: number): Region {
  const springing = y + (Math.sqrt(3) / 2) * width;
  return regionOf(
    pen(x, springing)
      .arcAround(x + width, springing, 60)
      .arcAround(x, springing, 60)
      .lineTo(x + width, y + height)
      .lineTo(x, y + height)
      .close(),
  );
}

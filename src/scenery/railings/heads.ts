import { circle, ellipse, rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { shape, shapeOf } from '../brick/craft.js';
import { leaf } from '../leaf.js';

export const HEADS = ['spear', 'ball', 'lily'] as const;
export type Head = (typeof HEADS)[number];

/** Width and height of a head, mm. */
export interface HeadSize {
  readonly width: number;
  readonly height: number;
}

/** Height of a head in widths. */
const TALL: Record<Head, number> = { spear: 2.1, ball: 1.35, lily: 1.45 };
/** Width of a head in bar widths, and as a share of the fence's height. */
const WIDE: Record<Head, number> = { spear: 1.95, ball: 1.7, lily: 2.5 };
const SHARE: Record<Head, number> = { spear: 0.062, ball: 0.06, lily: 0.1 };

export function headSizeOf(head: Head, bar: number, height: number): HeadSize {
  const width = Math.max(WIDE[head] * bar, SHARE[head] * height);
  return { width, height: TALL[head] * width };
}

/** A head standing on a bar that ends at (x, y). */
export function headOn(head: Head, x: number, y: number, size: HeadSize, bar: number): Region[] {
  const { width, height } = size;
  const collar = rectangle(x - bar * 0.72, y - bar * 0.25, bar * 1.44, bar * 0.75);
  switch (head) {
    case 'spear':
      return [collar, blade(x, y + bar * 0.3, width, height + bar * 0.3, 0.27)];
    case 'ball':
      return [
        collar,
        shape([
          { x: x - bar / 2, y: y + 1 },
          { x: x - bar / 2, y: y - height * 0.5 },
          { x: x + bar / 2, y: y - height * 0.5 },
          { x: x + bar / 2, y: y + 1 },
        ]),
        circle(x, y - height + width / 2, width / 2),
      ];
    case 'lily': {
      const petal = [-1, 1].map((hand) =>
        ellipse(x + hand * width * 0.3, y - height * 0.36, width * 0.2, width * 0.25),
      );
      return [collar, blade(x, y + bar * 0.3, width * 0.56, height + bar * 0.3, 0.55), ...petal];
    }
  }
}

const blade = (x: number, y: number, width: number, height: number, widest: number): Region =>
  shapeOf(
    leaf({ length: height, width, widest, tipRadius: Math.max(0.5, width * 0.14) }, { x, y }, -90),
  );

import { describe, expect, it } from 'vitest';
import { perspectiveOf, planeAt, project, scaleAt } from '../../src/book/perspective.js';
import { movePoint } from '../../src/geometry/transform.js';
import { spineFaces } from '../../src/output/picture/spine-faces.js';
import { emptyBook } from '../output/picture-book.js';

const onAxis = (distanceMm: number) => ({ eyeX: 0, eyeY: 0, distanceMm });

describe('perspective', () => {
  // Similar triangles: through an opening w at the front one sees W = w (D + z) / D at depth z.
  it.each([
    [400, 100, 20, 105],
    [400, 100, 60, 115],
    [300, 100, 90, 130],
  ])('at %d mm an opening of %d mm just shows, %d mm behind it, a width of %d', (d, w, z, seen) => {
    const left = project(onAxis(d), { x: -seen / 2, y: 7 }, z);
    const right = project(onAxis(d), { x: seen / 2, y: 7 }, z);
    expect(left.x).toBeCloseTo(-w / 2, 9);
    expect(right.x).toBeCloseTo(w / 2, 9);
  });

  // Similar triangles, window at depth z1 and plane at z2: W = w (D + z2) / (D + z1).
  it.each([
    [400, 80, 20, 60, 87.619],
    [500, 60, 40, 100, 66.6667],
  ])('at %d mm a window of %d mm at %d shows at %d a width of %d', (d, w, z1, z2, seen) => {
    const ratio = scaleAt(onAxis(d), z1) / scaleAt(onAxis(d), z2);
    expect(w * ratio).toBeCloseTo(seen, 3);
  });

  // Eye e to the side: x2 = e + (x1 - e)(D + z2) / (D + z1); both points lie on one ray.
  it.each([
    [-40, -53.3333],
    [40, 34.2857],
  ])('an eye 100 mm to the side sees %d at depth 20 and %d at depth 60 as one point', (x1, x2) => {
    const view = { eyeX: 100, eyeY: 0, distanceMm: 400 };
    const near = project(view, { x: x1, y: 0 }, 20);
    const far = project(view, { x: x2, y: 0 }, 60);
    expect(near.x).toBeCloseTo(far.x, 4);
  });

  it('leaves the front panel at true size and the axis in place', () => {
    const view = { eyeX: 75, eyeY: 90, distanceMm: 400 };
    expect(project(view, { x: 12, y: 34 }, 0)).toEqual({ x: 12, y: 34 });
    expect(project(view, { x: 75, y: 90 }, 123)).toEqual({ x: 75, y: 90 });
  });

  it('moves a whole panel as it moves its points', () => {
    const view = { eyeX: 75, eyeY: 90, distanceMm: 400 };
    const p = { x: 21, y: 170 };
    const moved = movePoint(p, planeAt(view, 84));
    const seen = project(view, p, 84);
    expect(moved.x).toBeCloseTo(seen.x, 9);
    expect(moved.y).toBeCloseTo(seen.y, 9);
  });

  it('looks through the middle of the front window from reading distance', () => {
    expect(perspectiveOf(emptyBook().book)).toEqual({ eyeX: 75, eyeY: 90, distanceMm: 400 });
  });
});

describe('spine faces', () => {
  const { book } = emptyBook();
  const view = perspectiveOf(book);
  const faces = spineFaces(book, view);
  const left = faces.filter(({ side }) => side === 'left');

  it('has every face of both strips, the nearest drawn last', () => {
    expect(faces).toHaveLength(2 * book.spine.faces);
    expect(left[left.length - 1].corners[0]).toEqual({ x: 15, y: 0 });
  });

  // Zigzag of faces of pitch p at angle a, by the right triangle in half a cell: half a cell is
  // p sin(a/2) deep and p cos(a/2) wide; 10.6066 mm both for p = 15 at 90 degrees.
  it('puts outer folds out by the reach, half a cell back', () => {
    const s = 400 / 410.6066;
    const outer = left[left.length - 1].corners[3];
    expect(outer.x).toBeCloseTo(75 - (60 + 10.6066) * s, 3);
    expect(outer.y).toBeCloseTo(90 - 90 * s, 3);
  });

  it('puts inner folds at the hinges of each panel', () => {
    const s = 400 / 421.2132;
    expect(left[left.length - 2].corners[2].x).toBeCloseTo(75 - 60 * s, 3);
    expect(left[left.length - 2].corners[2].y).toBeCloseTo(90 + 100 * s, 3);
  });

  it('mirrors left and right, and shades the side away from the light', () => {
    const right = faces.filter(({ side }) => side === 'right');
    right.forEach((face, i) => {
      face.corners.forEach((corner, k) => {
        expect(corner.x + left[i].corners[k].x).toBeCloseTo(150, 9);
      });
    });
    const [front, shade] = [left[left.length - 1], right[right.length - 1]];
    expect(front.brightness).toBeGreaterThan(shade.brightness + 0.1);
  });
});

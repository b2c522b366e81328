import { describe, expect, it } from 'vitest';
import { contourArea, flatten } from '../../src/geometry/measure.js';
import type { Cubics } from '../../src/geometry/types.js';
import {
  isPressedFrom,
  moveLayers,
  OPERATIONS,
  pieceLayers,
  turnedOver,
} from '../../src/process/layers.js';
import { bridge, gate, plainPiece, sky, spine } from './lock-pieces.js';

/** Even-odd test of a point against a contour's chords. */
function holds(contour: Cubics, x: number, y: number): boolean {
  const points = flatten(contour, 0.01);
  let inside = false;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a.y > y === b.y > y) continue;
    if (x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

describe('pieceLayers', () => {
  it('scores mountains from the front and valleys from the back', () => {
    // A rule belongs on the outside of its fold: reference page "Paperboard creasing and folding".
    const strip = spine('spine-left', 8);
    const front = pieceLayers(strip, ['front']);
    const back = pieceLayers(strip, ['back']);
    expect(front.fold.map((m) => m.kind)).toEqual(Array(4).fill('mountain'));
    expect(back.fold.map((m) => m.kind)).toEqual(Array(5).fill('valley'));
    expect(front.fold.map((m) => m.cubics[0])).toEqual([27, 57, 87, 117]);
  });

  it('scores all from the front when the piece says so', () => {
    const strip = { ...spine('spine-left', 8), scoring: 'front' as const };
    expect(pieceLayers(strip, ['front']).fold).toHaveLength(9);
    expect(isPressedFrom(strip, 'back')).toBe(false);
  });

  it('sinks from the front and raises from the back, every contour of a relief a closed mark', () => {
    expect(pieceLayers(bridge, ['front']).emboss).toMatchObject([
      { closed: true, relief: { side: 'sunk', depthMm: 0.3 } },
    ]);
    expect(pieceLayers(gate, ['front']).emboss).toEqual([]);
    const ring = pieceLayers(gate, ['back']).emboss;
    expect(ring).toHaveLength(2);
    for (const mark of ring) {
      expect(mark).toMatchObject({ closed: true, relief: { side: 'raised', depthMm: 0.25 } });
    }
  });

  it('cuts on the front and outlines the card on the back', () => {
    expect(pieceLayers(gate, ['front']).cut).toHaveLength(2);
    const back = pieceLayers(gate, ['back']);
    expect(back.cut).toEqual([]);
    expect(back.guide.map((m) => m.kind)).toEqual(['outline']);
    expect(contourArea(back.guide[0].cubics)).toBeCloseTo(187 * 135, 6);
  });

  it('gives the whole piece for both faces, without the outline', () => {
    const whole = pieceLayers(sky, ['front', 'back']);
    expect(whole.fold).toHaveLength(2);
    expect(whole.emboss).toHaveLength(1);
    expect(whole.cut).toHaveLength(1);
    expect(whole.guide).toEqual([]);
  });

  it('cuts every contour before the one that holds it, and small before large', () => {
    // Order of work: folds, then inner holes, then outer contours. Common practice, no source.
    const { cut } = pieceLayers(bridge, ['front']);
    expect(cut).toHaveLength(4);
    const firstPoint = cut.map((m) => [m.cubics[0], m.cubics[1]]);
    let pairs = 0;
    for (let child = 0; child < cut.length; child++) {
      for (let parent = 0; parent < cut.length; parent++) {
        if (
          child === parent ||
          !holds(cut[parent].cubics, firstPoint[child][0], firstPoint[child][1])
        )
          continue;
        pairs++;
        expect(child).toBeLessThan(parent);
      }
    }
    // Window, hole and post in the blank, and the post in the window.
    expect(pairs).toBe(4);
    const sizes = cut.map((m) => Math.abs(contourArea(m.cubics)));
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b));
  });

  it('works emboss, folds, details and cuts in this order', () => {
    expect(OPERATIONS).toEqual(['emboss', 'fold', 'detail', 'cut', 'guide']);
    expect(Object.keys(pieceLayers(bridge, ['front']))).toEqual([...OPERATIONS]);
  });
});

describe('isPressedFrom', () => {
  it('tells the faces that are scored or embossed', () => {
    const faces = (p: typeof bridge) => [isPressedFrom(p, 'front'), isPressedFrom(p, 'back')];
    expect(faces(bridge)).toEqual([true, false]);
    expect(faces(gate)).toEqual([true, true]);
    expect(faces(sky)).toEqual([false, true]);
    expect(faces(plainPiece('post', 10, 20))).toEqual([false, false]);
  });
});

describe('turnedOver', () => {
  it('mirrors left to right, twice is once round, and outers stay clockwise', () => {
    const front = pieceLayers(gate, ['front', 'back']);
    const once = moveLayers(front, turnedOver(187));
    // The ring's middle lies 45 mm from the left edge, so 142 mm when the page is turned.
    expect(once.emboss[0].cubics[0]).toBeCloseTo(187 - 45 - 8, 9);
    expect(once.cut.map((m) => Math.sign(contourArea(m.cubics)))).toEqual(
      front.cut.map((m) => Math.sign(contourArea(m.cubics))),
    );
    const twice = moveLayers(once, turnedOver(187));
    for (const operation of OPERATIONS) {
      twice[operation].forEach((mark, i) => {
        mark.cubics.forEach((v, k) => {
          expect(v).toBeCloseTo(front[operation][i].cubics[k], 9);
        });
      });
    }
  });
});

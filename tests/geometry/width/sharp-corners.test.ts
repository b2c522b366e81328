import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { flatten } from '../../../src/geometry/measure.js';
import { pen, polygon, regionOf } from '../../../src/geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import type { Cubics, Point, Region } from '../../../src/geometry/types.js';
import { type SharpCorner, sharpCorners } from '../../../src/geometry/width/sharp-corners.js';
import { fineCircle, fineEllipse, leaf, seeded, strewnLeaves } from '../shapes.js';

const shape = (...points: [number, number][]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));
const kinds = (corners: readonly SharpCorner[]) => corners.map((c) => c.kind);

/** The region as drawn, turned four ways, and mirrored. */
const turnings = (region: Region): Region[] =>
  [0, 90, 143, 217].flatMap((degrees) => {
    const turn = inOrder(rotation(degrees), translation(70, 20));
    return [moveRegion(region, turn), moveRegion(region, inOrder(scaling(-1, 1), turn))];
  });

describe('true corners', () => {
  it('are the corners of polygons, with the angle of card', () => {
    const l = shape([0, 0], [40, 0], [40, 10], [10, 10], [10, 30], [0, 30]);
    for (const turned of turnings(l)) {
      const corners = sharpCorners(turned, 0.25);
      expect(corners).toHaveLength(6);
      expect(corners.filter((c) => c.kind === 'notch')).toHaveLength(1);
      for (const { kind, angleDeg, turnDeg, radiusMm } of corners) {
        expect(angleDeg).toBeCloseTo(kind === 'point' ? 90 : 270, 6);
        expect(turnDeg).toBeCloseTo(180 - angleDeg, 9);
        expect(radiusMm).toBe(0);
      }
    }
    expect(sharpCorners(l, 0.25)[3].at).toEqual({ x: 10, y: 10 });
  });

  // The angles of an n-gon add up to (n - 2) 180 degrees; exterior turns to 360: Euclid.
  it('have angles that add up', () => {
    const random = seeded(7);
    for (let k = 0; k < 10; k++) {
      const n = 3 + Math.floor(6 * random());
      const points: Point[] = Array.from({ length: n }, (_, j) => {
        const a = (2 * Math.PI * (j + 0.8 * random())) / n;
        const r = 5 + 10 * random();
        return { x: r * Math.cos(a), y: r * Math.sin(a) };
      });
      const corners = sharpCorners(regionOf(polygon(points)), 1);
      if (corners.length < n) continue;
      expect(corners.reduce((sum, c) => sum + c.angleDeg, 0)).toBeCloseTo((n - 2) * 180, 6);
      expect(corners.reduce((sum, c) => sum + c.turnDeg, 0)).toBeCloseTo(360, 6);
    }
  });

  it('are notches in windows', () => {
    const panel = subtract(rectangle(0, 0, 100, 140), [rectangle(12, 15, 76, 100)]);
    const corners = sharpCorners(panel, 0.25);
    expect(kinds(corners).filter((k) => k === 'point')).toHaveLength(4);
    for (const c of corners) expect(c.angleDeg).toBeCloseTo(c.kind === 'point' ? 90 : 270, 6);
  });

  it('are the two points of a leaf, at the angle between its curves', () => {
    const [first, second] = [leaf(30, 6), leaf(30, 6)]
      .flatMap((l) => sharpCorners(l, 1))
      .slice(0, 2);
    // The handles leave the stalk along (9, -6) and come to the tip along (9, 4.8).
    expect(first.angleDeg).toBeCloseTo((2 * Math.atan2(6, 9) * 180) / Math.PI, 6);
    expect(second.angleDeg).toBeCloseTo((2 * Math.atan2(4.8, 9) * 180) / Math.PI, 6);
  });

  it('are not joints of curves that are all but smooth', () => {
    expect(sharpCorners(circle(0, 0, 10), 1)).toEqual([]);
    expect(sharpCorners(roundedRectangle(0, 0, 40, 30, 3), 2.9)).toEqual([]);
    const turnOf = (degrees: number): Region =>
      shape([0, 0], [20, 0], [40, 20 * Math.tan((degrees * Math.PI) / 180)], [40, 30], [0, 30]);
    expect(sharpCorners(turnOf(4), 1)).toHaveLength(4);
    expect(sharpCorners(turnOf(6), 1)).toHaveLength(5);
  });

  it('are found where two discs cross: the notch between them', () => {
    // Circles of radius 10 crossing at right angles: the card's angle there is 270 degrees.
    const eight = union([fineCircle(0, 0, 10), fineCircle(10 * Math.SQRT2, 0, 10)]);
    const corners = sharpCorners(eight, 1);
    expect(kinds(corners)).toEqual(['notch', 'notch']);
    for (const c of corners) {
      expect(c.angleDeg).toBeCloseTo(270, 3);
      expect(c.at.x).toBeCloseTo(5 * Math.SQRT2, 4);
      expect(Math.abs(c.at.y)).toBeCloseTo(5 * Math.SQRT2, 4);
    }
  });
});

describe('bends', () => {
  it('are the round corners tighter than asked, as one turn each', () => {
    for (const turned of turnings(roundedRectangle(0, 0, 40, 30, 0.8))) {
      expect(sharpCorners(turned, 0.75)).toEqual([]);
      const bends = sharpCorners(turned, 0.85);
      expect(kinds(bends)).toEqual(['point', 'point', 'point', 'point']);
      for (const { radiusMm, turnDeg, at } of bends) {
        expect(Math.abs(radiusMm - 0.8)).toBeLessThan(0.01);
        expect(Math.abs(turnDeg - 90)).toBeLessThan(1);
        expect(Number.isFinite(at.x + at.y)).toBe(true);
      }
    }
    const [, bend] = sharpCorners(roundedRectangle(0, 0, 40, 30, 0.8), 1);
    const off = 0.8 * (1 - Math.SQRT1_2);
    expect(Math.hypot(bend.at.x - (40 - off), bend.at.y - (30 - off))).toBeLessThan(0.05);
  });

  it('are only corners where no radius is given', () => {
    expect(sharpCorners(roundedRectangle(0, 0, 40, 30, 0.8), 0)).toEqual([]);
    expect(sharpCorners(rectangle(0, 0, 40, 30), 0)).toHaveLength(4);
  });

  // Radius of curvature of an ellipse at the end of its long axis, b^2 / a: any calculus text.
  it('have the least radius of curvature: the ends of an ellipse', () => {
    for (const turned of turnings(fineEllipse(20, 5))) {
      const ends = sharpCorners(turned, 2);
      expect(kinds(ends)).toEqual(['point', 'point']);
      for (const { radiusMm, turnDeg } of ends) {
        expect(Math.abs(radiusMm - 25 / 20)).toBeLessThan(0.0125);
        // r = b^2 / a (1 + tan^2 p (b / a)^2 ...)^(3/2): where it reaches 2 the normal has turned.
        expect(turnDeg).toBeGreaterThan(45);
        expect(turnDeg).toBeLessThan(180);
      }
    }
    expect(sharpCorners(fineEllipse(20, 5), 1.2)).toEqual([]);
  });

  it('are notches round a small hole, all the way round', () => {
    const holed = subtract(rectangle(0, 0, 20, 20), [circle(10, 10, 0.4)]);
    const round = sharpCorners(holed, 0.5).filter((c) => c.kind === 'notch');
    expect(round).toHaveLength(1);
    expect(round[0].turnDeg).toBeCloseTo(-360, 3);
    expect(Math.abs(round[0].radiusMm - 0.4)).toBeLessThan(0.004);
  });

  it('come apart where the outline turns the other way', () => {
    // A wave of half circles of radius 0.5: every crest and every hollow is a bend of its own.
    const p = pen(0, 0);
    for (let k = 0; k < 6; k++) p.arcAround(k + 0.5, 0, k % 2 === 0 ? 180 : -180);
    const wave = regionOf(p.lineTo(6, 10).lineTo(0, 10).close());
    const bends = sharpCorners(wave, 0.6).filter((c) => c.radiusMm > 0);
    expect(kinds(bends)).toEqual(['point', 'notch', 'point', 'notch', 'point', 'notch']);
    for (const b of bends) expect(Math.abs(Math.abs(b.turnDeg) - 180)).toBeLessThan(1);
  });
});

describe('what is too small to cut', () => {
  it('is looked over: a kink of micrometres in a straight edge or at a corner', () => {
    const kinked = shape(
      [0, 0],
      [20, 0],
      [20, 9.9998],
      [20.0002, 9.9999],
      [19.9999, 10],
      [20, 10.0002],
      [20, 20],
      [0.0001, 20],
      [0, 19.9999],
    );
    for (const turned of turnings(kinked)) {
      const corners = sharpCorners(turned, 0.25);
      expect(corners).toHaveLength(4);
      for (const c of corners) expect(Math.abs(c.angleDeg - 90)).toBeLessThan(0.1);
    }
  });

  it('is one bend where a curve comes as a chain of tiny edges', () => {
    const tiny = (radius: number): Region => {
      const n = Math.round((2 * Math.PI * radius) / 0.008);
      return regionOf(
        polygon(
          Array.from({ length: n }, (_, k) => ({
            x: radius * Math.cos((2 * Math.PI * k) / n),
            y: radius * Math.sin((2 * Math.PI * k) / n),
          })),
        ),
      );
    };
    expect(sharpCorners(tiny(2), 1.5)).toEqual([]);
    const [bend, ...others] = sharpCorners(tiny(2), 3);
    expect(others).toEqual([]);
    expect(bend.turnDeg).toBeCloseTo(360, 3);
    // Secants of uneven length share out the turn unevenly.
    expect(Math.abs(bend.radiusMm - 2)).toBeLessThan(0.3);
  });

  it('is nothing: no contour, an empty one, a speck', () => {
    expect(sharpCorners({ contours: [] }, 1)).toEqual([]);
    expect(sharpCorners({ contours: [new Float64Array(0)] }, 1)).toEqual([]);
    expect(sharpCorners(circle(0, 0, 0.001), 1)).toEqual([]);
  });
});

describe('cubics without a direction', () => {
  it('at a handle drawn in: the corner between the curves', () => {
    const drawnIn = regionOf(
      pen(0, 0).curveTo(0, 0, 10, -10, 20, 0).lineTo(20, 20).lineTo(0, 20).close(),
    );
    const [first] = sharpCorners(drawnIn, 0.25);
    expect(first.angleDeg).toBeCloseTo(135, 0);
  });

  it('at a cusp: a corner of no radius that turns straight back', () => {
    // x = t^2, y = t^3 has a cusp at its middle.
    const cusp = regionOf(
      pen(10, -10)
        .curveTo(-10 / 3, 10, -10 / 3, -10, 10, 10)
        .lineTo(-20, 10)
        .lineTo(-20, -10)
        .close(),
    );
    const sharp = sharpCorners(cusp, 0.25).filter((c) => Math.hypot(c.at.x, c.at.y) < 0.1);
    expect(sharp).toHaveLength(1);
    expect(sharp[0].radiusMm).toBe(0);
    expect(Math.abs(sharp[0].turnDeg)).toBeGreaterThan(150);
  });
});

describe('against dense sampling', () => {
  /** Points round a contour about every 0.01 mm. */
  function resampled(c: Cubics): Point[] {
    const out: Point[] = [];
    const points = flatten(c, 1e-4);
    for (let k = 0; k + 1 < points.length; k++) {
      const [p, q] = [points[k], points[k + 1]];
      const steps = Math.max(1, Math.round(Math.hypot(q.x - p.x, q.y - p.y) / 0.01));
      for (let j = 0; j < steps; j++) {
        out.push({ x: p.x + ((q.x - p.x) * j) / steps, y: p.y + ((q.y - p.y) * j) / steps });
      }
    }
    return out;
  }

  /** Places where the heading turns by more than 30 degrees from 0.05 mm before to 0.05 mm after. */
  function turningPlaces(c: Cubics): Point[] {
    const points = resampled(c);
    const n = points.length;
    const heading = (a: Point, b: Point): number => Math.atan2(b.y - a.y, b.x - a.x);
    return points.filter((p, k) => {
      const [before, after] = [points[(k + n - 5) % n], points[(k + 5) % n]];
      const turn = heading(p, after) - heading(before, p);
      return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > Math.PI / 6;
    });
  }

  it('finds each corner that sampled headings show, and no other', () => {
    for (const seed of [5, 6]) {
      const crown = union(strewnLeaves(60, seed));
      const corners = sharpCorners(crown, 0.25);
      const seen = crown.contours.flatMap(turningPlaces);
      const near = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 0.12;
      for (const p of seen)
        expect(
          corners.some((c) => near(c.at, p)),
          `${p.x} ${p.y}`,
        ).toBe(true);
      const clear = corners.filter((c) => Math.abs(c.turnDeg) > 40 && c.radiusMm === 0);
      expect(clear.length).toBeGreaterThan(60);
      for (const { at } of clear)
        expect(
          seen.some((p) => near(at, p)),
          `${at.x} ${at.y}`,
        ).toBe(true);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { intersect, subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { components, distanceTo } from '../../../src/geometry/components.js';
import { regionArea } from '../../../src/geometry/measure.js';
import { offset, stroke } from '../../../src/geometry/offset/offset.js';
import { polygon, regionOf, smoothContour } from '../../../src/geometry/pen.js';
import { circle, ellipse, rectangle, roundedRectangle } from '../../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import type { Region } from '../../../src/geometry/types.js';
import {
  type NarrowPlace,
  narrowestWeb,
  narrowSlots,
  narrowWebs,
  smallHoles,
} from '../../../src/geometry/width/webs.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';

const shape = (...points: [number, number][]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));
const necks = (places: readonly NarrowPlace[]) => places.filter((p) => p.kind === 'neck');
const kinds = (places: readonly NarrowPlace[]) => places.map((p) => p.kind);

/** Two plates of 10 x 10 joined by a bar, 10 long, of the width given. */
const barbell = (widthMm: number): Region =>
  union([
    rectangle(0, 0, 10, 10),
    rectangle(20, 0, 10, 10),
    rectangle(9, 5 - widthMm / 2, 12, widthMm),
  ]);

describe('necks', () => {
  it('are measured straight across and along', () => {
    const [neck, ...others] = narrowWebs(barbell(1), 1.5);
    expect(others).toEqual([]);
    expect(neck.kind).toBe('neck');
    expect(neck.widthMm).toBeCloseTo(1, 3);
    expect(neck.lengthMm).toBeCloseTo(10, 1);
    expect(neck.at.x).toBeCloseTo(15, 0);
    expect(neck.at.y).toBeCloseTo(5, 3);
  });

  it('pass when drawn just as wide as asked', () => {
    for (const width of [0.5, 1, 1.5, 3]) {
      expect(narrowWebs(barbell(width), width)).toEqual([]);
      expect(narrowWebs(barbell(width - 0.03), width)).toHaveLength(1);
    }
    const ring = subtract(circle(0, 0, 20), [circle(0, 0, 18)]);
    expect(narrowWebs(ring, 2)).toEqual([]);
    expect(narrowWebs(ring, 2.05)).toHaveLength(1);
  });

  it('are found between two sharp corners', () => {
    const waist = shape([0, 0], [10, 4.6], [20, 0], [20, 10], [10, 5.4], [0, 10]);
    const [neck, ...others] = narrowWebs(waist, 1.5);
    expect(others).toEqual([]);
    expect(neck.widthMm).toBeCloseTo(0.8, 6);
    expect(neck.at.x).toBeCloseTo(10, 6);
    expect(neck.at.y).toBeCloseTo(5, 6);
  });

  it('are not seen in kinks of the outline that no tool could follow', () => {
    const kinked = regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: 20, y: 0 },
        { x: 20, y: 9.9996 },
        { x: 20.00005, y: 9.9994 },
        { x: 20.0001, y: 10 },
        { x: 20, y: 20 },
        { x: 0, y: 20 },
      ]),
    );
    for (const width of [0.9, 1.5, 3]) expect(narrowWebs(kinked, width)).toEqual([]);
  });

  it('are found the same however far one looks', () => {
    // Two webs, of 1.2 and 1.4 mm, between blocks, and a pointed tip beside them.
    const card = union([
      rectangle(0, 0, 20, 20),
      rectangle(20, 5, 6, 1.2),
      rectangle(26, 0, 20, 20),
      rectangle(20, 12, 6, 1.4),
      regionOf(
        polygon([
          { x: 10, y: 0 },
          { x: 10.4, y: -9 },
          { x: 10.8, y: 0 },
        ]),
      ),
    ]);
    for (const upTo of [1.3, 1.5, 2, 3, 4, 5, 7, 10]) {
      expect(narrowestWeb(card, upTo)?.widthMm).toBeCloseTo(1.2, 2);
    }
    expect(narrowestWeb(card, 1.1)).toBeNull();
  });

  it('are 0 wide where corners touch in a point', () => {
    const corners = {
      contours: [...rectangle(0, 0, 10, 10).contours, ...rectangle(10, 10, 10, 10).contours],
    };
    const [neck, ...others] = narrowWebs(corners, 1.5);
    expect(others).toEqual([]);
    const at = { x: 10, y: 10 };
    expect(neck).toEqual({ kind: 'neck', at, widthMm: 0, lengthMm: 0, axis: [at] });
    // Two holes whose corners touch leave card that meets in a point too.
    const holes = subtract(rectangle(0, 0, 40, 40), [moveRegion(corners, translation(10, 10))]);
    expect(narrowestWeb(holes, 5)!.widthMm).toBe(0);
  });

  it('are not seen where the outline goes back to its own place by less than a speck', () => {
    // A stray edge of some nanometres, and a whisker a tenth of a millimetre long.
    const stray = shape([0, 0], [10, 0], [10, 5], [10, 5 + 2e-6], [10, 10], [0, 10]);
    const whisker = shape([0, 0], [10, 0], [10, 5], [10.1, 5], [10, 5], [10, 10], [0, 10]);
    expect(narrowWebs(stray, 1.5)).toEqual([]);
    expect(necks(narrowWebs(whisker, 1.5))).toEqual([]);
    // Where card meets in a point as well, the stray edge does not hide it.
    const both = {
      contours: [
        ...shape([0, 0], [10, 0], [10, 10 - 2e-6], [10, 10], [0, 10]).contours,
        ...rectangle(10, 10, 10, 10).contours,
      ],
    };
    expect(necks(narrowWebs(both, 1.5)).map((n) => n.widthMm)).toEqual([0]);
  });

  // Two discs that overlap: the waist is the chord, c = 2 r sin(t/2) = 14.142136 for r = 10 and
  // 90 degrees. CRC Standard Mathematical Tables (from memory).
  it('are found where two discs overlap', () => {
    const apart = 20 * Math.cos(Math.PI / 4);
    const eight = union([circle(0, 0, 10), circle(apart, 0, 10)]);
    const { widthMm, at } = narrowestWeb(eight, 18)!;
    expect(widthMm).toBeCloseTo(14.142136, 1);
    expect(at.x).toBeCloseTo(apart / 2, 2);
  });

  it('are found where a hole comes near the edge', () => {
    const plate = subtract(rectangle(0, 0, 40, 40), [circle(20, 10.7, 10)]);
    const [neck, ...others] = narrowWebs(plate, 1.5);
    expect(others).toEqual([]);
    expect(neck.widthMm).toBeCloseTo(0.7, 3);
    expect(neck.at.x).toBeCloseTo(20, 1);
    // Narrower than 1.5 where 10 - sqrt(100 - x^2) < 0.8, straight up: x < 3.92.
    expect(neck.lengthMm).toBeGreaterThan(7);
    expect(neck.lengthMm).toBeLessThan(8.5);
  });

  it('are found where a notch points at an edge', () => {
    const plate = subtract(rectangle(0, 0, 20, 10), [shape([10, 0.8], [14, 11], [6, 11])]);
    expect(kinds(narrowWebs(plate, 1.5))).toEqual(['neck']);
    expect(narrowestWeb(plate, 6)!.widthMm).toBeCloseTo(0.8, 6);
  });

  it('are found in a ring off its centre, R - r - e wide', () => {
    const ring = subtract(circle(0, 0, 10), [circle(0.4, 0, 9)]);
    const { widthMm, at } = narrowestWeb(ring, 6)!;
    expect(widthMm).toBeCloseTo(0.6, 2);
    expect(at.x).toBeGreaterThan(9);
  });

  it('are told one by one where three arms meet', () => {
    const arm = (degrees: number) =>
      moveRegion(union([rectangle(-0.5, 0, 1, 12), circle(0, 12, 3)]), rotation(degrees));
    const star = union([arm(0), arm(120), arm(240)]);
    const places = narrowWebs(star, 1.5);
    expect(kinds(places)).toEqual(['neck', 'neck', 'neck']);
    for (const place of places) expect(place.widthMm).toBeCloseTo(1, 2);
  });

  it('hold a leaf by its stalk, however slender the leaf is', () => {
    const leaf = regionOf(
      smoothContour([
        { x: 0, y: -3.5 },
        { x: -0.65, y: -6 },
        { x: 0, y: -10 },
        { x: 0.65, y: -6 },
      ]),
    );
    const twig = union([rectangle(-10, 0, 20, 5), rectangle(-0.25, -4, 0.5, 5), leaf]);
    expect(narrowestWeb(twig, 6)!.widthMm).toBeCloseTo(0.5, 2);
    expect(necks(narrowWebs(twig, 1.5))).toHaveLength(1);
  });

  it('hold a ring by its stalk', () => {
    const charm = union([
      rectangle(-20, -20, 40, 10),
      rectangle(-0.5, -11, 1, 12),
      subtract(circle(0, 5, 5), [circle(0, 5, 4.2)]),
    ]);
    const found = necks(narrowWebs(charm, 1.5));
    expect(found).toHaveLength(2);
    expect(found[0].widthMm).toBeCloseTo(0.8, 2);
    expect(found[1].widthMm).toBeCloseTo(1, 2);
  });
});

describe('tips and parts narrow all over', () => {
  it('are no necks: the blade of a grass', () => {
    const blade = shape([0, 0], [20, -1], [20, 1]);
    const places = narrowWebs(union([rectangle(19.9, -10, 10, 20), blade]), 1);
    expect(kinds(places)).toEqual(['tip']);
    // A circle of diameter 1 fits 0.5 / tan(a/2) = 10 mm from the apex on, tan(a/2) = 1/20.
    expect(places[0].lengthMm).toBeCloseTo(10, 0);
    expect(places[0].widthMm).toBeCloseTo(0.5, 1);
    expect(places[0].at.x).toBeLessThan(0.5);
    expect(narrowestWeb(union([rectangle(19.9, -10, 10, 20), blade]), 6)).toBeNull();
  });

  it('are not told of corners, round or sharp, nor of stubs', () => {
    expect(narrowWebs(rectangle(0, 0, 20, 30), 1.5)).toEqual([]);
    expect(narrowWebs(roundedRectangle(0, 0, 20, 30, 0.4), 1.5)).toEqual([]);
    expect(narrowWebs(shape([0, 0], [20, 0], [10, 17.320508]), 1.5)).toEqual([]);
    const stub = union([rectangle(0, 0, 20, 10), rectangle(8, -1, 1, 2)]);
    expect(narrowWebs(stub, 1.5)).toEqual([]);
    expect(
      narrowWebs(subtract(rectangle(0, 0, 100, 140), [rectangle(12, 15, 76, 100)]), 3),
    ).toEqual([]);
  });

  it('are told of a round-ended blade', () => {
    const blade = union([rectangle(0, 0, 20, 10), roundedRectangle(8, -12, 1, 14, 0.5)]);
    const places = narrowWebs(blade, 1.5);
    expect(kinds(places)).toEqual(['tip']);
    expect(places[0].widthMm).toBeCloseTo(1, 1);
    expect(Math.abs(places[0].lengthMm - 12)).toBeLessThan(0.5);
  });

  it('are told apart from a band that goes round a hole', () => {
    expect(kinds(narrowWebs(rectangle(0, 0, 20, 1), 1.5))).toEqual(['whole']);
    const band = subtract(circle(0, 0, 10), [circle(0, 0, 9)]);
    const [neck, ...others] = narrowWebs(band, 1.5);
    expect(others).toEqual([]);
    expect(neck.kind).toBe('neck');
    expect(neck.widthMm).toBeCloseTo(1, 2);
    expect(neck.lengthMm).toBeCloseTo(Math.PI * 19, 0);
  });
});

describe('the narrowest web', () => {
  it('is none on a panel with sound jambs, and the jamb where one looks further', () => {
    const panel = subtract(rectangle(0, 0, 100, 140), [rectangle(12, 15, 76, 100)]);
    expect(narrowestWeb(panel, 6)).toBeNull();
    const { widthMm, at } = narrowestWeb(panel, 14)!;
    expect(widthMm).toBeCloseTo(12, 6);
    expect(Math.min(at.x, 100 - at.x)).toBeCloseTo(6, 6);
  });

  it('is none of nothing', () => {
    expect(narrowestWeb({ contours: [] }, 6)).toBeNull();
    expect(narrowWebs({ contours: [] }, 6)).toEqual([]);
  });

  // Similarity: lengths scale by s.
  it('scales with the card and does not mind turning or mirroring', () => {
    const plate = subtract(barbell(1.2), [ellipse(5, 5, 3, 4.3), circle(25.3, 5, 4)]);
    const base = narrowestWeb(plate, 6)!.widthMm;
    expect(base).toBeCloseTo(0.7, 2);
    expect(narrowestWeb(moveRegion(plate, scaling(0.5)), 6)!.widthMm).toBeCloseTo(base / 2, 2);
    for (const degrees of [30, 90, 143]) {
      const moved = moveRegion(
        plate,
        inOrder(scaling(-1, 1), rotation(degrees), translation(70, 20)),
      );
      expect(narrowestWeb(moved, 6)!.widthMm).toBeCloseTo(base, 2);
      expect(necks(narrowWebs(moved, 1))).toHaveLength(necks(narrowWebs(plate, 1)).length);
    }
  });
});

describe('narrow slots', () => {
  const plate = (...holes: Region[]) => subtract(rectangle(0, 0, 100, 140), holes);

  it('are the webs of what is not card', () => {
    const dumbbell = moveRegion(barbell(0.9), translation(20, 30));
    const [neck, ...others] = narrowSlots(plate(dumbbell), 1.5);
    expect(others).toEqual([]);
    expect(neck.kind).toBe('neck');
    expect(neck.widthMm).toBeCloseTo(0.9, 2);
    expect(neck.lengthMm).toBeCloseTo(10, 1);
    expect(narrowSlots(plate(dumbbell), 0.9)).toEqual([]);
  });

  it('are whole where the slot has one width, and tips where a notch ends', () => {
    const places = narrowSlots(
      plate(rectangle(12, 15, 0.8, 20), union([circle(50, 50, 5), rectangle(54, 49.6, 12, 0.8)])),
      1.5,
    );
    expect(kinds(places).sort()).toEqual(['tip', 'whole']);
    for (const place of places) expect(Math.abs(place.widthMm - 0.8)).toBeLessThan(0.06);
  });

  it('are found in the outer edge and between two parts', () => {
    expect(kinds(narrowSlots(plate(rectangle(50, -1, 0.8, 20)), 1.5))).toEqual(['tip']);
    const parts = union([rectangle(0, 0, 20, 20), rectangle(20.7, 0, 20, 20)]);
    const [gap, ...others] = narrowSlots(parts, 1.5);
    expect(others).toEqual([]);
    expect(gap.kind).toBe('neck');
    expect(gap.widthMm).toBeCloseTo(0.7, 3);
    expect(narrowSlots({ contours: [] }, 1)).toEqual([]);
  });
});

describe('small holes', () => {
  it('are those with less area than the circle, smallest first', () => {
    const card = subtract(rectangle(0, 0, 50, 50), [
      circle(10, 10, 0.9),
      circle(20, 10, 0.5),
      circle(30, 10, 1.2),
      rectangle(10, 20, 0.5, 12),
    ]);
    const found = smallHoles(card, 2);
    expect(found.map((h) => Math.round(h.diameterMm * 100) / 100)).toEqual([1, 1.8]);
    expect(found[0].at.x).toBeCloseTo(20, 6);
    const filled = union([card, ...found.map((h) => h.hole)]);
    expect(regionArea(filled)).toBeCloseTo(2500 - Math.PI * 1.44 - 6, 1);
  });
});

describe('seeded scenery', () => {
  const WIDTH = 1.2;
  const cases = Array.from({ length: 12 }, (_, k) => {
    const random = randomFrom(70, 'webs', k);
    const stems = Array.from({ length: 6 }, () =>
      stroke([wanderer(random)], random.between(0.6, 2.5)),
    );
    const frame = subtract(rectangle(-10, -10, 120, 120), [rectangle(2, 2, 96, 96)]);
    return { k, region: union([blobs(random), frame, ...stems]) };
  });

  it('has the middle of each neck half its width from the outline', () => {
    let count = 0;
    for (const { k, region } of cases) {
      for (const { at, widthMm } of necks(narrowWebs(region, WIDTH))) {
        count++;
        expect(distanceTo(region, at)!.distanceMm, `case ${k}`).toBeGreaterThan(widthMm / 2 - 0.02);
        expect(distanceTo(region, at)!.distanceMm, `case ${k}`).toBeLessThan(widthMm / 2 + 0.02);
        expect(widthMm).toBeLessThan(WIDTH);
      }
    }
    expect(count).toBeGreaterThan(50);
  });

  // The other route: what an opening by half the width removes, and which touches what is left
  // in two places or more, is a neck.
  it('has a neck in all that an opening removes between two wider parts', () => {
    let count = 0;
    for (const { k, region } of cases.slice(0, 6)) {
      const opened = offset(offset(region, -WIDTH / 2), WIDTH / 2);
      const removed = subtract(region, [offset(opened, 0.05)]);
      const found = necks(narrowWebs(region, WIDTH));
      for (const part of components(removed)) {
        if (regionArea(part) < 0.1) continue;
        const contacts = components(intersect(offset(part, 0.2), opened));
        if (contacts.length < 2) continue;
        count++;
        const nearest = Math.min(...found.map((n) => distanceTo(part, n.at)!.distanceMm));
        const [x, y] = part.contours[0];
        expect(nearest, `case ${k} at ${x}, ${y}`).toBeLessThan(WIDTH);
      }
    }
    expect(count).toBeGreaterThan(20);
  });

  it('has as its narrowest web the narrowest neck below any limit', () => {
    for (const { k, region } of cases) {
      const narrowest = narrowestWeb(region, 4);
      const [first] = necks(narrowWebs(region, WIDTH));
      if (first) expect(narrowest!.widthMm, `case ${k}`).toBeLessThan(first.widthMm + 0.02);
      if (narrowest && narrowest.widthMm < WIDTH - 0.05) {
        expect(first?.widthMm, `case ${k}`).toBeLessThan(narrowest.widthMm + 0.02);
      }
    }
  });
});

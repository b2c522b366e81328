import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { stroke } from '../../../src/geometry/offset/offset.js';
import { outlineOf } from '../../../src/geometry/outline.js';
import { pen, polygon, regionOf } from '../../../src/geometry/pen.js';
import { rectangle } from '../../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import type { Point, Region } from '../../../src/geometry/types.js';
import { freeEnds } from '../../../src/geometry/width/free-ends.js';
import { findNecks } from '../../../src/geometry/width/necks.js';
import {
  type NarrowPlace,
  narrowestWeb,
  narrowSlots,
  narrowWebs,
  samplesFor,
} from '../../../src/geometry/width/webs.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';
import { fineCircle, leaf, strewnLeaves } from '../shapes.js';

const shape = (...points: [number, number][]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));

/** Four turns, each also mirrored. */
const MOVES = [0, 90, 143, 217].flatMap((degrees) => {
  const turn = inOrder(rotation(degrees), translation(31, -17));
  return [turn, inOrder(scaling(-1, 1), turn)];
});

/** The one neck that a search finds has this width in all eight positions. */
function expectNeck(
  region: Region,
  search: (moved: Region) => NarrowPlace[],
  wantedMm: number,
): void {
  for (const move of MOVES) {
    const necks = search(moveRegion(region, move)).filter((p) => p.kind === 'neck');
    expect(necks).toHaveLength(1);
    expect(Math.abs(necks[0].widthMm - wantedMm), `${necks[0].widthMm}`).toBeLessThan(0.01);
  }
}

describe('widths by closed forms, turned and mirrored', () => {
  it('of a dumb-bell', () => {
    for (const width of [0.05, 0.3, 0.98, 2.4]) {
      const bell = union([
        fineCircle(0, 0, 10),
        fineCircle(32, 0, 10),
        rectangle(3, -width / 2, 26, width),
      ]);
      expectNeck(bell, (r) => narrowWebs(r, width + 0.1), width);
    }
  });

  it('of a taper between two plates: its narrow end', () => {
    const taper = union([
      rectangle(-10, -10, 10, 20),
      shape([-0.1, -2], [20, -0.4], [20, 0.4], [-0.1, 2]),
      rectangle(20, -10, 10, 20),
    ]);
    expectNeck(taper, (r) => narrowWebs(r, 1.5), 0.8);
  });

  it('between two holes, and between two discs nearly touching', () => {
    for (const gap of [0.02, 0.2, 1.1]) {
      const plate = subtract(rectangle(-30, -20, 60, 40), [
        fineCircle(-8 - gap / 2, 0, 8),
        fineCircle(5 + gap / 2, 0, 5),
      ]);
      expectNeck(plate, (r) => narrowWebs(r, 1.5), gap);
      const discs = union([fineCircle(-8 - gap / 2, 0, 8), fineCircle(5 + gap / 2, 0, 5)]);
      expectNeck(discs, (r) => narrowSlots(r, 1.5), gap);
    }
  });

  it('of an hourglass of two arcs', () => {
    // Two circles of radius 20 with 0.7 mm between them bite into a plate from both sides.
    const plate = subtract(rectangle(-15, -10, 30, 20), [
      fineCircle(0, -20.35, 20),
      fineCircle(0, 20.35, 20),
    ]);
    expectNeck(plate, (r) => narrowWebs(r, 1.5), 0.7);
  });

  it('of the slot between two leaves side by side', () => {
    // The fullest place of a leaf, found by dense sampling of its own formula.
    const [length, width] = [12, 4];
    const edgeAt = (t: number): number =>
      3 * (1 - t) ** 2 * t * width + 3 * (1 - t) * t * t * 0.8 * width;
    const half = Math.max(...Array.from({ length: 100001 }, (_, k) => edgeAt(k / 100000)));
    for (const gap of [0.1, 0.6]) {
      const pair = union([
        leaf(length, width),
        moveRegion(leaf(length, width), translation(0, 2 * half + gap)),
      ]);
      expectNeck(pair, (r) => narrowSlots(r, 1.2), gap);
    }
  });

  it('of a band, and of a ring off its centre', () => {
    const ring = subtract(fineCircle(0, 0, 10), [fineCircle(0.4, 0, 9)]);
    for (const move of MOVES) {
      expect(Math.abs(narrowestWeb(moveRegion(ring, move), 3)!.widthMm - 0.6)).toBeLessThan(0.01);
    }
    const wavy = regionOf(
      pen(0, 0)
        .curveTo(5, 2, 10, -2, 15, 0)
        .lineTo(15, 0.9)
        .curveTo(10, -1.1, 5, 2.9, 0, 0.9)
        .close(),
    );
    const held = union([wavy, rectangle(-8, -4, 8.5, 10), rectangle(14.5, -4, 8.5, 10)]);
    // The edges are one curve moved 0.9 mm across, so where it climbs the band is narrower.
    const slope = Math.max(
      ...Array.from({ length: 1001 }, (_, k) => {
        const t = k / 1000;
        return Math.abs((3 * (1 - t) ** 2 * 2 + 6 * (1 - t) * t * -4 + 3 * t * t * 2) / 15);
      }),
    );
    const narrowest = narrowestWeb(held, 1.5)!.widthMm;
    expect(narrowest).toBeLessThan(0.9);
    expect(narrowest).toBeGreaterThan(0.9 * Math.cos(Math.atan(slope)) - 0.01);
  });
});

describe('horns', () => {
  it('are no webs, however sharp: crescents are narrow all over', () => {
    for (const apart of [0.5, 0.2, 0.05, 0.02]) {
      const crescent = subtract(fineCircle(apart, 0, 10), [fineCircle(0, 0, 10)]);
      for (const move of MOVES) {
        const places = narrowWebs(moveRegion(crescent, move), 1);
        expect(places.map((p) => p.kind)).toEqual(['whole']);
        // Its area is 20 times how far it is apart, its length half the circle's.
        expect(Math.abs(places[0].widthMm - (20 * apart) / (10 * Math.PI))).toBeLessThan(0.01);
      }
    }
  });
});

describe('asking for more width', () => {
  const WIDTHS = [0.5, 0.6, 0.8, 0.98, 1, 1.2, 1.5, 2];
  const cases = Array.from({ length: 8 }, (_, k) => {
    if (k % 2 === 1) return union(strewnLeaves(90, k));
    const random = randomFrom(70, 'webs', k);
    const stems = Array.from({ length: 6 }, () =>
      stroke([wanderer(random)], random.between(0.6, 2.5)),
    );
    const frame = subtract(rectangle(-10, -10, 120, 120), [rectangle(2, 2, 96, 96)]);
    return union([blobs(random), frame, ...stems]);
  });

  const distance = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

  it('loses no neck, save a few that hardly widen', () => {
    let [count, lost] = [0, 0];
    for (const region of cases) {
      for (const find of [narrowWebs, narrowSlots]) {
        const lists = WIDTHS.map((w) => find(region, w).filter((p) => p.kind === 'neck'));
        for (let i = 0; i + 1 < WIDTHS.length; i++) {
          for (const { at } of lists[i]) {
            count++;
            // Necks nearer than half the width asked for are one place, and long ones have an axis.
            const isNear = (p: Point): boolean => distance(p, at) < WIDTHS[i + 1];
            if (!lists[i + 1].some((q) => [q.at, ...q.axis].some(isNear))) lost++;
          }
        }
      }
    }
    expect(count).toBeGreaterThan(300);
    expect(lost / count).toBeLessThan(0.01);
  });

  it('loses no tip, save a few hardly longer than 1.5 times their width', () => {
    let [count, lost] = [0, 0];
    for (const region of cases) {
      const found = WIDTHS.map((w) => {
        const samples = samplesFor(region, w);
        const { taken } = findNecks(outlineOf(region), samples, w - 0.01);
        const tips = freeEnds(samples, taken, w - 0.01, 0.5);
        const onPlaces = new Set(tips.flatMap((tip) => tip.run));
        taken.forEach((isTaken, s) => {
          if (isTaken) onPlaces.add(s);
        });
        const { x, y } = samples;
        return { tips, covered: [...onPlaces].map((s): Point => ({ x: x[s], y: y[s] })) };
      });
      for (let i = 0; i + 1 < WIDTHS.length; i++) {
        for (const { at, widthMm } of found[i].tips) {
          count++;
          const reach = widthMm / 2 + 0.3;
          if (!found[i + 1].covered.some((p) => distance(p, at) < reach)) lost++;
        }
      }
    }
    expect(count).toBeGreaterThan(200);
    expect(lost / count).toBeLessThan(0.03);
  });

  it('does not make a tip of a stub, nor lose a tip by its root', () => {
    // A blade 0.3 mm wide and 2 mm long on a plate: too short for 2 mm wide, but slender in itself.
    const blade = union([rectangle(0, 0, 20, 10), rectangle(8, -2, 0.3, 3)]);
    for (const w of [0.35, 0.5, 0.98, 1, 1.5, 2, 3]) {
      expect(narrowWebs(blade, w).map((p) => p.kind)).toEqual(['tip']);
      expect(narrowSlots(subtract(rectangle(-20, -20, 60, 60), [blade]), w)[0]?.kind).toBe('tip');
    }
    const stub = union([rectangle(0, 0, 20, 10), rectangle(8, -0.2, 0.3, 1)]);
    for (const w of [0.35, 0.5, 1, 2]) expect(narrowWebs(stub, w)).toEqual([]);
  });
});

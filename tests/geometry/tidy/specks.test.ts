import { describe, expect, it } from 'vitest';
import { regionArea } from '../../../src/geometry/measure.js';
import { polyline } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { dropSpeckLines, dropSpecks } from '../../../src/geometry/tidy/specks.js';
import { reversed } from '../../../src/geometry/transform.js';
import type { Region } from '../../../src/geometry/types.js';

/** A 40 x 30 mm card with holes of 6 and 0.8 mm, an island of 2 mm in the first, and a crumb. */
const hole = (x: number, y: number, radius: number) =>
  circle(x, y, radius).contours.map((c) => reversed(c));
const card: Region = {
  contours: [
    ...rectangle(0, 0, 40, 30).contours,
    ...hole(10, 10, 3),
    ...circle(10, 10, 1).contours,
    ...hole(30, 20, 0.4),
    ...rectangle(50, 4, 0.5, 0.4).contours,
  ],
};

describe('dropSpecks', () => {
  it('says what it drops, smallest first', () => {
    const { region, dropped } = dropSpecks(card, { areaMm2: 1 });
    expect(dropped.map(({ kind }) => kind)).toEqual(['piece', 'hole']);
    expect(dropped[0].areaMm2).toBeCloseTo(0.2, 9);
    expect(dropped[0].at.x).toBeCloseTo(50.25, 9);
    expect(dropped[0].at.y).toBeCloseTo(4.2, 9);
    // Circles are drawn with cubics that enclose 0.03 % too much.
    expect(dropped[1].areaMm2).toBeCloseTo(Math.PI * 0.4 ** 2, 3);
    expect(dropped[1].diameterMm).toBeCloseTo(0.8, 3);
    expect(region.contours).toEqual(card.contours.slice(0, 3));
    expect(regionArea(region) - regionArea(card)).toBeCloseTo(
      dropped[1].areaMm2 - dropped[0].areaMm2,
      9,
    );
  });

  it('takes a diameter too, and all that lies in a hole with the hole', () => {
    const { region, dropped } = dropSpecks(card, { diameterMm: 7 });
    expect(dropped.map(({ kind }) => kind)).toEqual(['piece', 'hole', 'piece', 'hole']);
    expect(region.contours).toEqual(card.contours.slice(0, 1));
    expect(regionArea(region)).toBeCloseTo(1200, 9);
  });

  it('leaves alone what is large enough', () => {
    expect(dropSpecks(card, { areaMm2: 0.1 })).toEqual({ region: card, dropped: [] });
    expect(dropSpecks({ contours: [] }, { areaMm2: 1 }).region.contours).toEqual([]);
  });
});

describe('dropSpeckLines', () => {
  it('drops what is shorter than asked, and says where', () => {
    const long = polyline([
      { x: 0, y: 0 },
      { x: 3, y: 4 },
    ]);
    const short = polyline([
      { x: 10, y: 10 },
      { x: 10.3, y: 10.4 },
    ]);
    const { lines, dropped } = dropSpeckLines([short, long], 1);
    expect(lines).toEqual([long]);
    expect(dropped).toHaveLength(1);
    expect(dropped[0].lengthMm).toBeCloseTo(0.5, 9);
    expect(dropped[0].at.x).toBeCloseTo(10.15, 9);
    expect(dropSpeckLines([short, long], 0.4).dropped).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { boundsOf, lineLength } from '../../src/geometry/measure.js';
import { EMPTY_REGION, type Line } from '../../src/geometry/types.js';
import { PARTS } from '../../src/scenery/brick/parts.js';
import { KINDS, tilesOver } from '../../src/scenery/tiles/courses.js';
import { tiles } from '../../src/scenery/tiles.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const BOX = { minX: -70, maxX: 70, minY: -165, maxY: 35 };
const middle = ({ cubics }: Line) => {
  const b = boundsOf([cubics]);
  return { x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 };
};

describe('tiles as they are laid', () => {
  it('break every joint by half a tile', () => {
    // Common practice, no source: half bond, so that no rain gets through two joints.
    for (const kind of KINDS) {
      const laid = tilesOver(BOX, kind, 4.5);
      const wide = laid[0].x1 - laid[0].x0;
      for (const tile of laid) {
        const below = laid.filter((t) => t.course === tile.course - 1 && t.x0 < tile.x1);
        const off = Math.min(...below.map((t) => Math.abs(t.x0 - tile.x0)));
        if (below.some((t) => t.x0 < tile.x0)) expect(off / wide).toBeCloseTo(0.5, 9);
      }
      expect(laid.length).toBeGreaterThan(500);
    }
  });

  it('lie in level courses without a gap, slates smaller towards the ridge', () => {
    for (const kind of KINDS) {
      const courses = new Map(tilesOver(BOX, kind, 4.5).map((t) => [t.course, t]));
      const rows = [...courses.values()].sort((a, b) => a.y0 - b.y0);
      rows.slice(1).forEach((row, i) => {
        expect(row.y0).toBeCloseTo(rows[i].y1, 9);
        const grows = row.y1 - row.y0 - (rows[i].y1 - rows[i].y0);
        if (kind === 'slates') expect(grows).toBeGreaterThan(0);
        else expect(Math.abs(grows)).toBeLessThan(1e-9);
      });
    }
  });

  it('show 165 x 100 mm of a plain tile, 250 x 210 of a slate', () => {
    // From memory: plain tiles 265 x 165 at a gauge of 100, slates 500 x 250 at one of 210.
    const plain = tilesOver(BOX, 'plain', 4)[0];
    expect((plain.x1 - plain.x0) / (plain.y1 - plain.y0)).toBeCloseTo(165 / 100, 2);
    const slates = tilesOver(BOX, 'slates', 4);
    const mean = slates.reduce((s, t) => s + (t.x1 - t.x0) / (t.y1 - t.y0), 0) / slates.length;
    expect(Math.abs(mean - 250 / 210)).toBeLessThan(0.15);
  });
});

describe('tiles', () => {
  it('adds no card and stops 1.5 to 2 mm short of every cut edge', () => {
    // Common practice, no source.
    for (const window of ['rectangle', 'arch', 'circle'] as const) {
      for (const kind of KINDS) {
        const plot = plotWith(window);
        const { body, scores } = grown(tiles, plot, { kind, coverage: 1 });
        expect(body).toEqual(EMPTY_REGION);
        expect(scores.length).toBeGreaterThan(200);
        expect(Math.max(...scores.map(lineLength))).toBeLessThan(42);
        expect(clearance(scores, plot.frame.card)).toBeGreaterThanOrEqual(1.5);
      }
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(tiles, plotWith('rectangle'));
  });

  it('rounds the tails of fish scales only', () => {
    const curved = (kind: string) =>
      grown(tiles, plotWith('none'), { kind }).scores.filter(({ cubics }) => {
        const b = boundsOf([cubics]);
        return b.maxY - b.minY > 1 && b.maxX - b.minX > 2;
      }).length;
    expect(curved('fish-scale')).toBeGreaterThan(200);
    expect(curved('plain')).toBe(0);
  });

  it('draws fewer tiles of a larger gauge, and more with more coverage', () => {
    const drawn = (given: Record<string, number>) =>
      grown(tiles, plotWith('rectangle'), given).scores.length;
    expect(drawn({ gauge: 3.5 })).toBeGreaterThan(1.8 * drawn({ gauge: 7 }));
    expect(drawn({ coverage: 0.9 })).toBeGreaterThan(1.5 * drawn({ coverage: 0.4 }));
  });

  it('keeps to its part', () => {
    for (const part of PARTS.filter((p) => p !== 'surround')) {
      const { scores } = grown(tiles, plotWith('rectangle'), { part, coverage: 1 });
      expect(scores.length).toBeGreaterThan(20);
      for (const { x, y } of scores.map(middle)) {
        if (part === 'head') expect(y).toBeLessThan(-125);
        if (part === 'sill') expect(y).toBeGreaterThan(-4);
        if (part === 'left') expect(x).toBeLessThan(-30);
        if (part === 'right') expect(x).toBeGreaterThan(30);
      }
    }
  });
});

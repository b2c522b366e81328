import { describe, expect, it } from 'vitest';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { pieceStatistics } from '../../src/process/statistics.js';
import { bridge, gate, hole, plainPiece, spine } from './lock-pieces.js';

describe('pieceStatistics', () => {
  it('measures area and lengths', () => {
    // Round-topped window, w = 40, j = 50: A = 2628.318531, P = 202.831853 (w j + pi w^2 / 8 and
    // w + 2 j + pi w / 2). Cubic arcs stray by up to 0.0273 % of their radius (the Bézier circle
    // constant), so by up to twice that of the area under them.
    const s = pieceStatistics(bridge);
    const post = Math.PI * 25;
    const paddle = Math.PI * 9;
    const wanted = 187 * 135 - 2628.318531 - paddle + post;
    const arcs = Math.PI * 200 + paddle + post;
    expect(Math.abs(s.areaMm2 - wanted)).toBeLessThan(2 * 0.000273 * arcs);
    expect(s.lengthsMm.cut / (644 + 202.831853 + Math.PI * 16)).toBeCloseTo(1, 4);
    expect(s.lengthsMm.fold).toBeCloseTo(270, 6);
    expect(s.lengthsMm.detail).toBeCloseTo(30, 6);
    expect(s.lengthsMm.emboss / (Math.PI * 16)).toBeCloseTo(1, 3);
  });

  it('counts parts and holes so that their difference is the Euler characteristic', () => {
    // chi = components - holes; CRC Standard Mathematical Tables, from memory.
    const s = pieceStatistics(bridge);
    expect([s.components, s.holes]).toEqual([2, 2]);
    const g = pieceStatistics(gate);
    expect(g.components - g.holes).toBe(0);
  });

  it('adds up both faces', () => {
    expect(pieceStatistics(spine('spine-left', 8)).lengthsMm.fold).toBeCloseTo(9 * 135, 6);
    expect(pieceStatistics(gate).lengthsMm.emboss / (Math.PI * 24)).toBeCloseTo(1, 3);
  });

  it('finds the narrowest web', () => {
    // Two round holes of radius 3 mm, their middles 7.2 mm apart, leave 1.2 mm of card.
    const sluice = {
      ...plainPiece('sluice', 60, 40),
      card: {
        contours: [
          ...rectangle(0, 0, 60, 40).contours,
          hole(circle(26.4, 20, 3)),
          hole(circle(33.6, 20, 3)),
        ],
      },
    };
    expect(pieceStatistics(sluice).narrowestWebMm).toBeCloseTo(1.2, 2);
    expect(pieceStatistics(plainPiece('sky', 60, 40)).narrowestWebMm).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { polygon, polyline } from '../../../src/geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../../src/geometry/primitives.js';
import { bladeLimits, cornerErrors } from '../../../src/process/knife/blade-limits.js';
import { tipTrace } from '../../../src/process/knife/trace.js';
import type { Blade } from '../../../src/process/process.js';
import { hole } from '../lock-pieces.js';
import { OUTLINES } from './outlines.js';

const BLADE: Blade = { offsetMm: 0.25, overcutMm: 0.5, compensate: false };
const SWUNG: Blade = { ...BLADE, compensate: true };

const regionWith = (...holes: ReturnType<typeof hole>[]) => ({
  contours: [...rectangle(0, 0, 60, 40).contours, ...holes],
});

describe('what a blade cannot turn', () => {
  it('says nothing of a plain card with a generous window', () => {
    expect(bladeLimits(regionWith(hole(rectangle(5, 5, 20, 10))), BLADE)).toEqual([]);
  });

  it('names holes under eight offsets across, and none that are larger', () => {
    // Common practice, no source.
    const found = bladeLimits(
      regionWith(hole(circle(20, 10, 0.95)), hole(circle(30, 10, 1.05))),
      SWUNG,
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ kind: 'hole', wantedMm: 2 });
    expect(found[0].measuredMm).toBeCloseTo(1.9, 3);
    expect(found[0].at.x).toBeCloseTo(20, 6);
  });

  it('names bends tighter than the offset, and none that are wider', () => {
    const [tight] = roundedRectangle(0, 0, 20, 10, 0.2).contours;
    const found = bladeLimits({ contours: [tight] }, SWUNG);
    expect(found.map(({ kind }) => kind)).toEqual(['corner', 'corner', 'corner', 'corner']);
    for (const { measuredMm } of found) expect(measuredMm).toBeCloseTo(0.2, 2);
    expect(bladeLimits(roundedRectangle(0, 0, 20, 10, 0.3), SWUNG)).toEqual([]);
  });

  it('names runs too short for the tip to come back into line between two corners', () => {
    const step = (mm: number) => ({
      contours: [
        polygon([
          { x: 0, y: 0 },
          { x: 20, y: 0 },
          { x: 20, y: mm },
          { x: 40, y: mm },
          { x: 40, y: 20 },
          { x: 0, y: 20 },
        ]),
      ],
    });
    // 0.57311 mm after a right angle: derived from the tractrix.
    expect(bladeLimits(step(0.58), BLADE)).toEqual([]);
    const [short, ...more] = bladeLimits(step(0.56), BLADE);
    expect(more).toEqual([]);
    expect(short).toMatchObject({ kind: 'short', at: { x: 20, y: 0.28 } });
    expect(short.measuredMm).toBeCloseTo(0.56, 9);
    expect(short.wantedMm).toBeCloseTo(0.57311, 5);
    expect(bladeLimits(step(0.56), SWUNG)).toEqual([]);
    expect(bladeLimits(step(0.2), SWUNG)).toMatchObject([{ kind: 'short', wantedMm: 0.25 }]);
  });
});

describe('what is left at corners without compensation', () => {
  it('finds the corners of a card, with a quarter of a millimetre over 0.57311 mm at each', () => {
    const errors = cornerErrors(OUTLINES[0].contour, BLADE);
    expect(errors).toHaveLength(4);
    for (const { turnDeg, lateralMm, overMm } of errors) {
      expect(turnDeg).toBeCloseTo(90, 6);
      expect(lateralMm).toBeCloseTo(0.25, 6);
      expect(overMm).toBeCloseTo(0.57311, 5);
    }
  });

  it('is what the virtual cut leaves at every sort of corner', () => {
    for (const name of ['a card', 'an arch', 'a toothed wall', 'spikes']) {
      const { contour } = OUTLINES.find((o) => o.name === name)!;
      for (const { turnDeg, lateralMm, overMm } of cornerErrors(contour, BLADE)) {
        const turn = (turnDeg * Math.PI) / 180;
        const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
        const bend = polyline([
          { x: -4, y: 0 },
          { x: 0, y: 0 },
          { x: 4 * ux, y: 4 * uy },
        ]).cubics;
        const tips = tipTrace(bend, BLADE.offsetMm, { x: 1, y: 0 });
        // The pivot is at the corner where the tip is an offset short of it.
        const corner = tips.findIndex(({ x, y }) => x >= -BLADE.offsetMm - 1e-9 && y === tips[0].y);
        const aside = tips.slice(corner).map(({ x, y }) => Math.abs(x * uy - y * ux));
        expect(Math.abs(Math.max(...aside) - lateralMm), `${name} ${turnDeg}`).toBeLessThan(1e-3);
        const settled = tips.slice(corner).findLastIndex((_, k) => aside[k] > 0.05);
        const { x, y } = tips[corner + settled];
        const pivot = x * ux + y * uy + Math.sqrt(BLADE.offsetMm ** 2 - aside[settled] ** 2);
        expect(Math.abs(pivot - overMm), `${name} ${turnDeg}`).toBeLessThan(0.01);
      }
    }
  });
});

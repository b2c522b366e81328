import { describe, expect, it } from 'vitest';
import { placeAtLength, pointOn, subchain } from '../../../src/geometry/chain.js';
import { chainLength } from '../../../src/geometry/measure.js';
import { polyline } from '../../../src/geometry/pen.js';
import { moveCubics, scaling } from '../../../src/geometry/transform.js';
import type { Cubics } from '../../../src/geometry/types.js';
import { sharpCorners } from '../../../src/geometry/width/sharp-corners.js';
import { bladeMark } from '../../../src/process/knife/blade-marks.js';
import { tipTrace } from '../../../src/process/knife/trace.js';
import { moveMark, turnedOver } from '../../../src/process/layers.js';
import type { Blade } from '../../../src/process/process.js';
import { hausdorff } from '../../geometry/tidy/hausdorff.js';
import { OUTLINES } from './outlines.js';
import { directionAtStart, tipDistance, traceAfter } from './tip-distance.js';

const PLAIN: Blade = { offsetMm: 0.25, overcutMm: 0.5, compensate: false };
const SWUNG: Blade = { ...PLAIN, compensate: true };

const cutOf = (cubics: Cubics, blade: Blade) => bladeMark({ cubics, closed: true }, blade);

describe('an overcut', () => {
  it.each(OUTLINES)('starts $name away from corners and runs its start again', ({ contour }) => {
    const { cubics, closed, kind } = cutOf(contour, PLAIN);
    expect({ closed, kind }).toEqual({ closed: false, kind: 'overcut' });
    const start = pointOn(cubics, 0);
    for (const { at } of sharpCorners({ contours: [contour] }, 0)) {
      expect(Math.hypot(at.x - start.x, at.y - start.y)).toBeGreaterThan(2 * PLAIN.offsetMm);
    }
    const whole = chainLength(contour);
    expect(chainLength(cubics)).toBeCloseTo(whole + 0.5, 6);
    expect(hausdorff(cubics, contour)).toBeLessThan(1e-3);
    // The last half millimetre is the first once more, in the same direction.
    const startAgain = cubics.findIndex(
      (x, k) => k > 0 && k % 8 === 0 && x === cubics[0] && cubics[k + 1] === cubics[1],
    );
    const again = cubics.subarray(startAgain);
    expect(chainLength(again)).toBeCloseTo(0.5, 6);
    const begun = subchain(cubics, 0, placeAtLength(cubics, 0.5));
    expect(hausdorff(again, begun)).toBeLessThan(1e-6);
    expect(again.subarray(0, 2)).toEqual(begun.subarray(0, 2));
  });

  it('is left out where none is asked for: the cut stays closed', () => {
    const [{ contour }] = OUTLINES;
    const mark = cutOf(contour, { ...PLAIN, overcutMm: 0 });
    expect(mark.closed).toBe(true);
    expect(mark.kind).toBeUndefined();
    expect(chainLength(mark.cubics)).toBeCloseTo(chainLength(contour), 9);
  });

  it('goes round no more than half of a tiny hole', () => {
    const tiny = moveCubics(OUTLINES[0].contour, scaling(0.01));
    const { cubics } = cutOf(tiny, { ...PLAIN, overcutMm: 5 });
    expect(chainLength(cubics)).toBeCloseTo(1.5 * chainLength(tiny), 6);
  });
});

describe('a compensated cut', () => {
  const BLADES = [0.2, 0.25, 0.45, 0.9].map((offsetMm) => ({
    ...SWUNG,
    offsetMm,
    overcutMm: 2 * offsetMm,
  }));

  it.each(OUTLINES)('leads the tip round $name within 0.005 mm', ({ contour }) => {
    for (const blade of BLADES) {
      const { cubics } = cutOf(contour, blade);
      const tips = traceAfter(cubics, directionAtStart(cubics), blade, 0);
      expect(tipDistance(tips, contour)).toBeLessThan(0.005);
    }
  });

  it.each(OUTLINES)('cuts $name right, however the blade is set down', ({ contour }) => {
    for (const turnDeg of [-170, -90, 45, 135]) {
      const { cubics } = cutOf(contour, SWUNG);
      const ahead = directionAtStart(cubics);
      const angle = Math.atan2(ahead.y, ahead.x) + (turnDeg * Math.PI) / 180;
      const heading = { x: Math.cos(angle), y: Math.sin(angle) };
      const overcutMm = 4 * SWUNG.offsetMm;
      const tips = traceAfter(cubics, heading, SWUNG, overcutMm);
      expect(tipDistance(tips, contour)).toBeLessThan(0.05);
    }
  });

  it('swings an arc of the offset about a right angle, 0.3927 mm long', () => {
    // Arc = offset times turn; common practice, no source.
    const { cubics } = cutOf(OUTLINES[0].contour, SWUNG);
    const isArc = (k: number) => Math.abs(chainLength(cubics.subarray(k, k + 8)) - 0.3927) < 1e-3;
    const starts = Array.from({ length: cubics.length / 8 }, (_, k) => 8 * k);
    expect(starts.filter(isArc)).toHaveLength(4);
  });

  it('is nearer to the drawing than one that leaves out the swing', () => {
    for (const name of ['a toothed wall', 'spikes', 'a leaf']) {
      const { contour } = OUTLINES.find((o) => o.name === name)!;
      const { cubics } = cutOf(contour, PLAIN);
      const tips = tipTrace(cubics, PLAIN.offsetMm, directionAtStart(cubics));
      expect(tipDistance(tips.slice(1), contour)).toBeGreaterThan(0.1);
    }
  });

  it('is as good run from the back, mirrored', () => {
    const over = turnedOver(60);
    for (const name of ['a toothed wall', 'a leaf']) {
      const { contour } = OUTLINES.find((o) => o.name === name)!;
      const { cubics } = moveMark(cutOf(contour, SWUNG), over);
      const tips = traceAfter(cubics, directionAtStart(cubics), SWUNG, 0);
      expect(tipDistance(tips, moveCubics(contour, over))).toBeLessThan(0.005);
    }
  });

  it('shifts open cuts along themselves, without a lead-in', () => {
    const line = polyline([
      { x: 0, y: 0 },
      { x: 0, y: 2 },
    ]).cubics;
    const mark = bladeMark({ cubics: line, closed: false, kind: 'perforation' }, SWUNG);
    expect(mark.kind).toBe('perforation');
    expect([mark.cubics[1], mark.cubics[7]]).toEqual([0.25, 2.25]);
    expect(bladeMark({ cubics: line, closed: false, kind: 'nib' }, PLAIN).cubics).toBe(line);
  });
});

import { describe, expect, it } from 'vitest';
import type { Cubics } from '../../src/geometry/types.js';
import { moveMark, turnedOver } from '../../src/process/layers.js';
import { registerMarks } from '../../src/sheet/register-marks.js';

/** The corners that a mark runs through, whichever way it runs. */
const corners = (c: Cubics): string => {
  const points: string[] = [];
  for (let i = 0; i < c.length; i += 2) points.push(`${c[i].toFixed(6)},${c[i + 1].toFixed(6)}`);
  return points.sort().join(' ');
};

describe('registerMarks', () => {
  const marks = registerMarks(210, 297, 6);

  it('is the same set when the sheet is turned over left to right', () => {
    const turned = marks.map((m) => moveMark(m, turnedOver(210)));
    expect(turned.map((m) => corners(m.cubics)).sort()).toEqual(
      marks.map((m) => corners(m.cubics)).sort(),
    );
  });

  it('is another set when the sheet is turned over head to foot', () => {
    const m = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 297 };
    const turned = marks.map((mark) => corners(moveMark(mark, m).cubics)).sort();
    expect(turned).not.toEqual(marks.map((mark) => corners(mark.cubics)).sort());
  });

  it('stays inside the margins', () => {
    for (const { cubics } of marks) {
      for (let i = 0; i < cubics.length; i += 2) {
        expect(cubics[i]).toBeGreaterThanOrEqual(6 - 1e-9);
        expect(cubics[i]).toBeLessThanOrEqual(204 + 1e-9);
        expect(cubics[i + 1]).toBeGreaterThanOrEqual(6 - 1e-9);
        expect(cubics[i + 1]).toBeLessThanOrEqual(291 + 1e-9);
      }
    }
  });
});

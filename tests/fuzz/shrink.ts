import { areaPaths } from 'clipper2-ts';
import { components } from '../../src/geometry/components.js';
import { contourArea } from '../../src/geometry/measure.js';
import type { Region } from '../../src/geometry/types.js';
import type { Case } from '../cases/case.js';
import { type CaseRecord, pathDataOf } from '../cases/case-file.js';
import { AREA_MM2, referenceOf, UNITS_SQ } from './polygons.js';

/** The case with all shapes, pieces and holes left out without which it still fails. */
export function shrunk(c: Case, fails: (c: Case) => boolean): Case {
  const least = c.operation === 'intersect' || c.operation === 'xor' ? 2 : 1;
  let now = c;
  const attempt = (shapes: readonly Region[]): void => {
    const less = { ...now, shapes };
    if (shapes.length >= least && fails(less)) now = less;
  };
  for (let k = now.shapes.length - 1; k >= 0; k--) {
    attempt(now.shapes.filter((_, j) => j !== k));
  }
  now.shapes.forEach((shape, k) => {
    const become = (region: Region): void =>
      attempt(now.shapes.map((s, j) => (j === k ? region : s)));
    for (const piece of components(shape)) become(piece);
    // A hole may go, but an outer contour not without what is in it.
    for (const hole of shape.contours.filter((q) => contourArea(q) < 0)) {
      become({ contours: now.shapes[k].contours.filter((q) => q !== hole) });
    }
  });
  return now;
}

/** The case as a record for the tests, with what the reference polygons make of it. */
export function recordOf(c: Case, name: string, faults: string): CaseRecord {
  const { shapes, ...task } = c;
  const areas = referenceOf(c).map((ring) => areaPaths([ring]) / UNITS_SQ);
  return {
    name,
    note: `Found by fuzzing: ${faults}`,
    ...task,
    shapes: shapes.map(pathDataOf),
    areaMm2: areas.reduce((sum, area) => sum + area, 0),
    outers: areas.filter((area) => area > AREA_MM2).length,
    holes: areas.filter((area) => area < -AREA_MM2).length,
    source: 'Clipper2 on chords within 0.002 mm, polygons of equal area',
    toleranceMm2: AREA_MM2,
    reason: 'chords of the reference',
  };
}

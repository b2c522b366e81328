import { describe, expect, it } from 'vitest';
import { contourArea, regionArea } from '../../../src/geometry/measure.js';
import {
  type Affine,
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import { solved } from '../../cases/case.js';
import {
  type CaseRecord,
  caseFrom,
  pathDataOf,
  readCases,
  regionFrom,
} from '../../cases/case-file.js';
import { tryCase } from '../../fuzz/trial.js';

/** Area (mm2) that a result may be out by where its case does not say. */
const TOLERANCE_MM2 = 1e-3;

/** What holds on one place of the sheet must hold on any, and in the mirror. */
const PLACES: Record<string, Affine> = {
  'as drawn': rotation(0),
  'turned by 90': rotation(90),
  'turned by 180': rotation(180),
  'turned by 270': rotation(270),
  'turned by 17': rotation(17),
  mirrored: scaling(-1, 1),
  'mirrored and turned by 45': inOrder(scaling(-1, 1), rotation(45)),
  shifted: translation(123.456, -78.9),
};

const cases = readCases();

describe('named cases', () => {
  it.each(cases.map((record) => [record.name, record] as const))('%s', (_, record) => {
    const tolerance = record.toleranceMm2 ?? TOLERANCE_MM2;
    for (const [place, map] of Object.entries(PLACES)) {
      const drawn = caseFrom(record);
      const moved = { ...drawn, shapes: drawn.shapes.map((shape) => moveRegion(shape, map)) };
      const { region } = solved(moved);
      const areas = region.contours.map(contourArea);
      const found = {
        place,
        outers: areas.filter((area) => area > tolerance).length,
        holes: areas.filter((area) => area < -tolerance).length,
        ...tryCase(moved),
      };
      const { outers = found.outers, holes = found.holes } = record;
      const exact = record.mayBePolygons ? found.exact : true;
      expect(found).toEqual({ place, exact, outers, holes, faults: [] });
      expect(Math.abs(regionArea(region) - record.areaMm2), place).toBeLessThan(tolerance);
    }
  });
});

describe('the records', () => {
  it('have names of their own, a note and a source', () => {
    expect(new Set(cases.map((record) => record.name)).size).toBe(cases.length);
    for (const { name, note, source } of cases) {
      expect(
        [name, note, source].every((text) => text.length > 3),
        name,
      ).toBe(true);
    }
  });

  it('say why where their tolerance is looser than usual', () => {
    const isLoose = (r: CaseRecord): boolean => (r.toleranceMm2 ?? 0) > TOLERANCE_MM2;
    for (const record of cases.filter(isLoose)) expect(record.reason, record.name).toBeTruthy();
  });

  it('hold regions wherever regions are asked for', () => {
    for (const record of cases) {
      if (record.operation === 'nonzero' || record.operation === 'even-odd') continue;
      for (const shape of caseFrom(record).shapes) {
        expect(regionArea(shape), record.name).toBeGreaterThan(-1e-9);
        expect(contourArea(shape.contours[0]), record.name).toBeGreaterThan(-1e-9);
      }
    }
  });

  it('are read and written to the last bit', () => {
    for (const d of [
      'M0 0H10V5.1L3 7Z',
      'M10 0A10 10 0 1 0 0 10Q1 2 3 4C5 6 7 8 9 10Z M1 1H2V2Z',
    ]) {
      const region = regionFrom(d);
      expect(regionFrom(pathDataOf(region))).toEqual(region);
    }
    expect(() => regionFrom('M0 0h10')).toThrow('"h" is not one of');
  });
});

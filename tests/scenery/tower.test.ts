import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { tower } from '../../src/scenery/tower.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const FORMS = ['church', 'castle', 'lighthouse'];
/** A tower alone, and one with room for what stands beside it. */
const alone = plotAt('sill', { width: 24, height: 70, smallestWeb: 1, smallestHole: 1 });
const wide = plotAt('sill', { width: 130, height: 60, smallestWeb: 1, smallestHole: 1 });

const widthAt = (body: ReturnType<typeof grown>['body'], y: number): number => {
  const { minX, maxX } = regionBounds(intersect(body, rectangle(-100, y, 200, 0.4)));
  return maxX - minX;
};

describe('tower', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(tower, 50, expectFitToCut);
  }, 90000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(tower, plotWith('rectangle', { width: 50, height: 70 }));
  });

  it('keeps its scores 1.5 mm clear of the cut, and reaches its height', () => {
    for (const form of FORMS) {
      const { body, holes, scores } = grown(tower, alone, { form, coverage: 1 });
      expect(scores.length).toBeGreaterThan(20);
      const card = { contours: [...body.contours, ...holes.contours] };
      expect(clearance(scores, card)).toBeGreaterThan(1.48);
      expect(regionBounds(body).minY).toBeCloseTo(-70, 0);
    }
  });

  it('ends in a spire, in battlements or in a lantern', () => {
    const church = grown(tower, alone, { form: 'church' }).body;
    expect(widthAt(church, -66)).toBeLessThan(0.3 * widthAt(church, -30));
    const castle = grown(tower, alone, { form: 'castle' }).body;
    // Merlons: the top is in several pieces, and as wide as the corbels.
    const top = intersect(castle, rectangle(-30, -69.5, 60, 0.4));
    expect(top.contours.length).toBeGreaterThan(2);
    expect(widthAt(castle, -69)).toBeGreaterThan(1.1 * widthAt(castle, -40));
    const light = grown(tower, alone, { form: 'lighthouse' }).body;
    expect(widthAt(light, -70 * 0.745)).toBeGreaterThan(1.2 * widthAt(light, -70 * 0.68));
    expect(widthAt(light, -20)).toBeGreaterThan(widthAt(light, -45) + 1);
  });

  it('has merlons and gaps of like width', () => {
    // Common practice, no source: a gap is no wider than a merlon.
    const { body } = grown(tower, alone, { form: 'castle', girth: 0.6 });
    const { contours } = intersect(body, rectangle(-30, -69.5, 60, 0.4));
    const spans = contours
      .map((c) => regionBounds({ contours: [c] }))
      .sort((a, b) => a.minX - b.minX);
    const merlon = spans[0].maxX - spans[0].minX;
    spans.slice(1).forEach((s, i) => {
      expect(s.maxX - s.minX).toBeCloseTo(merlon, 6);
      expect(s.minX - spans[i].maxX).toBeLessThan(1.05 * merlon);
    });
  });

  it('stands with a nave, curtain walls or a rock where there is room', () => {
    for (const form of FORMS) {
      const low = (plot: typeof wide) => {
        const { body } = grown(tower, plot, { form });
        return regionBounds(intersect(body, rectangle(-100, -2, 200, 2)));
      };
      const { minX, maxX } = low(wide);
      expect(maxX - minX).toBeGreaterThan(60);
      expect(low(alone).maxX - low(alone).minX).toBeLessThan(25);
    }
  });

  it('is stouter with more girth', () => {
    for (const form of FORMS) {
      const at = (girth: number) =>
        widthAt(grown(tower, { ...alone, width: 60 }, { form, girth }).body, -37);
      expect(at(1)).toBeGreaterThan(1.3 * at(0));
    }
  });

  it('has its openings cut when it is lit, and scored when not', () => {
    for (const form of FORMS) {
      const lit = grown(tower, alone, { form, lit: true, coverage: 0 });
      const dark = grown(tower, alone, { form, lit: false, coverage: 0 });
      // A belfry has two, whatever else there is.
      expect(lit.holes.contours.length).toBeGreaterThanOrEqual(2);
      expect(regionArea(lit.holes)).toBeGreaterThan(5);
      expect(dark.holes.contours).toEqual([]);
      expect(dark.scores.length).toBeGreaterThan(lit.scores.length);
    }
  });

  it('draws more joints with more coverage', () => {
    for (const form of FORMS) {
      const scores = (coverage: number) => grown(tower, wide, { form, coverage }).scores.length;
      // Half of a lighthouse is painted, and shows none.
      expect(scores(1)).toBeGreaterThan(1.25 * scores(0));
    }
  });
});

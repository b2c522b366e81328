import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { moon } from '../../src/scenery/moon.js';
import { eachDraw, expectDrawFitToCut, expectFitToCut } from './each-draw.js';
import { cardWith, clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const head = (changes = {}) => plotWith('rectangle', { side: 'head', height: 55, ...changes });

describe('moon', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(moon, 50, expectFitToCut);
  }, 240000);

  it('stands over its bank however flat and broad its room', () => {
    for (const n of [582, 777]) {
      expectDrawFitToCut(moon, n);
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(moon, head());
  });

  it('runs its cloud to both jambs where it is as wide as the window', () => {
    for (const form of ['moon', 'crescent', 'sun']) {
      for (let seed = 0; seed < 5; seed++) {
        const growth = grown(moon, head(), { form, held: 'cloud' }, seed);
        const { minX, maxX } = regionBounds(growth.body);
        expect(minX).toBeLessThan(-50);
        expect(maxX).toBeGreaterThan(50);
        expect(components(cardWith(head(), growth))).toHaveLength(1);
      }
    }
  });

  it('hangs by its cloud from jamb to jamb over a sill', () => {
    const draw = expectDrawFitToCut(moon, 626);
    expect(regionBounds(draw.growth.body).maxY).toBeLessThan(0);
  });

  it('lets a crescent grow with its thickness, and never to a full moon', () => {
    const area = (given: object) =>
      regionArea(grown(moon, head(), { held: 'edge', ...given }).body);
    const crescent = (thickness: number) => area({ form: 'crescent', thickness });
    expect(crescent(0.5)).toBeGreaterThan(1.2 * crescent(0.25));
    expect(crescent(0.6)).toBeLessThan(area({ form: 'moon' }));
  });

  it('has as many free rays as asked, less those that run into the frame', () => {
    const plot = head({ side: 'sill', height: 60, smallestWeb: 1, smallestHole: 1 });
    const tips = (rays: number) => {
      const growth = grown(moon, plot, { form: 'sun', held: 'stays', rays });
      const { minX, maxX } = regionBounds(growth.body);
      const reach = 30;
      let inside = 0;
      // Goes round the sun just outside the short rays' ends and counts the long ones crossed.
      let was = containsPoint(growth.body, { x: 0.78 * reach, y: -35 });
      for (let deg = 1; deg <= 360; deg++) {
        const a = (deg * Math.PI) / 180;
        const at = {
          x: 0.85 * 0.42 * 60 * Math.cos(a),
          y: -(60 - 0.42 * 60) + 0.85 * 0.42 * 60 * Math.sin(a),
        };
        const is = containsPoint(growth.body, at);
        if (is && !was) inside++;
        was = is;
      }
      expect(maxX - minX).toBeGreaterThan(40);
      return inside;
    };
    expect(tips(24)).toBeGreaterThan(tips(12));
  });

  it('scores or sinks craters, clear of the cut, or leaves them out', () => {
    const work = (relief: string) => grown(moon, head(), { held: 'stays', relief });
    expect(work('plain').scores).toHaveLength(0);
    expect(work('plain').reliefs).toHaveLength(0);
    expect(work('embossed').reliefs.length).toBeGreaterThan(0);
    const { scores, body, holes } = work('scored');
    expect(scores.length).toBeGreaterThan(1);
    expect(clearance(scores, subtract(body, [holes]))).toBeGreaterThanOrEqual(1.48);
  });
});

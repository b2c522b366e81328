import { describe, expect, it } from 'vitest';
import { hillsOf } from '../../src/scenery/hills/crests.js';
import { hills } from '../../src/scenery/hills.js';
import { randomFrom } from '../../src/scenery/random.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

describe('hills', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(hills, 50, expectFitToCut);
  }, 60000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(hills, plotWith('rectangle', { side: hills.defaultSide }));
  });

  it('has no two crests parallel', () => {
    for (let seed = 0; seed < 30; seed++) {
      const all = hillsOf(plotWith('rectangle'), 3, 0.5, randomFrom(seed));
      const slopes = all.map(({ levelAt }) =>
        Array.from({ length: 10 }, (_, k) => {
          const rise = levelAt(-32 + 8 * k) - levelAt(-40 + 8 * k);
          return (Math.atan(rise / 8) * 180) / Math.PI;
        }),
      );
      for (const [a, b] of [
        [0, 1],
        [1, 2],
        [0, 2],
      ]) {
        const apart = slopes[a].reduce((sum, d, k) => sum + Math.abs(d - slopes[b][k]), 0) / 10;
        expect(apart, `seed ${seed}`).toBeGreaterThan(5);
      }
    }
  });

  it('scores fields and near crests only when asked', () => {
    const lines = (given: object) =>
      grown(hills, plotWith('rectangle'), { ...given }).scores.length;
    expect(lines({ fields: 0, nearCrests: false })).toBe(0);
    expect(lines({ fields: 0, crests: 1 })).toBe(0);
    expect(lines({ fields: 0, crests: 2 })).toBeGreaterThan(0);
    expect(lines({ fields: 1 })).toBeGreaterThan(lines({ fields: 0.2 }));
  });
});

import { describe, expect, it } from 'vitest';
import { rocks } from '../../src/scenery/rocks.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

describe('rocks', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(rocks, 50, expectFitToCut);
  }, 60000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(rocks, plotWith('rectangle', { height: 20 }));
  });

  it('scores more when planes are asked for', () => {
    const lines = (planes: number) =>
      grown(rocks, plotWith('rectangle', { height: 30, width: 70 }), { planes }).scores.length;
    expect(lines(1)).toBeGreaterThan(lines(0));
  });
});

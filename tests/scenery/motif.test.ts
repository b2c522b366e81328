import { beforeAll, describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { lineLength, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { type ImportedDrawing, importSvg } from '../../src/geometry/svg/import.js';
import { motif } from '../../src/scenery/motif.js';
import { grown, plotWith } from './plots.js';

/** A heron as a child draws one: two legs 10 mm apart, a body with an eye, a wing line. */
const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="60mm" viewBox="0 0 40 60">
  <g id="bird">
    <rect id="leg-1" x="12" y="30" width="3" height="30"/>
    <rect id="leg-2" x="25" y="30" width="3" height="30"/>
    <rect id="body" x="5" y="5" width="30" height="30"/>
    <rect id="eye" x="10" y="10" width="5" height="5" fill="#ffffff"/>
  </g>
  <path id="wing" class="detail" d="M12 25H30" fill="none" stroke="#0000ff" stroke-width="1"/>
</svg>`;

let drawing: ImportedDrawing;
beforeAll(async () => {
  drawing = await importSvg(SVG);
});

const draw = (given: Record<string, number | string | boolean> = {}, size = {}) =>
  grown(motif, plotWith('rectangle', { width: 60, height: 55, root: 8, drawing, ...size }), given);
const card = (growth: ReturnType<typeof draw>) => subtract(growth.body, [growth.holes]);
const areaOf = (given: Record<string, number | string | boolean>) => regionArea(card(draw(given)));

describe('a drawing of the maker’s own', () => {
  it('is fitted into its box in its own proportions, its foot on the ground', () => {
    const { minX, maxX, minY, maxY } = regionBounds(draw({ rooted: false }).body);
    expect([minX, maxX]).toEqual([expect.closeTo(-15, 6), expect.closeTo(15, 6)]);
    expect([minY, maxY]).toEqual([expect.closeTo(-55, 6), expect.closeTo(0, 6)]);
  });

  it('is rooted by each of its feet', () => {
    const { body } = draw();
    expect(regionBounds(body).maxY).toBeCloseTo(8, 6);
    expect(regionArea(body)).toBeCloseTo(regionArea(draw({ rooted: false }).body) + 2 * 3 * 8, 3);
  });

  it('cuts out what is white and scores what is only stroked', () => {
    const { holes, scores } = draw();
    expect(regionArea(holes)).toBeCloseTo(25, 3);
    expect(scores).toHaveLength(1);
    expect(lineLength(scores[0])).toBeCloseTo(18, 3);
  });

  it('makes strokes into card of the width asked for', () => {
    const { scores, body } = draw({ outline: 2, keep: 'wing', rooted: false });
    expect(scores).toEqual([]);
    const box = regionBounds(body);
    // The line alone fills the box: 18 mm long and 2 mm wide, ends round.
    expect((box.maxX - box.minX) / (box.maxY - box.minY)).toBeGreaterThan(5);
  });

  it('keeps and erases by id, class, group, colour and zone', () => {
    const whole = areaOf({ rooted: false });
    expect(areaOf({ rooted: false, erase: 'leg-1' })).toBeLessThan(whole - 70);
    expect(areaOf({ rooted: false, keep: 'body' })).toBeGreaterThan(0);
    expect(draw({ keep: 'bird' }).scores).toEqual([]);
    expect(draw({ erase: 'detail' }).scores).toEqual([]);
    expect(draw({ erase: '#00f' }).scores).toEqual([]);
    expect(areaOf({ rooted: false, erase: 'left half', pierced: 'none' })).toBeCloseTo(
      areaOf({ rooted: false, pierced: 'none' }) / 2,
      3,
    );
  });

  it('scores and raises what is named', () => {
    expect(draw({ scored: 'eye' }).scores.length).toBeGreaterThan(1);
    const { reliefs, holes } = draw({ raised: 'eye' });
    expect(holes.contours).toEqual([]);
    expect(regionArea(reliefs[0].region)).toBeCloseTo(25, 3);
  });

  it('turns the side named as its foot down', () => {
    const { minX, maxX, minY } = regionBounds(draw({ foot: 'left', rooted: false }).body);
    // 55 x 30 mm, turned to 55 wide.
    expect((maxX - minX) / -minY).toBeCloseTo(55 / 30, 3);
  });

  it('is drawn with fewer curves when it may be moved a little', async () => {
    const wavy = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">
      <path d="M2 38 ${Array.from({ length: 120 }, (_, i) => `L${2 + i * 0.3} ${20 - 12 * Math.sin(i / 20)}`).join(' ')} L38 38 Z"/></svg>`;
    const rough = await importSvg(wavy);
    const nodes = (simplify: number) =>
      draw({ simplify, rooted: false }, { drawing: rough }).body.contours[0].length;
    expect(nodes(0.2)).toBeLessThan(nodes(0) / 4);
  });

  it('draws nothing without a file', () => {
    const none = grown(motif, plotWith('rectangle'), {});
    expect(none.body.contours).toEqual([]);
  });
});

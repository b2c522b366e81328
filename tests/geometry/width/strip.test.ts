import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean/boolean.js';
import { regionArea } from '../../../src/geometry/measure.js';
import { stroke } from '../../../src/geometry/offset/offset.js';
import { smoothLine } from '../../../src/geometry/pen.js';
import { rectangle } from '../../../src/geometry/primitives.js';
import type { Region } from '../../../src/geometry/types.js';
import { stripsAlongNecks } from '../../../src/geometry/width/strip.js';
import { narrowWebs } from '../../../src/geometry/width/webs.js';

const blocks = [rectangle(-10, -10, 20, 20), rectangle(40, -10, 20, 20)];
const bar = rectangle(5, -0.4, 40, 0.8);
const bow = stroke(
  [
    smoothLine([
      { x: 5, y: 0 },
      { x: 25, y: 8 },
      { x: 45, y: 0 },
    ]),
  ],
  0.8,
);

const thickened = (region: Region, widthMm: number): Region =>
  union([region, ...stripsAlongNecks(region, widthMm)]);

describe('a strip along a neck', () => {
  it.each([
    ['straight', bar],
    ['bowed', bow],
  ])('makes it wide enough all along, be it %s, in one go', (_, neck) => {
    const drawn = union([...blocks, neck]);
    expect(narrowWebs(drawn, 2)).toHaveLength(1);
    expect(narrowWebs(thickened(drawn, 2), 2)).toEqual([]);
  });

  it('adds no more than that', () => {
    const drawn = union([...blocks, bar]);
    const added = regionArea(thickened(drawn, 2)) - regionArea(drawn);
    // Between the blocks it grows from 0.8 to 2.08 mm; the rest lies in them.
    expect(added / (30 * 1.28)).toBeCloseTo(1, 1);
  });
});

import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { regionArea } from '../../src/geometry/measure.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import type { Region } from '../../src/geometry/types.js';
import { narrowestWeb, narrowWebs } from '../../src/geometry/width/webs.js';
import { braceWebs } from '../../src/panel/brace.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';

const LIMITS = PROCESS_LIMITS.knife;
const WINDOW = rectangle(20, 20, 100, 80);
const FRAME = subtract(rectangle(0, 0, 140, 120), [WINDOW]);
const necks = (card: Region) =>
  narrowWebs(card, LIMITS.smallestWeb).filter((web) => web.kind === 'neck');

describe('bracing', () => {
  it('thickens a strip that is too narrow, all along, to what the process holds', () => {
    const card = union([FRAME, rectangle(19, 60, 30, 0.6), circle(52, 60, 6)]);
    expect(necks(card)[0].widthMm).toBeCloseTo(0.6, 2);
    const { card: braced, braces } = braceWebs(card, WINDOW, LIMITS);
    expect(braces).toHaveLength(1);
    expect(braces[0].widthMm).toBeCloseTo(0.6, 2);
    expect(necks(braced)).toEqual([]);
    // The strip is free over 26 mm; no more than that was filled up to about 1.56 mm.
    const added = regionArea(braced) - regionArea(card);
    expect(added).toBeGreaterThan(26 * 0.85);
    expect(added).toBeLessThan(28 * 1.1);
  });

  it('braces a point where two bodies just touch', () => {
    const card = union([FRAME, rectangle(19, 50, 21, 20), circle(45.99, 60, 6)]);
    const { card: braced } = braceWebs(card, WINDOW, LIMITS);
    expect(narrowestWeb(braced, 3)?.widthMm ?? 3).toBeGreaterThan(LIMITS.smallestWeb - 0.01);
  });

  it('leaves sound card as it is, and never touches what lies outside the window', () => {
    const sound = union([FRAME, rectangle(19, 60, 30, 2)]);
    expect(braceWebs(sound, WINDOW, LIMITS).card).toBe(sound);
    const thin = union([FRAME, rectangle(19, 60, 60, 0.4), circle(80, 60, 6)]);
    const { card } = braceWebs(thin, WINDOW, LIMITS);
    const outside = (c: Region) => regionArea(subtract(c, [WINDOW]));
    expect(outside(card)).toBeCloseTo(outside(thin), 3);
  });
});

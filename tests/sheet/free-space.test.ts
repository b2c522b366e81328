import { describe, expect, it } from 'vitest';
import { findRoom, nearestTop, take, tightest } from '../../src/sheet/free-space.js';

const sheet = { x: 0, y: 0, width: 100, height: 60 };

describe('free space', () => {
  it('holds a box of exactly its size and none larger', () => {
    expect(findRoom([sheet], 100, 60, nearestTop)).toEqual(sheet);
    expect(findRoom([sheet], 101, 60, nearestTop)).toBeNull();
    expect(findRoom([sheet], 100, 61, nearestTop)).toBeNull();
  });

  it('leaves the largest rectangles beside and below what is taken', () => {
    const free = take([sheet], { x: 0, y: 0, width: 40, height: 20 });
    expect(free).toHaveLength(2);
    expect(free).toContainEqual({ x: 0, y: 20, width: 100, height: 40 });
    expect(free).toContainEqual({ x: 40, y: 0, width: 60, height: 60 });
  });

  it('splits on all four sides round a box in the middle', () => {
    const free = take([sheet], { x: 40, y: 20, width: 20, height: 20 });
    const areas = free.map((b) => b.width * b.height).sort((a, b) => a - b);
    expect(areas).toEqual([2000, 2000, 2400, 2400]);
  });

  it('is empty when all is taken', () => {
    expect(take([sheet], sheet)).toEqual([]);
  });

  it('keeps one of two equal rectangles', () => {
    expect(take([sheet, sheet], { x: 0, y: 0, width: 100, height: 10 })).toEqual([
      { x: 0, y: 10, width: 100, height: 50 },
    ]);
  });

  it('prefers the top, or the tightest room', () => {
    const free = [
      { x: 0, y: 40, width: 21, height: 11 },
      { x: 50, y: 0, width: 50, height: 60 },
    ];
    expect(findRoom(free, 20, 10, nearestTop)).toMatchObject({ x: 50, y: 0 });
    expect(findRoom(free, 20, 10, tightest)).toMatchObject({ x: 0, y: 40 });
  });
});

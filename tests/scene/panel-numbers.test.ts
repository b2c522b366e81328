import { describe, expect, it } from 'vitest';
import { readPanels } from '../../src/scene/panel-numbers.js';

describe('readPanels', () => {
  it.each([
    ['all', [1, 2, 3, 4, 5]],
    ['front', [1]],
    ['backdrop', [6]],
    ['2 to 4', [2, 3, 4]],
    ['3 to 3', [3]],
    [4, [4]],
    [
      [5, 1, 5],
      [1, 5],
    ],
  ])('reads %j in a book of six', (said, panels) => {
    expect(readPanels(said, 6)).toEqual({ value: panels });
  });

  it.each([
    [9, /panel 9 is not in this book; its panels are 1 \(front\) to 6 \(backdrop\)/],
    [0, /panel 0 is not in this book/],
    [[1, 7], /panel 7/],
    ['5 to 9', /panel 9/],
    ['0 to 2', /panel 0/],
    ['1 to 999999999', /panel 999999999/],
    ['4 to 2', /runs backwards; say "2 to 4"/],
    ['backdop', /did you mean "backdrop"/],
    ['2-4', /"2 to 4"/],
    [[], /empty list/],
  ])('refuses %j', (said, message) => {
    expect(readPanels(said, 6)).toEqual({ problem: expect.stringMatching(message) });
  });
});

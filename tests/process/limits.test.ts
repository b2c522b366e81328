import { describe, expect, it } from 'vitest';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import { PROCESSES } from '../../src/scene/scene.js';

describe('PROCESS_LIMITS', () => {
  it('has the customary smallest webs and holes', () => {
    // Common practice, no source.
    expect(PROCESSES.map((p) => PROCESS_LIMITS[p].smallestWeb)).toEqual([1.5, 1, 3]);
    expect(PROCESSES.map((p) => PROCESS_LIMITS[p].smallestHole)).toEqual([2, 1, 3]);
  });

  it('never asks for a slot wider than a hole, which is the harder of the two', () => {
    for (const p of PROCESSES) {
      expect(PROCESS_LIMITS[p].smallestSlot).toBeGreaterThan(0);
      expect(PROCESS_LIMITS[p].smallestSlot).toBeLessThanOrEqual(PROCESS_LIMITS[p].smallestHole);
    }
  });

  it('keeps scores 1.5 to 2 mm from a cut', () => {
    // Common practice, no source.
    for (const p of PROCESSES) {
      expect(PROCESS_LIMITS[p].scoreClearance).toBeGreaterThanOrEqual(1.5);
      expect(PROCESS_LIMITS[p].scoreClearance).toBeLessThanOrEqual(2);
    }
  });
});

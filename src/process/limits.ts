import type { ProcessLimits, ProcessName } from '../scene/scene.js';

/**
 * Starting values in mm, common practice, no source: a trial card on the maker's own machine
 * overrules them. Lower values give finer scenery and more spoiled card; higher ones the reverse.
 */
export const PROCESS_LIMITS: Readonly<Record<ProcessName, ProcessLimits>> = {
  // A drag knife swings its tip round corners and pulls at slivers of waste.
  knife: { smallestWeb: 1.5, smallestSlot: 1, smallestHole: 2, scoreClearance: 1.5 },
  // A slot may be a single line, as wide as the beam burns.
  laser: { smallestWeb: 1, smallestSlot: 0.2, smallestHole: 1, scoreClearance: 1.5 },
  // The rules of a die need room for themselves and for the foam that pushes the waste out.
  press: { smallestWeb: 3, smallestSlot: 3, smallestHole: 3, scoreClearance: 2 },
};

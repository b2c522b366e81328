import type { ProcessName } from '../scene/scene.js';
import { PROCESS_LIMITS } from './limits.js';
import type { Nibs, Process, ProcessBase, Rates } from './process.js';

const NO_RATES: Rates = { currency: '', setUp: 0, hour: 0, sheet: 0, quantities: [1, 6, 12] };
const NO_NIBS: Nibs = { count: 0, widthMm: 0.5 };

/** Relief wants a soft underlay and comes first; folds while the card still lies in its sheet. */
const RELIEF_FIRST: ProcessBase['order'] = ['emboss', 'fold', 'detail', 'cut'];

const at = (speedMmS: number) => ({ passes: 1, speedMmS, stroke: null });

/** The same for every machine. */
const COMMON = {
  faces: ['front', 'back'],
  order: RELIEF_FIRST,
  folds: { how: 'line' },
  rates: NO_RATES,
} as const satisfies Partial<ProcessBase>;

/**
 * What holds until a trial card on the maker's own machine overrules it. All values are common
 * practice, no source.
 */
export const STARTING: { readonly [K in ProcessName]: Extract<Process, { kind: K }> } = {
  knife: {
    ...COMMON,
    kind: 'knife',
    name: 'knife',
    limits: PROCESS_LIMITS.knife,
    bed: { widthMm: 305, heightMm: 305, marginMm: 2, origin: 'top left' },
    operations: { emboss: at(40), fold: at(60), detail: at(60), cut: at(40) },
    motion: {
      travelMmS: 150,
      accelerationMmS2: 800,
      liftS: 0.15,
      cornerMm: 0.02,
      stopS: 90,
    },
    // Waste and parts stick to the mat.
    nibs: NO_NIBS,
    blade: { offsetMm: 0.25, overcutMm: 0.5, compensate: false },
    relief: { how: 'rings', angleDeg: 45, apartBalls: 0.8 },
  },
  laser: {
    ...COMMON,
    kind: 'laser',
    name: 'laser',
    limits: PROCESS_LIMITS.laser,
    bed: { widthMm: 600, heightMm: 400, marginMm: 2, origin: 'top left' },
    operations: { emboss: at(200), fold: at(80), detail: at(100), cut: at(25) },
    motion: {
      travelMmS: 300,
      accelerationMmS2: 2500,
      liftS: 0.02,
      cornerMm: 0.01,
      stopS: 60,
    },
    nibs: { count: 2, widthMm: 0.4 },
    kerfMm: 0.2,
    sharedEdges: false,
    faceDown: false,
    relief: { how: 'hatch', angleDeg: 45, apartMm: 0.4 },
    heat: { apartMm: 3, densestPerMm: 1 },
  },
  press: {
    ...COMMON,
    kind: 'press',
    name: 'press',
    limits: PROCESS_LIMITS.press,
    bed: { widthMm: 320, heightMm: 900, marginMm: 5, origin: 'top left' },
    operations: { emboss: at(20), fold: at(20), detail: at(20), cut: at(10) },
    motion: { travelMmS: 100, accelerationMmS2: 500, liftS: 1, cornerMm: 0.05, stopS: 120 },
    nibs: NO_NIBS,
  },
};

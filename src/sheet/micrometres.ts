/**
 * Packing counts in whole micrometres, the finest step written to files: a card that exactly fits
 * fits, and a move by whole steps keeps every piece's own figures.
 */
export const MICROMETRES_PER_MM = 1000;

/** Rounding noise of doubles, in micrometres: far below what any cutter can place. */
const NOISE = 0.01;

export const floorMicrometres = (mm: number): number => Math.floor(mm * MICROMETRES_PER_MM + NOISE);

export const ceilMicrometres = (mm: number): number => Math.ceil(mm * MICROMETRES_PER_MM - NOISE);

/**
 * Outlines are reckoned in fine units, so many to a micrometre, which leaves room on both sides of a
 * place that fits exactly.
 */
export const FINE = 10;

/** Two things may come so much nearer while places are reckoned; rounding to whole micrometres mends it. */
export const EASE = 4;

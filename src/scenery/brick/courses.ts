/**
 * Brick bonds as a bricklayer sets them out. Every bond here is built on the quarter brick: a
 * stretcher is four quarters long on the wall, a header two, a queen closer one, a three-quarter
 * bat three (each with its joint).
 *
 * Sizes: BS EN 771-1 and BS 4729 (215 x 102.5 x 65 work size, 10 joint); laps follow from them.
 */
export interface BrickFormat {
  /** Work sizes in mm: what lies in the wall, without joints. */
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Upright joint between two bricks of a course, and level joint between two courses. */
  readonly perpend: number;
  readonly bed: number;
}

export const UK_BRICK: BrickFormat = {
  length: 215,
  width: 102.5,
  height: 65,
  perpend: 10,
  bed: 10,
};

export const BONDS = ['stretcher', 'english', 'flemish', 'header'] as const;
export type Bond = (typeof BONDS)[number];

export type BrickKind = 'stretcher' | 'bat' | 'header' | 'closer';

/** One brick of a course on the quarter grid: it fills from <= q < to, its joint included. */
export interface Unit {
  readonly kind: BrickKind;
  readonly from: number;
  readonly to: number;
}

/** A brick's face in the wall, mm, from its top left corner; course 0 is the lowest. */
export interface Brick {
  readonly kind: BrickKind;
  readonly course: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const KIND_OF_QUARTERS: Record<number, BrickKind> = {
  1: 'closer',
  2: 'header',
  3: 'bat',
  4: 'stretcher',
};

/** Wall lengths, in quarters, that a bond fills from quoin to quoin without cutting a brick. */
const FITS: Record<Bond, (quarters: number) => boolean> = {
  stretcher: (q) => q >= 2 && q % 2 === 0,
  english: (q) => q >= 7 && (q % 4 === 0 || q % 4 === 3),
  flemish: (q) => q >= 7 && q % 3 === 1,
  header: (q) => q >= 6 && q % 2 === 0,
};

export const fitsBond = (bond: Bond, quarters: number): boolean => FITS[bond](quarters);

/** The length in whole quarters nearest to `wanted` that the bond fills. */
export function fittingQuarters(bond: Bond, wanted: number): number {
  const start = Math.max(2, Math.round(wanted));
  for (let off = 0; ; off++) {
    const near = wanted >= start ? [start + off, start - off] : [start - off, start + off];
    for (const q of near) if (fitsBond(bond, q)) return q;
  }
}

/**
 * One course of a wall `quarters` long, quoin to quoin. Even courses start with a stretcher, odd
 * ones with a header and its queen closer (in header bond: with a header, with a three-quarter
 * bat). Throws a RangeError where the bond does not fit the length: see `fittingQuarters`.
 */
export function courseUnits(bond: Bond, quarters: number, course: number): Unit[] {
  if (!fitsBond(bond, quarters)) {
    const near = fittingQuarters(bond, quarters);
    throw new RangeError(
      `A wall ${quarters} quarter bricks long does not fit ${bond} bond; ${near} would.`,
    );
  }
  const units: Unit[] = [];
  let from = 0;
  for (const size of sizes(bond, quarters, course % 2 !== 0)) {
    units.push({ kind: KIND_OF_QUARTERS[size], from, to: from + size });
    from += size;
  }
  return units;
}

function sizes(bond: Bond, quarters: number, odd: boolean): number[] {
  const start = odd ? [2, 1] : [];
  switch (bond) {
    case 'stretcher':
      return filled(quarters, odd ? [2] : [], [4], (quarters - (odd ? 2 : 0)) % 4 === 2 ? [2] : []);
    case 'header':
      return odd ? filled(quarters, [3], [2], [3]) : filled(quarters, [], [2], []);
    case 'english':
      if (odd) return filled(quarters, start, [2], quarters % 4 === 0 ? [1, 2] : [4]);
      return filled(quarters, start, [4], quarters % 4 === 0 ? [] : [1, 2]);
    case 'flemish': {
      const whole = quarters % 6 === 4;
      return filled(quarters, start, [4, 2], whole === odd ? [4, 1, 2] : [4]);
    }
  }
}

/** `start`, as many whole cycles as fit, `end`. */
function filled(quarters: number, start: number[], cycle: number[], end: number[]): number[] {
  const sum = (list: number[]) => list.reduce((a, b) => a + b, 0);
  const times = (quarters - sum(start) - sum(end)) / sum(cycle);
  return [...start, ...Array.from({ length: times }, () => cycle).flat(), ...end];
}

/**
 * A plain wall, its foot on y = 0 and its left quoin at x = 0, y negative upward: the faces of all
 * bricks, joints left free between them. The wall is `quarters` quarter bricks long, less one
 * perpend. Throws a RangeError where the bond does not fit the length.
 */
export function layCourses(wall: {
  readonly bond: Bond;
  readonly quarters: number;
  readonly courses: number;
  readonly format?: BrickFormat;
}): Brick[] {
  const format = wall.format ?? UK_BRICK;
  const quarter = (format.length + format.perpend) / 4;
  const gauge = format.height + format.bed;
  const bricks: Brick[] = [];
  for (let course = 0; course < wall.courses; course++) {
    for (const { kind, from, to } of courseUnits(wall.bond, wall.quarters, course)) {
      bricks.push({
        kind,
        course,
        x: from * quarter,
        y: -course * gauge - format.height,
        width: (to - from) * quarter - format.perpend,
        height: format.height,
      });
    }
  }
  return bricks;
}

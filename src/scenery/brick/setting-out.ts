import type { Bounds } from '../../geometry/types.js';
import { type Cell, courseCells, type Gauge, wallCells } from './cells.js';
import { type Bond, courseUnits, fitsBond, fittingQuarters } from './courses.js';
import type { Opening } from './opening.js';

/** A pier whose bond would stretch its bricks by more than this share is laid in stretchers. */
const LARGEST_STRETCH = 0.2;

interface Pier {
  readonly bond: Bond;
  readonly quarters: number;
}

/**
 * The wall that fills the card round an opening, set out as on site: the piers and the span
 * between them are each a whole number of quarter bricks, so that perpends are plumb from the sill
 * to the head and both edges of the opening get true quoins; courses gauge with sill and head.
 */
export function setOut(
  card: Bounds,
  opening: Opening | null,
  bond: Bond,
  courseMm: number,
): Cell[] {
  return opening ? walledRound(card, opening, bond, courseMm) : plainWall(card, bond, courseMm);
}

/** A quarter brick and its joint are three quarters of a course high (225 / 4 to 75). */
const quarterOf = (courseMm: number): number => (courseMm * 3) / 4;

function plainWall(card: Bounds, bond: Bond, courseMm: number): Cell[] {
  const height = card.maxY - card.minY;
  const courses = Math.max(1, Math.round(height / courseMm));
  const wall = {
    x0: card.minX,
    x1: card.maxX,
    foot: card.maxY,
    courses,
    courseMm: height / courses,
  };
  return wallCells(bond, wall, 4 * quarterOf(courseMm));
}

function walledRound(card: Bounds, opening: Opening, bond: Bond, courseMm: number): Cell[] {
  const { bounds } = opening;
  const quarter = quarterOf(courseMm);
  const left = pierOf(bond, (bounds.minX - card.minX) / quarter);
  const right = pierOf(bond, (card.maxX - bounds.maxX) / quarter);
  const gauge = gaugeOf(card, bounds, left.quarters, right.quarters, bond, quarter);
  const leftGauge: Gauge = { quarters: left.quarters, at: gauge.at };
  const first = gauge.quarters - right.quarters;
  const rightGauge: Gauge = { quarters: right.quarters, at: (q) => gauge.at(first + q) };
  const split = opening.form !== 'round' && left.quarters > 0 && right.quarters > 0;

  const cells: Cell[] = [];
  for (const { course, top, bottom } of courses(card, bounds, courseMm)) {
    const beds = { top, bottom };
    const middle = (top + bottom) / 2;
    if (split && middle > opening.springing && middle < bounds.maxY) {
      const phase = matchingPhase(bond, gauge.quarters, right, course);
      cells.push(...courseCells(left.bond, leftGauge, course, beds));
      cells.push(...courseCells(right.bond, rightGauge, course, beds, phase));
    } else {
      cells.push(...courseCells(bond, gauge, course, beds));
    }
  }
  return cells;
}

function pierOf(bond: Bond, wanted: number): Pier {
  const quarters = fittingQuarters(bond, wanted);
  if (Math.abs(quarters - wanted) <= LARGEST_STRETCH * wanted) return { bond, quarters };
  return { bond: 'stretcher', quarters: fittingQuarters('stretcher', wanted) };
}

/** Quarters evenly spaced in each pier and in the span between. */
function gaugeOf(
  card: Bounds,
  window: Bounds,
  left: number,
  right: number,
  bond: Bond,
  quarter: number,
): Gauge {
  let span = Math.max(1, Math.round((window.maxX - window.minX) / quarter));
  while (!fitsBond(bond, left + span + right)) span++;
  const stops = [card.minX, window.minX, window.maxX, card.maxX];
  const marks = [0, left, left + span, left + span + right];
  return {
    quarters: marks[3],
    at: (q) => {
      const i = q <= marks[1] ? 0 : q <= marks[2] ? 1 : 2;
      const share = (q - marks[i]) / (marks[i + 1] - marks[i]);
      return stops[i] + (stops[i + 1] - stops[i]) * share;
    },
  };
}

/** Courses counted from the sill, so that they keep their place when the card grows. */
function* courses(card: Bounds, window: Bounds, courseMm: number) {
  const beside = Math.max(1, Math.round((window.maxY - window.minY) / courseMm));
  const height = (window.maxY - window.minY) / beside;
  const below = Math.ceil((card.maxY - window.maxY) / height);
  const above = Math.ceil((window.maxY - card.minY) / height);
  for (let course = -below; course < above; course++) {
    const bottom = window.maxY - course * height;
    yield { course, top: bottom - height, bottom };
  }
}

/** The right pier must end at the outer quoin as the whole courses above and below it do. */
function matchingPhase(bond: Bond, quarters: number, pier: Pier, course: number): number {
  const wanted = courseUnits(bond, quarters, course).at(-1)!.kind;
  return courseUnits(pier.bond, pier.quarters, course).at(-1)!.kind === wanted ? 0 : 1;
}

import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/types.js';
import { fieldOf } from '../../src/process/order/field.js';
import { shortTour } from '../../src/process/order.js';

// Two instances of the travelling salesman with their shortest closed tours: G. Reinelt, TSPLIB, a
// traveling salesman problem library, ORSA Journal on Computing 3 (1991), eil51 and berlin52.
// Places and lengths from memory; distances are rounded to whole numbers.

const EIL51 = `37 52 49 49 52 64 20 26 40 30 21 47 17 63 31 62 52 33 51 21 42 41 31 32 5 25 12 42 36 16
  52 41 27 23 17 33 13 13 57 58 62 42 42 57 16 57 8 52 7 38 27 68 30 48 43 67 58 48 58 27 37 69 38 46
  46 10 61 33 62 63 63 69 32 22 45 35 59 15 5 6 10 17 21 10 5 64 30 15 39 10 32 39 25 32 25 55 48 28
  56 37 30 40`;
const BERLIN52 = `565 575 25 185 345 750 945 685 845 655 880 660 25 230 525 1000 580 1175 650 1130
  1605 620 1220 580 1465 200 1530 5 845 680 725 370 145 665 415 635 510 875 560 365 300 465 520 585
  480 415 835 625 975 580 1215 245 1320 315 1250 400 660 180 410 250 420 555 575 665 1150 1160 700 580
  685 595 685 610 770 610 795 645 720 635 760 650 475 960 95 260 875 920 700 500 555 815 830 485
  1170 65 830 610 605 625 595 360 1340 725 1740 245`;

const INSTANCES = [
  { name: 'eil51', text: EIL51, count: 51, shortest: 426 },
  { name: 'berlin52', text: BERLIN52, count: 52, shortest: 7542 },
];

describe.each(INSTANCES)('$name', ({ text, count, shortest }) => {
  it('is toured within 2 % of its shortest tour', () => {
    const numbers = text.trim().split(/\s+/).map(Number);
    const places = numbers.flatMap((x, k) => (k % 2 === 0 ? [{ x, y: numbers[k + 1] }] : []));
    expect(places).toHaveLength(count);
    const tour = closedTour(places);
    expect([...tour].sort((a, b) => a - b)).toEqual(places.map((_, k) => k));
    const length = tour.reduce(
      (sum, place, k) => sum + rounded(places[place], places[tour[(k + 1) % count]]),
      0,
    );
    expect(length).toBeGreaterThanOrEqual(shortest);
    expect(length / shortest).toBeLessThan(1.02);
  });
});

const rounded = (a: Point, b: Point): number => Math.round(Math.hypot(b.x - a.x, b.y - a.y));

/** From the first place to all others, and back to it by a run that all others must come before. */
function closedTour(places: readonly Point[]): number[] {
  const [from, ...others] = places;
  const last = others.length;
  const runs = [...others, from].map((place) => ({
    ways: [{ entry: place, exit: place, first: 0, reversed: false, back: 0 }],
  }));
  const field = fieldOf(runs, {
    from,
    group: runs.map(() => 0),
    after: runs.map((_, run) => (run === last ? [] : [last])),
    clash: () => false,
  });
  const { order } = shortTour(field);
  expect(order.at(-1)).toBe(last);
  return [0, ...order.slice(0, -1).map((run) => run + 1)];
}

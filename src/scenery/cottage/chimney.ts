import type { Line, Region } from '../../geometry/types.js';
import { handCut, handDrawn } from '../brick/craft.js';
import type { Random } from '../random.js';
import { type Built, NOTHING, type Scale } from './plan.js';

const STACK_MM = 4.6;
const POT_MM = 2.6;
const POT_WIDE_MM = 1.9;
const CAP_MM = 1.3;
const OUT_MM = 0.55;

/** A brick stack from `foot` in the roof up to `top`, where its pots end. */
export function chimneyOf(
  house: Scale,
  x: number,
  foot: number,
  top: number,
  random: Random,
): Built {
  const { size, bar, plot } = house;
  const wide = Math.max(2 * bar, STACK_MM * size * random.between(0.92, 1.1));
  const pot = POT_MM * size;
  const cap = Math.max(bar * 0.85, CAP_MM * size);
  const head = top + pot;
  const solids: Region[] = [
    box(x - wide / 2, foot, x + wide / 2, head, 0.15, random.branch('stack')),
    box(x - wide / 2 - OUT_MM, head + cap, x + wide / 2 + OUT_MM, head, 0.1, random.branch('cap')),
  ];
  const potWide = Math.max(bar, POT_WIDE_MM * size);
  const two = wide + 2 * OUT_MM >= 2 * potWide + plot.smallestHole;
  const off = two ? (plot.smallestHole + potWide) / 2 : 0;
  for (const px of two ? [x - off, x + off] : [x + random.between(-0.2, 0.2) * size]) {
    const high = top + (two && px > x ? random.between(0, 0.5) * size : 0);
    solids.push(
      handCut(
        [
          { x: px - potWide / 2, y: head + 0.3 },
          { x: px - potWide * 0.46, y: high },
          { x: px + potWide * 0.46, y: high },
          { x: px + potWide / 2, y: head + 0.3 },
        ],
        0.1,
        random.branch(`pot ${px > x}`),
      ),
    );
  }
  return { ...NOTHING, solids, lines: bandLines(x, wide, head + cap, foot, size, random) };
}

/** A few courses of the stack: beds that do not cross it. */
function bandLines(
  x: number,
  wide: number,
  from: number,
  to: number,
  size: number,
  random: Random,
): Line[] {
  const lines: Line[] = [];
  let left = random.chance(0.5);
  for (let y = from + 0.5; y < to - 1; y += 1.7 * size) {
    const inner = x + (left ? 0.1 : -0.1) * wide;
    const outer = x + (left ? -0.5 : 0.5) * wide;
    lines.push(
      handDrawn(
        [
          { x: outer, y },
          { x: inner, y },
        ],
        0.08,
        random,
      ),
    );
    left = !left;
  }
  return lines;
}

const box = (
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  wander: number,
  random: Random,
): Region =>
  handCut(
    [
      { x: x0, y: y0 },
      { x: x0, y: y1 },
      { x: x1, y: y1 },
      { x: x1, y: y0 },
    ],
    wander,
    random,
  );

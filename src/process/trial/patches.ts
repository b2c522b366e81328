import { circle, rectangle, roundedRectangle } from '../../geometry/primitives.js';
import type { Stock } from '../../scene/scene.js';
import type { KnifeProcess, LaserProcess } from '../process.js';
import { CORNER_MM, label, pierced, type TrialCard, type TrialMeans, trialPiece } from './card.js';
import { middleOf } from './ladders.js';

// Rows of small cards that differ in one setting, which stands on each.

export const OVERCUTS_MM = [0, 0.25, 0.5, 0.75, 1];
export const OFFSETS_MM = [0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45];
export const BALLS_APART = [0.5, 0.75, 1, 1.25, 1.5];
export const LINES_APART_MM = [0.2, 0.3, 0.4, 0.6, 0.8];
/** About one caliper; common practice, no source. */
const DEPTH_MM = 0.3;

/** A card with a square hole; its label stands below. */
const windowed = (name: string, stock: Stock, value: number) =>
  trialPiece(
    `${name}-${value}`,
    stock,
    pierced(roundedRectangle(0, 0, 20, 28, CORNER_MM), [rectangle(5, 5, 10, 10)]),
    { scores: [...label(name, 10, 20), ...label(String(value), 10, 25)] },
  );

/** A card with a round patch of relief; its label stands below. */
const patched = (stock: Stock, value: number) =>
  trialPiece(`emboss-${value}`, stock, roundedRectangle(0, 0, 22, 33, CORNER_MM), {
    scores: [...label('emboss', 11, 25), ...label(String(value), 11, 30)],
    reliefs: [{ region: circle(11, 11, 8), side: 'sunk', depthMm: DEPTH_MM }],
  });

export function overcutCard({ stock }: TrialMeans, process: KnifeProcess): TrialCard {
  return {
    title: 'Overcut: where a cut closes',
    says: [
      'Square holes whose cuts run on past their start by the number under each, in mm.',
      'Push the squares out from behind. Enter the smallest number at which the square drops out without tearing the card, for example: overcut=0.5',
    ],
    pieces: OVERCUTS_MM.map((overcutMm) => ({
      piece: windowed('overcut', stock, overcutMm),
      process: { ...process, blade: { ...process.blade, overcutMm } },
    })),
  };
}

export function bladeCard({ stock }: TrialMeans, process: KnifeProcess): TrialCard {
  return {
    title: 'Blade: how far its tip trails',
    says: [
      'Square holes for which the blade is swung round the corners as if its tip trailed by the number under each, in mm. If your machine has a setting for this of its own, set that to 0 for this card.',
      'Look at the corners through a glass. Too small a number leaves them round, too large a one leaves ears. Enter the number under the squarest, for example: blade=0.3',
    ],
    pieces: OFFSETS_MM.map((offsetMm) => ({
      piece: windowed('blade', stock, offsetMm),
      process: { ...process, blade: { ...process.blade, offsetMm, compensate: true } },
    })),
  };
}

export function embossCard({ stock }: TrialMeans, process: KnifeProcess | LaserProcess): TrialCard {
  const unit = process.kind === 'knife' ? 'diameters of the ball' : 'mm';
  const values = process.kind === 'knife' ? BALLS_APART : LINES_APART_MM;
  return {
    title: 'Emboss: from stroke to stroke',
    says: [
      `Round patches filled as your settings say ("${process.relief.how}"), their strokes as far apart as the number under each, in ${unit}.`,
      `Enter the largest number whose patch still looks even, neither striped nor ${process.kind === 'laser' ? 'scorched' : 'torn'}, for example: emboss=${middleOf(values)}`,
    ],
    pieces: values.map((value) => ({
      piece: patched(stock, value),
      process: reliefApart(process, value),
    })),
  };
}

function reliefApart(process: KnifeProcess | LaserProcess, value: number) {
  return process.kind === 'knife'
    ? { ...process, relief: { ...process.relief, apartBalls: value } }
    : { ...process, relief: { ...process.relief, apartMm: value } };
}

/** Whether the fill of reliefs has a spacing at all. */
export const hasSpacing = ({ relief }: KnifeProcess | LaserProcess): boolean =>
  relief.how !== 'none' && relief.how !== 'outline';

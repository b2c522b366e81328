import { polyline } from '../../geometry/pen.js';
import { roundedRectangle } from '../../geometry/primitives.js';
import type { Score } from '../../panel/score.js';
import type { FoldStyle, KnifeProcess, LaserProcess } from '../process.js';
import { CORNER_MM, label, type TrialCard, type TrialMeans, trialPiece } from './card.js';

/** A way to make folds: a line gone over so often, or a perforation. */
export interface FoldTried {
  readonly passes: number;
  readonly folds: FoldStyle;
}

const line = (passes: number): FoldTried => ({ passes, folds: { how: 'line' } });
const perforated = (cutMm: number, tieMm: number): FoldTried => ({
  passes: 1,
  folds: { how: 'perforation', cutMm, tieMm },
});

/** In the order of the numbers on the strips, from 1. Common practice, no source. */
export const FOLDS_TRIED: readonly FoldTried[] = [
  line(1),
  line(2),
  line(3),
  perforated(1, 1),
  perforated(2, 1),
  perforated(3, 1),
];

const STRIP = { width: 24, height: 42 };

export function foldCard({ stock }: TrialMeans, process: KnifeProcess | LaserProcess): TrialCard {
  const card = roundedRectangle(0, 0, STRIP.width, STRIP.height, CORNER_MM);
  const middle = STRIP.width / 2;
  const fold = polyline([
    { x: middle, y: 0 },
    { x: middle, y: STRIP.height },
  ]);
  const pieces = FOLDS_TRIED.map(({ passes, folds }, i) => {
    const scores: Score[] = [
      ...label('fold', middle / 2, 8),
      ...label(String(i + 1), middle / 2, 13),
      { line: fold, kind: 'mountain' },
    ];
    return {
      piece: trialPiece(`fold-${i + 1}`, stock, card, { scores }),
      process: { ...process, folds },
      foldPasses: passes,
    };
  });
  const strength = process.kind === 'laser' ? 'power' : 'force';
  return {
    title: 'Folds: strength of the score',
    says: [
      'Six strips, each with a fold along the grain: 1, 2 and 3 are a light line gone over once, twice, three times; 4, 5 and 6 are short cuts of 1, 2 and 3 mm with ties of 1 mm between.',
      `The ${strength} of the score itself is set on the machine: begin low. If none of 1 to 3 folds cleanly raise it, if all cut through lower it, and cut this card again.`,
      'Fold each away from you until flat, and back and forth five times. Enter the number of the first that folds straight, does not crack and does not come apart, for example: fold=2',
    ],
    pieces,
  };
}

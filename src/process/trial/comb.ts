import { rectangle } from '../../geometry/primitives.js';
import type { LaserProcess } from '../process.js';
import { label, type TrialCard, type TrialMeans, trialPiece } from './card.js';

export const STRIPS = 10;
export const STRIP_MM = 10;
const STRIP_LENGTH_MM = 60;
const APART_MM = 2;

/** Ten strips cut as drawn: what they lack together is ten times the kerf. */
export function combCard({ stock }: TrialMeans, process: LaserProcess): TrialCard {
  const left = (i: number) => i * (STRIP_MM + APART_MM);
  const each = Array.from({ length: STRIPS }, (_, i) => i);
  const card = {
    contours: each.flatMap((i) => rectangle(left(i), 0, STRIP_MM, STRIP_LENGTH_MM).contours),
  };
  const scores = each.flatMap((i) => label(String(i + 1), left(i) + STRIP_MM / 2, 9));
  return {
    title: 'Comb: the kerf',
    says: [
      `${STRIPS} strips, each drawn ${STRIP_MM} mm wide and cut exactly as drawn, without allowance for the kerf.`,
      `Lay them side by side in order, push them together without buckling and measure across all ${STRIPS}. Kerf = (${STRIPS} x ${STRIP_MM} mm - that sum) / ${STRIPS}; common practice, no source.`,
      'Enter the sum, for example: comb=98.4. All other cards are cut with allowance for the kerf: where it changed by more than 0.05 mm, write and cut them anew before you read them.',
    ],
    pieces: [
      {
        piece: trialPiece('comb', stock, card, { scores }),
        // A nib would leave a stub between the strips.
        process: { ...process, kerfMm: 0, sharedEdges: false, nibs: { ...process.nibs, count: 0 } },
      },
    ],
  };
}

/** Full width of what the beam burns away, from the width of all strips pushed together, mm. */
export const kerfFromComb = (sumMm: number): number => (STRIPS * STRIP_MM - sumMm) / STRIPS;

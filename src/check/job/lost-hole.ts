import { kerfPath } from '../../process/laser/kerf.js';
import { type Finding, rounded } from '../finding.js';
import { piecesOf } from './job-pieces.js';
import type { JobsRule } from './job-rule.js';

/** Holes that the beam, as wide as it burns, has no room in: they are left uncut. */
export const lostHole: JobsRule = (jobs, process) => {
  if (process.kind !== 'laser') return [];
  return piecesOf(jobs).flatMap((piece) => {
    const { lost } = kerfPath(piece.card, process.kerfMm);
    return lost.slice(0, 1).map(({ at, areaMm2 }): Finding => {
      const [x, y] = [rounded(at.x), rounded(at.y)];
      const many = lost.length === 1 ? 'A hole' : `${lost.length} holes`;
      return {
        rule: 'lost-hole',
        severity: 'warning',
        where: { piece: piece.name, x, y },
        measured: rounded(Math.sqrt(areaMm2)),
        wanted: process.kerfMm,
        unit: 'mm',
        message: `${many} of ${piece.name} cannot be cut: the beam burns ${rounded(process.kerfMm)} mm wide and has no room ${x} mm from its left and ${y} mm from its top.`,
        cure: 'Make what grows there larger, or take another seed.',
      };
    });
  });
};

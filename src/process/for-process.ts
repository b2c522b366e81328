import type { Piece } from '../panel/piece.js';
import { foldsThrough } from './perforation.js';
import type { Process } from './process.js';

/**
 * The piece with its work on the faces that the process does it from, and without what it leaves
 * out. Folds as short cuts go through the card, so they need no face of their own. A beam can only
 * sink: relief, raised too, becomes tone on the front, where it is seen. A piece that changes in
 * nothing comes back itself.
 */
export function forProcess(piece: Piece, process: Process): Piece {
  return engraved(foldsThrough(process) ? foldedThrough(piece) : piece, process);
}

function foldedThrough(piece: Piece): Piece {
  if (piece.scores.every(({ kind, face }) => kind === 'detail' || face === 'cut')) return piece;
  return {
    ...piece,
    scores: piece.scores.map((s) => (s.kind === 'detail' ? s : { ...s, face: 'cut' as const })),
  };
}

function engraved(piece: Piece, process: Process): Piece {
  if (process.kind !== 'laser' || piece.reliefs.length === 0) return piece;
  if (process.relief.how === 'none') return { ...piece, reliefs: [] };
  if (piece.reliefs.every(({ side }) => side === 'sunk')) return piece;
  return { ...piece, reliefs: piece.reliefs.map((r) => ({ ...r, side: 'sunk' as const })) };
}

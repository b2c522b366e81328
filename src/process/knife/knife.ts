import type { Piece } from '../../panel/piece.js';
import type { Layers } from '../layers.js';
import type { KnifeProcess } from '../process.js';

/** The designed layers of a piece as a drag knife and its other tools run them. */
export function knifeLayers(
  _piece: Piece,
  designed: Layers,
  _process: KnifeProcess,
  _ballMm: number,
): Layers {
  return designed;
}

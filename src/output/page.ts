import type { Face, Mark, Operation } from '../process/layers.js';

/** Marks that follow one another, already in the page's coordinates: a placed piece's, if named. */
export interface Run {
  readonly piece?: string;
  readonly copy?: number;
  readonly marks: readonly Mark[];
}

/** One operation's marks as they are run. */
export interface PageLayer {
  readonly operation: Operation;
  /** How often the machine goes over them; once if not said. */
  readonly passes?: number;
  readonly runs: readonly Run[];
}

/** What a file shows at true size, whatever its format: mm from the top left, y down. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** The face of the card that lies up. */
  readonly face: Face;
  /** In working order, guides last. */
  readonly layers: readonly PageLayer[];
}

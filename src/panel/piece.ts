import type { Line, Region } from '../geometry/types.js';
import type { Stock } from '../scene/scene.js';
import type { Relief } from '../scenery/family.js';
import type { Score } from './score.js';

/** One thing cut from card, as designed: exact and closed, whatever the process. */
export interface Piece {
  /** Such as `panel-01`, `spine-left` or `fish-p2`; also its file's name. */
  readonly name: string;
  /** The folder of its file. */
  readonly folder: 'panels' | 'spine' | 'loose' | 'stencils' | 'trial';
  readonly stock: Stock;
  readonly copies: number;
  /** The file's page in mm; the card lies within it. Grain runs along the height. */
  readonly width: number;
  readonly height: number;
  readonly card: Region;
  readonly scores: readonly Score[];
  readonly reliefs: readonly Relief[];
  /** By what its reliefs are pressed when it is not by a tool of the machine. */
  readonly pressedBy?: 'stencil';
  readonly guides: readonly Line[];
  /** Where mountains and valleys are scored: `both` faces, or all from the front. */
  readonly scoring: 'both' | 'front';
  /** A panel's window before scenery grew into it: where the card's edge is the frame's own. */
  readonly window?: Region;
  /** It is glued between other cards, where no edge of it is seen. */
  readonly hidden?: true;
}

export const panelName = (number: number): string => `panel-${String(number).padStart(2, '0')}`;

import { family } from './family.js';
import { drawIvy } from './ivy/draw.js';
import { IVY_PARAMETERS } from './ivy/parameters.js';

/**
 * A living edge of ivy: a band of leaves along the edge, and strands that trail from it, falling
 * plumb from head and jambs and creeping up from a sill. Each strand is tied to the band or its
 * neighbour, so that none hangs long by itself.
 */
export const ivy = family({
  name: 'ivy',
  says: 'A living edge of ivy in place of a straight one, with trailing strands.',
  stance: 'turned',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { mm: 34 } },
  made: { cut: 'leaves, and the strands they hang on', scored: 'ribs of leaves', embossed: null },
  parts: ['strands', 'leaves'],
  parameters: IVY_PARAMETERS,
  grow: drawIvy,
});

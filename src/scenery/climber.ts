import { drawClimber } from './climber/draw.js';
import { CLIMBER_PARAMETERS } from './climber/parameters.js';
import { family } from './family.js';

/**
 * A plant that climbs the window's edge: from its foot up the jamb, or along a sill to the jamb if
 * that is within its reach. Far from any jamb a sill climber winds up a post. Its stem comes back
 * to its hold at every second bend, so that it is held in many places.
 */
export const climber = family({
  name: 'climber',
  says: 'Ivy, a rose or a vine that climbs a jamb, or a post where no jamb is near.',
  stance: 'upright',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'left',
  defaultSize: { width: { mm: 36 }, height: { share: 0.7 } },
  made: {
    cut: 'stem, leaves, and what it bears',
    scored: 'ribs of leaves and the roll of rose petals',
    embossed: null,
  },
  parts: ['stem', 'leaves', 'fruit'],
  parameters: CLIMBER_PARAMETERS,
  grow: drawClimber,
});

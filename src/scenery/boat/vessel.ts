import type { Region } from '../../geometry/types.js';
import type { Drawing } from '../built/finish.js';
import type { Random } from '../random.js';
import type { Corner, Design, Kit } from './kit.js';

/** What stands on a hull. */
export interface Vessel {
  readonly design: Design;
  readonly sheer: readonly Corner[];
  /** Where stern and stem go under the water. */
  readonly stern: Corner;
  readonly bow: Corner;
  readonly above: (kit: Kit, crew: boolean, random: Random) => Above;
}

export interface Above extends Drawing {
  readonly sails?: readonly Region[];
}

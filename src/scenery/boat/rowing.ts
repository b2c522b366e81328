import { ellipse } from '../../geometry/primitives.js';
import { type Corner, person, spar } from './kit.js';
import type { Vessel } from './vessel.js';

const SHEER: readonly Corner[] = [
  [-30, 10.4],
  [-22, 8.6],
  [-8, 7.2],
  [8, 7.3],
  [22, 9.8],
  [31, 14],
];

/** A clinker skiff with her oars laid in over the stern. */
export const rowingBoat: Vessel = {
  design: { length: 64, height: 26, freeboard: 7.2 },
  sheer: SHEER,
  stern: [-24, 0],
  bow: [23, 0],
  above: (kit, crew, random) => {
    const oar = (to: Corner, from: Corner) => {
      const blade = kit.at(to[0], to[1]);
      const long = Math.max(2.4 * kit.plot.smallestWeb, 4.6 * kit.scale.y);
      const paddle = ellipse(
        blade.x,
        blade.y,
        long,
        Math.max(kit.thick(0) * 0.8, 1.35 * kit.scale.y),
      );
      return [spar(kit, from, to, 1), paddle];
    };
    const rise = random.branch('oars').between(13.5, 17);
    const stem = spar(kit, [27, 9], [31.4, 15], 1.6);
    const rower = crew ? person(kit, 8, 7, 18, [0, 8.5], random.branch('crew')) : [];
    return {
      solids: [stem, ...oar([-23, rise], [10, 5.5]), ...rower],
      cuts: [],
      lines: [],
    };
  },
};

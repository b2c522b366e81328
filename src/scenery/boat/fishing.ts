import { rectangle } from '../../geometry/primitives.js';
import { bent, type Corner, cut, panes, person, spar } from './kit.js';
import type { Vessel } from './vessel.js';

const SHEER: readonly Corner[] = [
  [-32, 11],
  [-22, 9],
  [-6, 8.4],
  [10, 9.6],
  [24, 13],
  [33.5, 17.6],
];
const HOUSE = { from: -12, to: 5, foot: 7, roof: 24 } as const;
const MAST = 12;
/** Where a unit is smaller than this many webs, a derrick would clutter the bow. */
const SLIM = 0.55;

/** A small inshore fishing boat: wheelhouse, mast and derrick, gallows at the stern. */
export const fishingBoat: Vessel = {
  design: { length: 70, height: 48, freeboard: 8.4 },
  sheer: SHEER,
  stern: [-29, 0],
  bow: [26, 0],
  above: (kit, crew, random) => {
    const { from, to, foot, roof } = HOUSE;
    const house = cut(
      kit,
      [
        [from, foot],
        [from + 0.8, roof - 1.2],
        [from - 1.2, roof - 0.8],
        [from - 1, roof + 0.6],
        [to + 2, roof + 1.4],
        [to + 2.4, roof],
        [to + 0.8, roof - 1.2],
        [to + 1.6, foot],
      ],
      random.branch('house'),
    );
    const top = random.branch('mast').between(43, 46);
    const mast = spar(kit, [MAST, 7], [MAST, top], 1.5);
    const rigging = [
      spar(kit, [MAST, top - 2], [32, 17], 0.7),
      spar(kit, [MAST, top - 2], [-27.5, 21.5], 0.7),
    ];
    // A strut from the derrick's nose back up to the mast closes a triangle that cannot sag.
    const derrick =
      kit.scale.y > SLIM * kit.plot.smallestWeb
        ? [spar(kit, [MAST, 15], [26, 31], 1.2), spar(kit, [25.4, 30.4], [MAST, 39], 0.7)]
        : [];
    const gallows = bent(
      kit,
      [
        [-30, 8],
        [-29.4, 18],
        [-27.4, 22],
        [-24.6, 21],
        [-23, 8],
      ],
      1.4,
    );
    const stack = kit.at(from + 3.4, roof);
    const wide = kit.thick(2.6);
    const funnel = rectangle(
      stack.x - wide / 2,
      stack.y - 4.4 * kit.scale.y,
      wide,
      5 * kit.scale.y,
    );
    const hatch = cut(
      kit,
      [
        [16, 9],
        [16.6, 14.4],
        [22.6, 15.2],
        [23.4, 11],
      ],
      random.branch('hatch'),
    );
    const hand = crew ? person(kit, -18, 9, 13.5, [-22, 12], random.branch('crew')) : [];
    const flag = cut(
      kit,
      [
        [MAST, top - 0.4],
        [MAST, top + 2.2],
        [MAST - 6.4, top + 1.4],
        [MAST - 5.6, top],
      ],
      random.branch('flag'),
    );
    return {
      solids: [house, mast, ...rigging, ...derrick, gallows, funnel, hatch, ...hand, flag],
      cuts: panes(kit, [from + 0.6, 14.4], [to + 1.6, roof - 0.4], 3, false),
      lines: [],
    };
  },
};

import { pen } from '../../geometry/pen.js';
import type { Line, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import { type Corner, cut, type Kit, person, spar } from './kit.js';
import type { Vessel } from './vessel.js';

const SHEER: readonly Corner[] = [
  [-29, 7.4],
  [-20, 6.4],
  [-4, 5.8],
  [12, 6.2],
  [24, 7.8],
  [31, 9.8],
];
const MAST = 3;
const TOP = 71;
/** The boom is this many smallest holes clear of the gunwale. */
const CLEAR = 1.5;

/** A sloop under sail; her sheet and forestay hold the sails to the hull. */
export const sailingBoat: Vessel = {
  design: { length: 64, height: 74, freeboard: 5.8 },
  sheer: SHEER,
  stern: [-25, 0],
  bow: [23, 0],
  above: (kit, crew, random) => {
    const luck = random.branch('sails');
    const { smallestHole } = kit.plot;
    const clear = (CLEAR * smallestHole + kit.thick(1.2)) / kit.scale.y;
    const boom = Math.min(TOP / 2, Math.max(luck.between(11.5, 13.5), 6.2 + clear));
    // A small boat sails under her main alone: its jib would close the gap before the mast.
    const hasJib = 6 * kit.scale.x > 2.2 * smallestHole;
    const clew: Corner = [-26, boom + 0.6];
    const main = sail(kit, [MAST, TOP - 3], [MAST, boom], clew, luck.between(2.6, 4.2));
    const head: Corner = [MAST + 2.6, luck.between(54, 60)];
    const jib = sail(kit, head, [29.6, 9.4], [9.2, 11.4], luck.between(1, 2));
    // The sheet from the boom's end, and the jib's to the gunwale.
    const sheet = spar(kit, [-24, boom], [-25.5, 6], 0.7);
    const jibRopes = [
      spar(kit, [9.6, 11.4], [7.6, 5], 0.7),
      spar(kit, [30.2, 8.6], [MAST, head[1] + 3], 0.7),
    ];
    const fore = hasJib ? [jib, ...jibRopes] : [];
    const flag = cut(
      kit,
      [
        [MAST, TOP - 0.6],
        [MAST, TOP + 2.6],
        [MAST - 9, TOP + 1.6],
        [MAST - 8, TOP + 0.2],
      ],
      random.branch('flag'),
    );
    const mast = spar(kit, [MAST, 4], [MAST, TOP + 1.4], 1.3);
    const boomSpar = spar(kit, [MAST, boom - 0.4], [-26, boom], 1.2);
    const helm = crew ? person(kit, -17, 5.6, 12, [-22, 8], random.branch('crew')) : [];
    return {
      solids: [main, ...fore, mast, boomSpar, flag, sheet, ...helm],
      cuts: [],
      lines: [...seams(kit, clew, boom), ...(hasJib ? jibSeams(kit, head) : [])],
      sails: hasJib ? [main, jib] : [main],
    };
  },
};

/** A three-cornered sail, its leech filled by the wind, its foot a little rounded. */
function sail({ at }: Kit, head: Corner, tack: Corner, clew: Corner, belly: number): Region {
  const [h, t, c] = [at(...head), at(...tack), at(...clew)];
  const way = Math.sign(c.x - t.x);
  const swell = belly * Math.abs(at(1, 0).x - at(0, 0).x);
  return shapeOf(
    pen(h.x, h.y)
      .quadTo((h.x + t.x) / 2 - way * swell * 0.1, (h.y + t.y) / 2, t.x, t.y)
      .quadTo((t.x + c.x) / 2, Math.max(t.y, c.y) + swell * 0.25, c.x, c.y)
      .quadTo((h.x + c.x) / 2 + way * swell * 1.6, (h.y + c.y) / 2 - swell * 0.4, h.x, h.y)
      .close(),
  );
}

/** Seams of the cloths, square to the leech, more of them on a finer panel. */
function seams(kit: Kit, clew: Corner, boom: number): Line[] {
  const count = 2 + kit.level;
  return Array.from({ length: count }, (_, i) => {
    const t = (i + 0.7) / (count + 0.6);
    const leech: Corner = [clew[0] + (MAST - clew[0]) * t, clew[1] + (TOP - 3 - clew[1]) * t];
    const luff: Corner = [MAST, Math.max(boom, leech[1] - 6 * (1 - t))];
    const [a, b] = [kit.at(...leech), kit.at(...luff)];
    return pen(a.x, a.y)
      .quadTo((a.x + b.x) / 2, Math.max(a.y, b.y), a.x + (b.x - a.x) * 0.8, a.y + (b.y - a.y) * 0.8)
      .line();
  });
}

function jibSeams(kit: Kit, head: Corner): Line[] {
  return Array.from({ length: 1 + kit.level }, (_, i) => {
    const t = (i + 0.8) / (2.2 + kit.level);
    const from = kit.at(9 + (head[0] - 9) * t, 11 + (head[1] - 11) * t);
    const to = kit.at(29 + (head[0] - 29) * t, 9 + (head[1] - 9) * t);
    return pen(from.x, from.y)
      .lineTo(from.x + (to.x - from.x) * 0.85, from.y + (to.y - from.y) * 0.85)
      .line();
  });
}

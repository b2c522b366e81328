import type { Cubics, Line } from '../../geometry/types.js';
import { hangingFrom, lengthOf } from './arc.js';
import {
  type Arc,
  arcLine,
  even,
  type Profile,
  ribbon,
  spindle,
  subArc,
  taper,
  wayOn,
} from './ribbon.js';
import { type Blade, BROKEN } from './tuft.js';

/** Tips are rounded to this radius: finer ones curl up and tear. */
export const TIP_RADIUS_MM = 0.42;
/** How far a blade runs down into the ground below its foot. */
const ROOT_MM = 2.5;
/** Common practice, no source: a bulrush's head is 3 by 16 mm on a stem of 1.2 mm; at this height. */
const CIGAR = { widthMm: 3, lengthMm: 16, stemMm: 1.2, heightMm: 45 } as const;
const EAR = { widthMm: 1.9, lengthMm: 10, heightMm: 28 } as const;
/** A stem may be this many times as long as it is wide from the ground to its head. */
const STEM_SLENDER = 16;

/** A blade may be narrower than the smallest web over this many webs at its tip, no more. */
const FINE_TIP_WEBS = 2.4;

/** The contours of a blade on ground that lies at `groundY`; they overlap. */
export function bladeContours(
  blade: Blade,
  groundY: number,
  smallestWeb: number,
  fullness: number,
): Cubics[] {
  const arc = rooted(blade.arc, groundY);
  if (blade.head === 'cigar') return cigar(arc, blade.heightMm, smallestWeb);
  if (blade.head === 'ear') return ear(arc, blade.heightMm, smallestWeb);
  if (blade.broken) return broken(blade, arc, smallestWeb, fullness);
  return [ribbon(arc, bladeTaper(blade.footHalfMm, lengthOf(arc), smallestWeb, fullness))];
}

/** A taper as full as asked for, and fuller where the blade would be too narrow too soon. */
function bladeTaper(
  footMm: number,
  lengthMm: number,
  smallestWeb: number,
  fullness: number,
): Profile {
  const tip = tipRadius(smallestWeb);
  // Half a web of breadth is left at `t` if (foot - tip) (1 - t^power) = web / 2 - tip.
  const t = 1 - (FINE_TIP_WEBS * smallestWeb) / lengthMm;
  const share = (0.51 * smallestWeb - tip) / (footMm - tip);
  if (t <= 0 || share <= 0) return taper(footMm, tip, fullness);
  return taper(footMm, tip, Math.max(fullness, Math.log(1 - share) / Math.log(t)));
}

/** Never sharper than the eye needs, and blunter where the process cuts coarsely. */
const tipRadius = (smallestWeb: number) => Math.max(TIP_RADIUS_MM, 0.34 * smallestWeb);

/** The mid-rib of a scored blade, clear of its foot and its tip. */
export const rib = (blade: Blade, groundY: number): Line =>
  arcLine(rooted(blade.arc, groundY), 0.3, 0.8);

/** The arc with its foot sunk below the ground line, along its own direction. */
function rooted(arc: Arc, groundY: number): Arc {
  const way = wayOn(arc, 0);
  const depth = Math.max(ROOT_MM + groundY, 0.5);
  return { ...arc, from: { x: arc.from.x - way.x * depth, y: arc.from.y + depth } };
}

/** The lower part stands; the upper hangs from the break. */
function broken(blade: Blade, arc: Arc, smallestWeb: number, fullness: number): Cubics[] {
  const profile = bladeTaper(blade.footHalfMm, lengthOf(arc), smallestWeb, fullness);
  const half = Math.max(profile.half(BROKEN.at), 0.55 * smallestWeb);
  const hanging = hangingFrom(arc, BROKEN.at, blade.side);
  return [
    ribbon(subArc(arc, 0, BROKEN.at), taper(blade.footHalfMm, half, 1.2)),
    ribbon(hanging, bladeTaper(half, lengthOf(hanging), smallestWeb, fullness), 'round'),
  ];
}

function cigar(arc: Arc, heightMm: number, smallestWeb: number): Cubics[] {
  const scale = Math.min(1.15, heightMm / CIGAR.heightMm);
  const spike = 0.1;
  const length = lengthOf(arc);
  const share = Math.min(0.42, (CIGAR.lengthMm * Math.max(scale, 0.5)) / length);
  const stem = Math.max(
    CIGAR.stemMm * scale,
    1.02 * smallestWeb,
    ((1 - share - spike) * length) / STEM_SLENDER,
  );
  const half = Math.max((CIGAR.widthMm * scale) / 2, 0.95 * stem);
  const top = 1 - spike - half / length;
  return [
    ribbon(subArc(arc, 0, top), even(stem / 2)),
    ribbon(subArc(arc, top - share + (2 * half) / length, top), even(half), 'round'),
    ribbon(subArc(arc, top, 1), even(Math.max(0.5, 0.51 * smallestWeb))),
  ];
}

function ear(arc: Arc, heightMm: number, smallestWeb: number): Cubics[] {
  const scale = Math.max(0.6, Math.min(1.3, heightMm / EAR.heightMm));
  const length = lengthOf(arc);
  const share = Math.min(0.42, (EAR.lengthMm * scale) / length);
  const stem = Math.max(1.02 * smallestWeb, ((1 - share) * length) / STEM_SLENDER, 1);
  const half = Math.max((EAR.widthMm * scale) / 2, 0.85 * stem);
  return [
    ribbon(subArc(arc, 0, 1 - share / 2), taper(0.62 * stem, stem / 2, 1)),
    ribbon(subArc(arc, 1 - share, 1), spindle(tipRadius(smallestWeb), half, 0.42), 'round'),
  ];
}

import type { Point } from '../../geometry/types.js';
import { endsOf, mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const ARCHES = ['segmental', 'semicircular', 'elliptical'] as const;
export type ArchForm = (typeof ARCHES)[number];

/** The bridge's leading lines, mm in its plot: y negative upward. */
export interface Profile {
  readonly plot: Plot;
  /** Where the wall ends, behind the jambs if it reaches them. */
  readonly ends: { readonly left: number; readonly right: number };
  /** Middle of the arch; a little off the plot's middle. */
  readonly middle: number;
  readonly span: number;
  /** From the left springing over the crown to the right one. */
  readonly soffit: readonly Point[];
  readonly springing: number;
  readonly ring: number;
  readonly coping: number;
  /** Top of the coping at x. */
  readonly top: (x: number) => number;
  /** The road's string course at x: upper edge of the band. */
  readonly road: (x: number) => number;
  readonly band: number;
  /** Pilasters beside the arch. */
  readonly pilasters: boolean;
}

/** Shares of the plot's height. */
const RING = 0.115;
const COPING = 0.055;
const PARAPET = [0.14, 0.185] as const;
const BAND = 0.04;
/** Springing over the water, as shares of the soffit's height. */
const SPRINGING: Record<ArchForm, number> = { segmental: 0.5, semicircular: 0, elliptical: 0.22 };
/** The parapet falls by this share of the height from crown to end at full hump. */
const FALL = 0.42;
/** How often a bridge has pilasters beside its arch. */
const PILASTERS = 0.75;
const SOFFIT_STEPS = 32;

export function profileOf(
  plot: Plot,
  form: ArchForm,
  share: number,
  hump: number,
  random: Random,
): Profile {
  const { width, height, smallestWeb } = plot;
  const coping = Math.max(smallestWeb, COPING * height);
  const ring = Math.max(smallestWeb * 1.2, RING * height);
  const band = BAND * height;
  const parapet = height * random.branch('parapet').between(...PARAPET);
  const crown = height - coping - parapet - band - ring - 0.8;
  const wanted = share * width;
  const span = form === 'semicircular' ? Math.min(wanted, 2 * crown) : wanted;
  const springing = form === 'semicircular' ? crown - span / 2 : SPRINGING[form] * crown;
  const middle = width * random.between(-0.035, 0.035);
  const falls = [random.between(0.8, 1.2), random.between(0.8, 1.2)];
  const top = (x: number): number => {
    const side = x < middle ? 0 : 1;
    const far = side === 0 ? -width / 2 : width / 2;
    const t = Math.min(1, Math.abs((x - middle) / (far - middle)));
    return -height * (1 - FALL * hump * falls[side] * (0.5 - 0.5 * Math.cos(Math.PI * t)));
  };
  return {
    plot,
    ends: endsOf(plot),
    middle,
    span,
    soffit: soffitOf(form, middle, span, springing, crown),
    springing: -springing,
    ring,
    coping,
    band,
    pilasters: random.branch('pilasters').chance(PILASTERS),
    top,
    road: (x) => top(x) + coping + parapet * mix(1, 0.92, Math.abs(x) / width),
  };
}

function soffitOf(
  form: ArchForm,
  middle: number,
  span: number,
  springing: number,
  crown: number,
): Point[] {
  const rise = crown - springing;
  const half = span / 2;
  if (form === 'segmental') {
    // r = h/2 + c^2/(8h): a circular segment of chord c and rise h.
    const radius = rise / 2 + span ** 2 / (8 * rise);
    const reach = Math.asin(Math.min(1, half / radius));
    return steps((t) => {
      const a = mix(-reach, reach, t);
      return { x: middle + radius * Math.sin(a), y: -crown + radius * (1 - Math.cos(a)) };
    });
  }
  return steps((t) => ({
    x: middle - half * Math.cos(Math.PI * t),
    y: -springing - rise * Math.sin(Math.PI * t),
  }));
}

const steps = (at: (t: number) => Point): Point[] =>
  Array.from({ length: SOFFIT_STEPS + 1 }, (_, i) => at(i / SOFFIT_STEPS));

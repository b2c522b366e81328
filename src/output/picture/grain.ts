import type { Bounds } from '../../geometry/types.js';
import { box } from './markup.js';

/** Side of the patch that is repeated, mm: large enough for no pattern to show. */
const PATCH_MM = 36;
/** Grains a millimetre; finer ones are lost between pixels. */
const GRAINS_PER_MM = 2.2;
const OPACITY = 0.045;
/** Opacity of a grain from darkest to lightest: most of the card stays as it is, which keeps its
 * colour true and the picture's file small. */
const FLECKS = '1 0.8 0.5 0.12 0 0.12 0.5 0.8 1';

/** Pattern `grain`, made once and repeated. */
export const GRAIN_DEFS =
  `<filter id="tooth" filterUnits="userSpaceOnUse" x="0" y="0" width="${PATCH_MM}" ` +
  `height="${PATCH_MM}" color-interpolation-filters="sRGB"><feTurbulence type="fractalNoise" ` +
  `baseFrequency="${GRAINS_PER_MM}" numOctaves="2" seed="3" stitchTiles="stitch"/>` +
  '<feColorMatrix values="1 0 0 0 0 1 0 0 0 0 1 0 0 0 0 1 0 0 0 0"/><feComponentTransfer>' +
  ['R', 'G', 'B'].map((c) => `<feFunc${c} type="discrete" tableValues="0 1"/>`).join('') +
  `<feFuncA type="table" tableValues="${FLECKS}"/></feComponentTransfer></filter>` +
  `<pattern id="grain" patternUnits="userSpaceOnUse" width="${PATCH_MM}" height="${PATCH_MM}">` +
  `<rect width="${PATCH_MM}" height="${PATCH_MM}" filter="url(#tooth)"/></pattern>`;

/** The tooth of the paper, over cards that lie within `area`. */
export const grain = (area: Bounds): string =>
  `<rect ${box(area)} fill="url(#grain)" opacity="${OPACITY}"/>`;

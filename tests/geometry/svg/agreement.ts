import { Resvg } from '@resvg/resvg-js';
import { perimeter } from '../../../src/geometry/measure.js';
import { regionPathData } from '../../../src/geometry/path/path-data.js';
import { drawingRegion, importSvg } from '../../../src/geometry/svg/import.js';
import type { Region } from '../../../src/geometry/types.js';

/**
 * Whether what is imported covers what resvg, an independent renderer, inks of the same file. Both
 * are rendered by resvg at the same size, ours as one black path, and their coverage compared.
 */

/** Pictures are this wide: 0.3 px is then an eight-hundredth of a drawing's width. */
export const WIDTH_PX = 240;
/** The pictures agree when the difference of their coverage is at most this share of the ink, */
export const MOST_SHARE = 0.005;
/** or when it is, spread along the edges, at most this wide, and nowhere else a pixel differs. */
export const MOST_EDGE_PX = 0.3;

export interface Agreement {
  readonly agrees: boolean;
  /** Sum of |difference of coverage| over all pixels, as a share of the original's ink. */
  readonly share: number;
  /** The same sum over the length of our outline in px. */
  readonly edgePx: number;
  /** Pixels more than one pixel off any edge that differ by more than half. */
  readonly strays: number;
}

export async function compareWithResvg(svg: string): Promise<Agreement> {
  const drawing = await importSvg(svg, { strokes: 'outlines' });
  const region = drawingRegion(drawing);
  const original = coverage(svg);
  const { widthMm, heightMm } = drawing;
  const ours = coverage(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" ` +
      `viewBox="0 0 ${widthMm} ${heightMm}"><path d="${regionPathData(region, 5)}"/></svg>`,
  );
  return agreement(original, ours, region, WIDTH_PX / widthMm);
}

interface Coverage {
  readonly width: number;
  readonly height: number;
  /** 0 to 1 for each pixel, row by row. */
  readonly alpha: Float64Array;
}

function coverage(svg: string): Coverage {
  const { width, height, pixels } = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH_PX },
    font: { loadSystemFonts: false },
  }).render();
  return {
    width,
    height,
    alpha: Float64Array.from({ length: width * height }, (_, k) => pixels[4 * k + 3] / 255),
  };
}

function agreement(a: Coverage, b: Coverage, region: Region, pxPerMm: number): Agreement {
  if (a.width !== b.width || a.height !== b.height) {
    throw new Error(`The pictures are ${a.width} x ${a.height} and ${b.width} x ${b.height} px.`);
  }
  let [ink, difference, strays] = [0, 0, 0];
  for (let k = 0; k < a.alpha.length; k++) {
    const off = Math.abs(a.alpha[k] - b.alpha[k]);
    ink += a.alpha[k];
    difference += off;
    if (off > 0.5 && isOffEdges(a, k)) strays++;
  }
  const share = difference === 0 ? 0 : difference / ink;
  const edgePx = difference === 0 ? 0 : difference / (perimeter(region) * pxPerMm);
  const agrees = share <= MOST_SHARE || (edgePx <= MOST_EDGE_PX && strays === 0);
  return { agrees, share, edgePx, strays };
}

/** Whether a pixel and all round it are alike, all full or all empty. */
function isOffEdges({ width, height, alpha }: Coverage, k: number): boolean {
  const [x, y] = [k % width, Math.floor(k / width)];
  const full = alpha[k] > 0.5;
  for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
    for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
      const at = alpha[v * width + u];
      if (full ? at < 0.99 : at > 0.01) return false;
    }
  }
  return true;
}

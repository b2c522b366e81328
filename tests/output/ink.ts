import { Resvg } from '@resvg/resvg-js';
import { run } from '../support/tools.js';

/** A picture in black on white. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  isInk(x: number, y: number): boolean;
}

const DPI = 300;
/** Darker than this of 255: a third of what a hairline's own pixel has. */
const INK = 215;

/** The first page of a PDF, painted by poppler. */
export function paintedPdf(pdf: Uint8Array): Picture {
  const pgm = run('pdftoppm', ['-r', String(DPI), '-gray', '-'], pdf);
  const [head = '', width, height] =
    /^P5\s(\d+) (\d+)\s255\s/.exec(pgm.toString('latin1', 0, 40)) ?? [];
  const pixels = pgm.subarray(head.length);
  return picture(Number(width), Number(height), (i) => pixels[i]);
}

/** An SVG at its true size, painted by resvg. */
export function paintedSvg(svg: string): Picture {
  // 1 in = 96 px: CSS Values and Units 3.
  const painted = new Resvg(svg, {
    fitTo: { mode: 'zoom', value: DPI / 96 },
    background: '#fff',
  }).render();
  const { pixels } = painted;
  const grey = (i: number) => (pixels[4 * i] + pixels[4 * i + 1] + pixels[4 * i + 2]) / 3;
  return picture(painted.width, painted.height, grey);
}

const picture = (width: number, height: number, grey: (i: number) => number): Picture => ({
  width,
  height,
  isInk: (x, y) => x >= 0 && y >= 0 && x < width && y < height && grey(y * width + x) < INK,
});

function* inked(p: Picture): Generator<[number, number]> {
  for (let y = 0; y < p.height; y++)
    for (let x = 0; x < p.width; x++) if (p.isInk(x, y)) yield [x, y];
}

export const ink = (p: Picture): number => [...inked(p)].length;

/** The share of one picture's ink that the other has too, or has right beside it. */
export function shareMet(one: Picture, other: Picture): number {
  const NEAR = [-1, 0, 1];
  let all = 0;
  let met = 0;
  for (const [x, y] of inked(one)) {
    all++;
    if (NEAR.some((dy) => NEAR.some((dx) => other.isInk(x + dx, y + dy)))) met++;
  }
  return met / all;
}

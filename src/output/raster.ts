import { Resvg } from '@resvg/resvg-js';

/** Above this a picture needs more memory than it is worth. */
const WIDEST_PX = 12000;

/**
 * A picture as the bytes of a PNG file, `widthPx` wide and as high as its shape asks for. Pictures
 * hold no text, so no font of the machine can change them.
 * @throws Error when the width is out of range or `svg` is not SVG.
 */
export function pngOf(svg: string, widthPx: number): Uint8Array {
  if (!Number.isInteger(widthPx) || widthPx < 1 || widthPx > WIDEST_PX) {
    throw new Error(
      `A picture cannot be ${widthPx} pixels wide: give a whole number from 1 to ${WIDEST_PX}.`,
    );
  }
  const drawing = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx },
    font: { loadSystemFonts: false },
  });
  return Uint8Array.from(drawing.render().asPng());
}

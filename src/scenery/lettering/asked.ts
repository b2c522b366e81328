import type { LetterFont } from './read-font.js';
import type { StencilLimits } from './stencil.js';
import type { View } from './view.js';

/** How a line of text may run. */
export const LINES = ['straight', 'arc', 'edge'] as const;

/** What is to be lettered, and where. Lengths in mm. */
export interface Asked {
  readonly font: LetterFont;
  readonly text: string;
  readonly line: (typeof LINES)[number];
  /** How far an arc rises over its ends. */
  readonly riseMm: number;
  /** Room along the line, and the height wished for. */
  readonly lengthMm: number;
  readonly heightMm: number;
  readonly limits: StencilLimits;
  readonly view: View;
}

import type { Book } from '../../book/book.js';
import { type Perspective, project } from '../../book/perspective.js';
import type { Point } from '../../geometry/types.js';
import { lit } from './colour.js';
import { faceBrightness } from './light.js';
import { straightPath } from './markup.js';

/** One face of a concertina strip as the eye sees it. */
export interface SpineFace {
  readonly side: 'left' | 'right';
  /** Fold nearer the eye first: top and bottom of it, then bottom and top of the other. */
  readonly corners: readonly [Point, Point, Point, Point];
  /** 1 for a face as bright as a panel. */
  readonly brightness: number;
}

/**
 * The faces of both strips, those farthest from the eye first. Inner folds stand at the hinges at
 * each panel's depth, outer folds `reachMm` farther out and half a spacing deeper.
 */
export function spineFaces(book: Book, view: Perspective): SpineFace[] {
  const faces: SpineFace[] = [];
  for (let index = book.spine.faces - 1; index >= 0; index--) {
    for (const side of ['left', 'right'] as const) {
      const near = foldAt(book, side, index);
      const far = foldAt(book, side, index + 1);
      const seen = (fold: Fold, y: number) => project(view, { x: fold.x, y }, fold.depthMm);
      faces.push({
        side,
        corners: [seen(near, 0), seen(near, book.height), seen(far, book.height), seen(far, 0)],
        brightness: faceBrightness(far.x - near.x, far.depthMm - near.depthMm),
      });
    }
  }
  return faces;
}

/** Faces of card of the given colour, in the order given. */
export const spineMarkup = (faces: readonly SpineFace[], colour: string): string =>
  faces
    .map(({ corners, brightness }) => {
      const fill = lit(colour, brightness);
      // The thin outline closes the hairline gap that neighbouring faces would leave.
      return (
        `<path d="${straightPath(corners)}Z" fill="${fill}" stroke="${fill}" ` +
        'stroke-width="0.1" stroke-linejoin="round"/>'
      );
    })
    .join('');

interface Fold {
  readonly x: number;
  readonly depthMm: number;
}

/** Fold 0 stands at the front panel; even folds stand at a panel, odd ones swing out. */
function foldAt(book: Book, side: 'left' | 'right', index: number): Fold {
  const cell = Math.floor(index / 2);
  const outer = index % 2 === 1;
  const { hinge, depthMm } = book.panels[cell];
  const hingeX = side === 'left' ? hinge.leftX : hinge.rightX;
  const out = side === 'left' ? -book.spine.reachMm : book.spine.reachMm;
  return outer ? { x: hingeX + out, depthMm: depthMm + book.spacing / 2 } : { x: hingeX, depthMm };
}

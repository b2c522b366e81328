import type { Scene } from '../scene/scene.js';
import { panelBlank } from './blank.js';
import type { Book, PanelPlan, SpinePlan, WindowPlan } from './book.js';
import { type Fault, PlanError } from './fault.js';
import { planSpine } from './spine.js';
import { planWindows } from './windows.js';

/** Card that must be seen between a hinge, or the panel's edge, and the window. */
export const VISIBLE_FRAME_MM = 4;
/** Scenery and texture stop this far from hinges and edges. */
const SCENERY_MARGIN_MM = 2;
/** An end tab stays this far from the window, to be hidden behind the jamb. */
const TAB_MARGIN_MM = 1;

/**
 * Resolves every number of the structure.
 * @throws PlanError with all that cannot be built.
 */
export function planBook(scene: Scene): Book {
  const faults: Fault[] = [];
  const { width, height } = scene.panel;
  const spine = planSpine(scene, faults);
  const pitch = spine.pitchMm;
  const flat = width - 2 * pitch;
  if (flat < 2 * VISIBLE_FRAME_MM) {
    faults.push({
      path: ['panel', 'width'],
      message: `The panel is ${width} mm wide, and the two hinges take ${pitch} mm at each side: nothing is left between them. Make the panel wider or the spacing smaller.`,
    });
    throw new PlanError(faults);
  }
  const clear = { jamb: pitch + VISIBLE_FRAME_MM, edge: VISIBLE_FRAME_MM };
  const windows = planWindows(scene, clear, faults);
  if (faults.length > 0) throw new PlanError(faults);
  return {
    title: scene.title,
    width,
    height,
    spacing: scene.spacing,
    readingDistance: scene.readingDistance,
    panels: scene.cards.map((_, i) => planPanel(scene, spine, windows[i] ?? null, i)),
    spine: withTabThatHides(spine, windows[0], width),
    keep: {
      minX: pitch + SCENERY_MARGIN_MM,
      minY: SCENERY_MARGIN_MM,
      maxX: width - pitch - SCENERY_MARGIN_MM,
      maxY: height - SCENERY_MARGIN_MM,
    },
  };
}

function planPanel(
  scene: Scene,
  spine: SpinePlan,
  window: WindowPlan | null,
  index: number,
): PanelPlan {
  const { width, height } = scene.panel;
  return {
    number: index + 1,
    depthMm: index * scene.spacing,
    card: scene.cards[index],
    blank: panelBlank(width, height, spine.pitchMm),
    window,
    hinge: {
      leftX: spine.pitchMm,
      rightX: width - spine.pitchMm,
      fold: window === null ? 'valley' : 'mountain',
    },
  };
}

/** An end tab is glued behind panel 1, where it must not show in the window. */
function withTabThatHides(spine: SpinePlan, front: WindowPlan, width: number): SpinePlan {
  const jamb = Math.min(front.x, width - front.x - front.width);
  const tabMm = Math.min(spine.tabMm, jamb - spine.pitchMm - TAB_MARGIN_MM);
  return { ...spine, tabMm, lengthMm: spine.faces * spine.pitchMm + 2 * tabMm };
}

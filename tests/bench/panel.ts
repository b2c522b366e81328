import { planBook } from '../../src/book/plan.js';
import { union } from '../../src/geometry/boolean/boolean.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, translation } from '../../src/geometry/transform.js';
import { EMPTY_REGION, type Region } from '../../src/geometry/types.js';
import { composePanel } from '../../src/panel/compose.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import { type Family, family } from '../../src/scenery/family.js';
import { elementOf } from '../support/families.js';
import { sceneWith } from '../support/scene.js';
import { type Timing, timed } from './measure.js';
import { denseLeaves } from './scenes.js';

export interface PanelTimes {
  /** The union of the leaves and their trunk alone. */
  readonly union: Timing;
  /** The whole panel: the same union, the frame, webs, holes, scores and checks of what hangs on what. */
  readonly compose: Timing;
}

/** A crown of so many leaves on a trunk, cut into the front window of a plain book by the laser. */
export function panelTimes(leaves: number, runs: number): PanelTimes {
  const crown = denseLeaves(leaves);
  const { minX, maxX, maxY } = regionBounds(union(crown));
  const middle = (minX + maxX) / 2;
  const trunk = rectangle(middle - 4, maxY - 20, 8, 60);
  const foot = translation(-middle, -maxY - 25);
  const parts = [...crown, trunk].map((part): Region => moveRegion(part, foot));
  const tree = family({
    name: 'leaves',
    says: 'A crown of leaves for timing.',
    sides: ['sill'],
    defaultSide: 'sill',
    defaultSize: { width: { mm: 60 }, height: { mm: 80 } },
    made: { cut: 'its outline', scored: null, embossed: null },
    parameters: {},
    stance: 'upright',
    grow: () => ({ body: union(parts), holes: EMPTY_REGION, scores: [], reliefs: [] }),
  });
  const element = elementOf({ element: 'leaves' });
  const scene = sceneWith({ process: 'laser', scenery: [element] });
  const book = planBook(scene);
  const families = new Map([['leaves', tree as Family]]);
  const [plan] = book.panels;
  return {
    union: timed(() => union(parts), runs).timing,
    compose: timed(() => composePanel(scene, book, plan, families, PROCESS_LIMITS.laser), runs)
      .timing,
  };
}

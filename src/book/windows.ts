import { DEFAULTS } from '../scene/defaults.js';
import type { Side } from '../scene/parameter.js';
import type { Scene, WindowChoice, WindowSeries, WindowShape } from '../scene/scene.js';
import type { WindowPlan } from './book.js';
import type { Fault } from './fault.js';
import { leastHeightShare, windowOutline } from './window-outline.js';

/** Size of the front window when the scene names none: leaves a frame that reads as one. */
const USUAL_WIDTH_SHARE = 0.62;
const USUAL_HEIGHT_SHARE = 0.72;
/** A smaller opening than this shows nothing and cannot be worked. */
const SMALLEST_WINDOW_MM = 10;
/** Sizes and margins of one window that add up within this are in agreement. */
const AGREE_MM = 0.01;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
type Path = readonly (string | number)[];
type Step = WindowSeries['step'];
/** Least card beside a window, and above and below it. */
interface Clear {
  readonly jamb: number;
  readonly edge: number;
}

/**
 * The windows of all panels but the backdrop, front first, in panel coordinates.
 * @param clear least card that must stay beside (hinge and visible frame) and above and below.
 */
export function planWindows(scene: Scene, clear: Clear, faults: Fault[]): WindowPlan[] {
  const { windows } = scene;
  const plans: WindowPlan[] =
    'first' in windows
      ? seriesOfWindows(scene, windows, clear, faults)
      : windows.map((choice, i) =>
          planOf(
            choice,
            firstBox(scene, choice, { width: 0, height: 0 }, clear, ['window', i], faults),
          ),
        );
  for (const [i, plan] of plans.entries()) {
    const path: Path = 'first' in windows ? ['window'] : ['window', i];
    const choice = 'first' in windows ? windows.first : windows[i];
    const before = faults.length;
    checkFit(plan, choice, i, scene, clear, path, faults);
    if (i > 0) checkShrinks(plans[i - 1], plan, i, path, faults);
    // What is wrong with the first of a series is wrong with all of it.
    if ('first' in windows && faults.length > before) break;
  }
  return plans;
}

function seriesOfWindows(
  scene: Scene,
  series: WindowSeries,
  clear: Clear,
  faults: Fault[],
): WindowPlan[] {
  const first = firstBox(scene, series.first, series.step, clear, ['window'], faults);
  return Array.from({ length: scene.panels - 1 }, (_, i) => {
    const width = first.width - i * series.step.width;
    const height = first.height - i * series.step.height;
    const x = first.x + (first.width - width) * shareAtStart(series.hold, 'left', 'right');
    const y = first.y + (first.height - height) * shareAtStart(series.hold, 'head', 'sill');
    return planOf(series.first, { x, y, width, height });
  });
}

/** How much of a step falls at the left or top: half, unless one of the two edges is held. */
function shareAtStart(hold: readonly Side[], start: Side, end: Side): number {
  if (hold.includes(start)) return 0;
  return hold.includes(end) ? 1 : 0.5;
}

const planOf = (choice: WindowChoice, box: Box): WindowPlan => ({
  shape: choice.shape,
  ...box,
  outline: windowOutline(choice, box.x, box.y, box.width, box.height),
});

/** Size and place from what the scene gives: sizes, margins or both; the rest is centred. */
function firstBox(
  scene: Scene,
  choice: WindowChoice,
  step: Step,
  clear: Clear,
  path: Path,
  faults: Fault[],
): Box {
  const { width: panelWidth, height: panelHeight } = scene.panel;
  const { jamb, head, sill } = choice;
  let width = choice.width ?? (jamb === undefined ? undefined : panelWidth - 2 * jamb);
  let height =
    choice.height ??
    (head !== undefined && sill !== undefined ? panelHeight - head - sill : undefined);
  if (choice.shape === 'circle') {
    width ??= height;
    height ??= width;
    if (width !== undefined && height !== undefined && Math.abs(width - height) > AGREE_MM) {
      faults.push({
        path,
        message: `A circle is as wide as it is high, but this one is ${mm(width)} wide and ${mm(height)} high. Give one of the two, or use shape: ellipse.`,
      });
    }
  }
  const usual = usualSize(scene, choice.shape, height, step, clear);
  width ??= usual.width;
  height ??= usual.height;
  const x = jamb ?? (panelWidth - width) / 2;
  let y = (panelHeight - height) / 2;
  if (sill !== undefined) y = panelHeight - sill - height;
  if (head !== undefined) y = head;
  checkAgreement(width + 2 * x, panelWidth, 'width', path, faults);
  if (head !== undefined && sill !== undefined) {
    checkAgreement(head + height + sill, panelHeight, 'height', path, faults);
  }
  return { x, y, width, height };
}

/** A size that leaves a good frame, and in which every window of the series keeps its form. */
function usualSize(
  scene: Scene,
  shape: WindowShape,
  givenHeight: number | undefined,
  step: Step,
  clear: Clear,
): { width: number; height: number } {
  const { panel } = scene;
  const room = Math.min(panel.width * USUAL_WIDTH_SHARE, panel.width - 2 * clear.jamb);
  const free = Math.min(panel.height * USUAL_HEIGHT_SHARE, panel.height - 2 * clear.edge);
  const height = givenHeight ?? Math.round(free);
  if (shape === 'circle') {
    const side = Math.floor(Math.min(room, free));
    return { width: side, height: side };
  }
  const share = leastHeightShare(shape);
  if (share === 0) return { width: Math.floor(room), height };
  // Width and height fall evenly, so the front and the deepest arch are the ones to fit.
  const deepest = scene.panels - 2;
  const arches = [0, deepest].map((i) => (height - i * step.height) / share + i * step.width);
  return { width: Math.floor(Math.min(room, ...arches)), height };
}

function checkAgreement(
  sum: number,
  panel: number,
  what: 'width' | 'height',
  path: Path,
  faults: Fault[],
): void {
  if (Math.abs(sum - panel) <= AGREE_MM) return;
  const parts = what === 'width' ? 'width and twice the jamb' : 'head, height and sill';
  faults.push({
    path: [...path, what],
    message: `The window's ${parts} add up to ${mm(sum)}, but the panel's ${what} is ${mm(panel)}. Leave one of them out and it follows from the others.`,
  });
}

function checkFit(
  plan: WindowPlan,
  choice: WindowChoice,
  index: number,
  scene: Scene,
  clear: Clear,
  path: Path,
  faults: Fault[],
): void {
  const { width: panelWidth, height: panelHeight } = scene.panel;
  const which = `The window of panel ${index + 1}`;
  if (plan.width < SMALLEST_WINDOW_MM || plan.height < SMALLEST_WINDOW_MM) {
    faults.push({
      path: 'first' in scene.windows ? [...path, 'step'] : path,
      message: `${which} would be ${mm(plan.width)} wide and ${mm(plan.height)} high; it must keep ${mm(SMALLEST_WINDOW_MM)}. Take a smaller step, fewer panels or a larger front window.`,
    });
    return;
  }
  if (plan.height < leastHeightShare(plan.shape) * plan.width - AGREE_MM) {
    faults.push({
      path: [...path, 'height'],
      message: `${which} is ${mm(plan.height)} high, lower than its own arch of ${mm(leastHeightShare(plan.shape) * plan.width)} on ${mm(plan.width)} width. Make it higher or narrower, or use shape: ellipse.`,
    });
  }
  checkRadius(plan, choice, which, path, faults);
  const jamb = Math.min(plan.x, panelWidth - plan.x - plan.width);
  if (jamb < clear.jamb - AGREE_MM) {
    const said = choice.width !== undefined || choice.jamb !== undefined;
    faults.push({
      path: said ? [...path, 'width'] : ['panel', 'width'],
      message: `${which} is ${mm(plan.width)} wide on a panel of ${mm(panelWidth)}; hinge and visible frame need ${mm(clear.jamb)} at each side. Make it at most ${mm(panelWidth - 2 * clear.jamb)} wide, the panel wider, or the spacing smaller.`,
    });
  }
  const edge = Math.min(plan.y, panelHeight - plan.y - plan.height);
  if (edge < clear.edge - AGREE_MM) {
    const said =
      choice.height !== undefined || choice.head !== undefined || choice.sill !== undefined;
    faults.push({
      path: said ? [...path, 'height'] : ['panel', 'height'],
      message: `${which} leaves ${mm(edge)} ${plan.y < clear.edge ? 'above' : 'below'} it; the frame needs ${mm(clear.edge)}. Make the window lower or the panel higher.`,
    });
  }
}

/** A corner larger than the window would turn it into another shape without a word. */
function checkRadius(
  plan: WindowPlan,
  choice: WindowChoice,
  which: string,
  path: Path,
  faults: Fault[],
): void {
  const largest = Math.min(plan.width, plan.height) / 2;
  if (choice.shape !== 'rounded' || choice.radius <= Math.max(largest, DEFAULTS.radius)) return;
  faults.push({
    path: [...path, 'radius'],
    message: `${which} is ${mm(plan.width)} wide and ${mm(plan.height)} high; corners of ${mm(choice.radius)} do not fit into it. Make the radius at most ${mm(largest)}.`,
  });
}

function checkShrinks(
  front: WindowPlan,
  deep: WindowPlan,
  index: number,
  path: Path,
  faults: Fault[],
): void {
  for (const side of ['width', 'height'] as const) {
    if (deep[side] > front[side] + AGREE_MM) {
      faults.push({
        path: [...path, side],
        message: `The window of panel ${index + 1} is ${mm(deep[side])} in ${side}, more than ${mm(front[side])} in front of it: windows must not grow, or their edges hide behind the panel before.`,
      });
    }
  }
}

const mm = (value: number): string => `${Math.round(value * 100) / 100} mm`;

import type { Book, PanelPlan } from '../book/book.js';
import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { Loose, ProcessLimits, Scene } from '../scene/scene.js';
import type { Family } from '../scenery/family.js';
import type { Attached } from './attached.js';
import { backingPieces } from './backing.js';
import { type Braced, braceWebs } from './brace.js';
import { cutOf, type Drawn, drawElement } from './draw.js';
import { fillEyelets, healDropOuts } from './heal.js';
import { gluableOf, loosePieces, placeMark } from './loose.js';
import { numberTicks } from './number-ticks.js';
import type { Panel } from './panel.js';
import { frameCard, NOTHING_OPENED, type Opened, type Setting } from './place/place.js';
import { pressElements } from './press.js';
import type { Score } from './score.js';
import { stencilsOf } from './stencil-forms.js';

/**
 * Composes one panel: card = frame + bodies - holes. Elements later in the scene stand in front of
 * earlier ones: their bodies close the holes, and hide the scores, of those behind.
 */
export function composePanel(
  scene: Scene,
  book: Book,
  plan: PanelPlan,
  families: ReadonlyMap<string, Family>,
  limits: ProcessLimits,
  opened: Opened = NOTHING_OPENED,
): Panel {
  const setting = { scene, book, plan, limits, opened };
  const drawn = scene.scenery
    .filter((element) => element.panels.includes(plan.number) && element.loose === null)
    .flatMap((element) => drawElement(setting, element, families.get(element.element) as Family));
  const inFront = bodiesInFront(drawn);
  const finished = finishedCard(plan, drawn, inFront, limits);
  const card = pierced(finished.card, frameCard(book, plan), drawn, limits);
  const attached = attachedPieces(setting, families, drawn, card);
  const marks = attached.map((piece) => ({ piece, lines: placeMark(piece) }));
  const { scores, reliefs } = pressElements(setting, card, drawn, inFront);
  return {
    number: plan.number,
    stock: plan.card,
    card,
    scores: [...scores, ...marks.flatMap(scoredMark)],
    reliefs,
    attached,
    guides: [
      ...numberTicks(plan),
      ...marks.flatMap(({ piece, lines }) => (piece.mark === 'guide' ? lines : [])),
    ],
    braces: finished.braces,
    ...(scene.stencils === null
      ? {}
      : { stencils: stencilsOf(reliefs, plan, scene.stencils, limits) }),
    faults: drawn.flatMap(({ growth }) => growth.faults ?? []),
  };
}

/** The card less what is cut through the frame, which keeps clear of its hinges and edges. */
function pierced(
  card: Region,
  frame: Region,
  drawn: readonly Drawn[],
  limits: ProcessLimits,
): Region {
  const cuts = drawn.flatMap(piercedBy).filter(({ contours }) => contours.length > 0);
  if (cuts.length === 0) return card;
  const clear = offset(frame, -limits.scoreClearance);
  return subtract(
    card,
    cuts.map((cut) => intersect(cut, clear)),
  );
}

/** What the element cuts through the frame of itself, and the holes of parts that are to be cut. */
function piercedBy({ element, growth, works }: Drawn): Region[] {
  const own = growth.pierced ? [growth.pierced] : [];
  const isAsked = element.treat.some(({ work }) => work === 'cut');
  return isAsked ? [...own, intersect(growth.holes, works.cut)] : own;
}

/** What is cut by itself and glued to the panel: loose elements, then backings. */
function attachedPieces(
  setting: Setting,
  families: ReadonlyMap<string, Family>,
  drawn: readonly Drawn[],
  card: Region,
): Attached[] {
  const { scene, plan } = setting;
  const here = ({ panels }: { panels: readonly number[] }) => panels.includes(plan.number);
  const loose = scene.scenery.filter(here).filter((element) => element.loose !== null);
  const backings = scene.backings.filter(here);
  if (loose.length + backings.length === 0) return [];
  const gluable = gluableOf(card);
  return [
    ...loose.flatMap((element) => {
      const family = families.get(element.element) as Family;
      return loosePieces(setting, element, element.loose as Loose, family, gluable);
    }),
    ...backings.flatMap((backing) => backingPieces(setting, backing, drawn, card, gluable)),
  ];
}

/** Marks are scored from the face that the piece is glued to, which then hides them. */
function scoredMark({ piece, lines }: { piece: Attached; lines: readonly Line[] }): Score[] {
  if (piece.mark !== 'score') return [];
  const face = piece.place === 'behind' ? { face: 'back' as const } : {};
  return lines.map((line) => ({ line, kind: 'detail', ...face }));
}

/** The card as it is cut: sound, or with what is not sound left for the check to report. */
function finishedCard(
  plan: PanelPlan,
  drawn: readonly Drawn[],
  inFront: readonly Region[],
  limits: ProcessLimits,
): Braced {
  if (plan.window === null) return { card: plan.blank, braces: [] };
  const window = plan.window.outline;
  const cut = fillEyelets(cutCard(plan.blank, window, drawn, inFront), limits);
  const { card, braces } = braceWebs(healDropOuts(cut, plan, drawn, limits), window, limits);
  return { card: fillEyelets(card, limits), braces };
}

/** For each element all bodies that stand in front of it. */
function bodiesInFront(drawn: readonly Drawn[]): Region[] {
  const inFront: Region[] = new Array(drawn.length);
  let front: Region = EMPTY_REGION;
  for (let i = drawn.length - 1; i >= 0; i--) {
    inFront[i] = front;
    if (i > 0) front = union([front, drawn[i].standing]);
  }
  return inFront;
}

function cutCard(
  blank: Region,
  window: Region,
  drawn: readonly Drawn[],
  inFront: readonly Region[],
): Region {
  const frame = subtract(blank, [window]);
  const cut = drawn.map(cutOf);
  const bodies = cut.map(({ body }) => intersect(body, window));
  const holes = cut.map((own, i) => subtract(intersect(own.holes, window), [inFront[i]]));
  return subtract(union([frame, ...bodies]), holes);
}

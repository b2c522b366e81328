import { polygon, regionOf } from '../geometry/pen.js';
import type { Region } from '../geometry/types.js';
import { FLAP_SETBACK_MM } from './blank.js';
import type { FoldKind, SpinePlan } from './book.js';
import { type Fault, PlanError } from './fault.js';

/** A part that ends in a lapped joint stops this short of the fold that the next part carries on
 * from, so that the fold can close. */
const JOINT_GAP_MM = 0.5;
/** How much a tab or lap is drawn in at its free corners. */
const CORNER_CUT_MM = 3;

/** One fold of a strip as it lies flat, front end at x = 0, seen from outside. */
export interface StripFold {
  readonly x: number;
  readonly kind: FoldKind;
  /** 0 at the front tab, `faces` at the back tab. Even folds stand at a panel. */
  readonly index: number;
}

/** A strip, or one part of a strip that is longer than its sheet. */
export interface StripPart {
  /** First and last face in this part, counted from 1 at the front. */
  readonly firstFace: number;
  readonly lastFace: number;
  readonly width: number;
  readonly height: number;
  readonly outline: Region;
  readonly folds: readonly StripFold[];
}

/**
 * A concertina strip cut into parts no longer than `stockMm`. Parts meet in a lap glued inside the
 * last face of the part before, always a back face: front faces carry the panels' flaps.
 * @throws PlanError when not even two faces fit the stock.
 */
export function stripParts(spine: SpinePlan, height: number, stockMm: number): StripPart[] {
  const { pitchMm, tabMm, faces } = spine;
  const lap = pitchMm - FLAP_SETBACK_MM;
  const parts: StripPart[] = [];
  let firstFace = 1;
  while (firstFace <= faces) {
    const lead = firstFace === 1 ? tabMm : lap;
    let lastFace = faces;
    if (lead + (faces - firstFace + 1) * pitchMm + tabMm > stockMm) {
      const fit = Math.floor((stockMm - lead) / pitchMm);
      lastFace = firstFace - 1 + fit - (fit % 2);
      // The last part needs two faces and the tab of its own.
      lastFace = Math.min(lastFace, faces - 2);
    }
    if (lastFace < firstFace) throw new PlanError([tooLongFor(spine, stockMm)]);
    parts.push(stripPart(spine, height, firstFace, lastFace, lead));
    firstFace = lastFace + 1;
  }
  return parts;
}

function stripPart(
  spine: SpinePlan,
  height: number,
  firstFace: number,
  lastFace: number,
  lead: number,
): StripPart {
  const { pitchMm, tabMm, faces } = spine;
  const start = firstFace - 1;
  const foldX = (index: number) => lead + (index - start) * pitchMm;
  const isEnd = lastFace === faces;
  const width = isEnd ? foldX(faces) + tabMm : foldX(lastFace) - JOINT_GAP_MM;
  const folds: StripFold[] = [];
  for (let index = start; index <= (isEnd ? faces : lastFace - 1); index++) {
    folds.push({ x: foldX(index), kind: foldKind(spine, index), index });
  }
  return {
    firstFace,
    lastFace,
    width,
    height,
    outline: stripOutline(width, height, isEnd),
    folds,
  };
}

/** The tabs lie flat behind panel 1 and behind the backdrop, so both fold away as mountains. */
function foldKind(spine: SpinePlan, index: number): FoldKind {
  if (index === 0 || index === spine.faces) return 'mountain';
  return spine.folds[index - 1];
}

/** A rectangle whose glued ends have their corners cut; a joint's end stays square. */
function stripOutline(width: number, height: number, tabAtEnd: boolean): Region {
  const c = CORNER_CUT_MM;
  const end = tabAtEnd
    ? [
        { x: width - c, y: 0 },
        { x: width, y: c },
        { x: width, y: height - c },
        { x: width - c, y: height },
      ]
    : [
        { x: width, y: 0 },
        { x: width, y: height },
      ];
  return regionOf(
    polygon([{ x: c, y: 0 }, ...end, { x: c, y: height }, { x: 0, y: height - c }, { x: 0, y: c }]),
  );
}

function tooLongFor(spine: SpinePlan, stockMm: number): Fault {
  const need = 2 * spine.pitchMm + spine.tabMm;
  return {
    path: ['spine'],
    message: `The spine cannot be cut from this card: two faces and a tab take ${need.toFixed(1)} mm, and the sheet leaves ${stockMm.toFixed(1)} mm. Take a larger sheet, or a smaller spacing.`,
  };
}

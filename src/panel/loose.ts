import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { shortestBridge } from '../geometry/bridge.js';
import { linesInside, outlineLines } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { lineLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import type { Region } from '../geometry/types.js';
import type { Heal, Loose, ProcessLimits, SceneElement } from '../scene/scene.js';
import type { Family } from '../scenery/family.js';
import type { Attached } from './attached.js';
import { braceWebs } from './brace.js';
import { type Drawn, drawElement } from './draw.js';
import { fillEyelets } from './heal.js';
import type { Setting } from './place/place.js';
import { SHORTEST_SCORE_MM } from './press.js';
import { EVERYWHERE } from './works.js';

/** Glue and marks keep this far from the edges of both cards, so that neither shows. */
export const GLUE_MARGIN_MM = 1;

/**
 * The loose pieces of one element in one panel.
 * @param gluable where the panel's finished card takes glue.
 */
export function loosePieces(
  setting: Setting,
  element: SceneElement,
  loose: Loose,
  family: Family,
  gluable: Region,
): Attached[] {
  const { plan, limits } = setting;
  return drawElement(setting, element, family).map((drawn): Attached => {
    const card = cardOf(drawn, limits);
    const clear = offset(card, -limits.scoreClearance);
    const details = linesInside(drawn.growth.scores, clear);
    return {
      name: pieceName(element.id, plan.number, drawn.key),
      panel: plan.number,
      kind: 'loose',
      place: loose.place,
      mount: loose.mount,
      standOffMm: loose.standOff,
      stock: loose.card ?? plan.card,
      copies: loose.copies,
      card,
      scores: details
        .filter((line) => lineLength(line) >= SHORTEST_SCORE_MM)
        .map((line) => ({ line, kind: 'detail' as const })),
      reliefs: drawn.growth.reliefs
        .map((relief) => ({ ...relief, region: intersect(relief.region, clear) }))
        .filter(({ region }) => region.contours.length > 0),
      glue: glueZone(card, gluable),
      mark: loose.mark,
    };
  });
}

/** Where a card takes glue, clear of its edges. */
export const gluableOf = (card: Region): Region => offset(card, -GLUE_MARGIN_MM);

/** Where a piece is glued: it lies on its panel's gluable card, clear of its own edges too. */
export const glueZone = (card: Region, gluable: Region): Region =>
  intersect(gluableOf(card), gluable);

export const pieceName = (id: string, panel: number, key: string): string =>
  [id.replaceAll('/', '-'), `p${panel}`, ...(key === '' ? [] : [key])].join('-');

/** The element as a card by itself. */
function cardOf({ element, growth }: Drawn, limits: ProcessLimits): Region {
  const drawn = fillEyelets(subtract(growth.body, [growth.holes]), limits);
  const whole = inOnePiece(drawn, element.heal, limits);
  return braceWebs(whole, EVERYWHERE, limits).card;
}

function inOnePiece(card: Region, heal: Heal, limits: ProcessLimits): Region {
  const [largest, ...others] = components(card);
  if (others.length === 0 || heal === 'error') return card;
  if (heal === 'drop') return largest;
  return others.reduce((held, part) => {
    const bridge = shortestBridge(part, held, limits.smallestWeb);
    return bridge === null ? held : union([held, part, bridge.bridge]);
  }, largest);
}

/** The glue zone's outline, to be found again on panel and piece. */
export const placeMark = ({ glue }: Pick<Attached, 'glue'>) => outlineLines(glue);

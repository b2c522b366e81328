import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { shortestBridge } from '../geometry/bridge.js';
import { linesInside, outlineLines } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { lineLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { rectangle } from '../geometry/primitives.js';
import type { Region } from '../geometry/types.js';
import type { Heal, Loose, ProcessLimits, SceneElement } from '../scene/scene.js';
import type { Family } from '../scenery/family.js';
import type { Attached } from './attached.js';
import { braceWebs } from './brace.js';
import { type Drawn, drawElement } from './draw.js';
import { fillEyelets } from './heal.js';
import type { Setting } from './place/place.js';

/** Glue and marks keep this far from the edges of both cards, so that neither shows. */
export const GLUE_MARGIN_MM = 1;
/** Shorter scraps of score are not worth a tool move. */
const SHORTEST_SCORE_MM = 1;
const FAR_MM = 5000;
const EVERYWHERE = rectangle(-FAR_MM, -FAR_MM, 2 * FAR_MM, 2 * FAR_MM);

/** The loose pieces of one element in one panel, glued to that panel's finished card. */
export function loosePieces(
  setting: Setting,
  element: SceneElement,
  loose: Loose,
  family: Family,
  panelCard: Region,
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
      glue: glueZone(card, panelCard),
      mark: loose.mark,
    };
  });
}

/** Where two cards lie on each other, clear of the edges of both. */
export const glueZone = (card: Region, panelCard: Region): Region =>
  intersect(offset(card, -GLUE_MARGIN_MM), offset(panelCard, -GLUE_MARGIN_MM));

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

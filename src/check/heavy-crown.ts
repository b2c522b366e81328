import { momentsOf } from '../geometry/moments.js';
import { hangings, type Link, type Part } from '../geometry/width/hangings.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Wider necks carry whatever a window has room for. */
const WIDEST_NECK_MM = 8;
/**
 * Card that a neck may carry: area times its lever for each millimetre of the neck's width, mm2. A
 * crown of 12 cm2 whose middle stands 30 mm over a trunk of 4 mm comes to 9,000. Starting value,
 * common practice, no source.
 */
const MOST_MM2 = 9000;

/** A heavy crown on a slender neck curls out of its panel, however sound the neck's width is. */
export const heavyCrown: Rule = ({ panels, pieces }) =>
  panels.flatMap(({ card, number }, i) => {
    const { parts, links } = hangings(card, WIDEST_NECK_MM);
    const loads = links.map((link) => ({ link, load: loadOn(link, parts) }));
    const worst = loads.reduce((p, q) => (q.load > p.load ? q : p), { link: links[0], load: 0 });
    if (worst.load <= MOST_MM2) return [];
    const [{ at }] = worst.link.webs;
    const finding: Finding = {
      rule: 'heavy-crown',
      severity: 'hint',
      where: { piece: pieces[i].name, x: rounded(at.x), y: rounded(at.y) },
      measured: Math.round(worst.load),
      wanted: MOST_MM2,
      unit: 'mm2',
      message: `A neck of panel ${number}, ${rounded(worst.link.widthMm)} mm wide, ${rounded(at.x)} mm from its left and ${rounded(at.y)} mm from its top, carries much card far out: ${Math.round(worst.load)} mm2 of area times lever for each millimetre of its width.`,
      cure: 'Tie the crown to jamb or head, make the trunk stouter, or turn the grain to run along it.',
    };
    return [finding];
  });

/** Area held by a link times how far from it that balances, for each millimetre of its width. */
function loadOn({ holds, webs, widthMm }: Link, parts: readonly Part[]): number {
  if (holds.length === 0 || widthMm <= 0) return 0;
  const neck = webs[0].at;
  return holds.reduce((sum, part) => {
    const moments = momentsOf(parts[part].region);
    if (moments === null) return sum;
    const { areaMm2, centroid } = moments;
    return sum + (areaMm2 * Math.hypot(centroid.x - neck.x, centroid.y - neck.y)) / widthMm;
  }, 0);
}

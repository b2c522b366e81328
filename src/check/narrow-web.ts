import { narrowWebs } from '../geometry/width/webs.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Webs down to this share of the process's smallest can be cut by a careful hand; narrower ones,
 * or ones narrower than two calipers, tear. Common practice, no source. */
const TEARING_SHARE = 0.5;
const TEARING_CALIPERS = 2;

/** Webs that were thickened when the panel was composed: no harm done, but the drawing changed. */
export const bracedWeb: Rule = ({ panels, pieces, limits }) =>
  panels.flatMap((panel, i) =>
    panel.braces.map((web): Finding => {
      const [x, y, width] = [rounded(web.at.x), rounded(web.at.y), rounded(web.widthMm)];
      return {
        rule: 'braced-web',
        severity: 'hint',
        where: { piece: pieces[i].name, x, y },
        measured: width,
        wanted: limits.smallestWeb,
        unit: 'mm',
        message: `A web of ${pieces[i].name} came out ${width} mm wide, ${x} mm from its left and ${y} mm from its top, and was thickened to the ${rounded(limits.smallestWeb)} mm that this process holds.`,
        cure: 'Look at it in the panel; move an element or take another seed if it shows.',
      };
    }),
  );

/** Card between two cuts that is narrower than the process allows. */
export const narrowWeb: Rule = ({ pieces, limits }) =>
  pieces.flatMap((piece) => {
    const tearing = Math.max(
      limits.smallestWeb * TEARING_SHARE,
      TEARING_CALIPERS * piece.stock.caliperMm,
    );
    return narrowWebs(piece.card, limits.smallestWeb)
      .filter((web) => web.kind === 'neck')
      .map((web): Finding => {
        const x = rounded(web.at.x);
        const y = rounded(web.at.y);
        const width = rounded(web.widthMm);
        return {
          rule: 'narrow-web',
          severity: web.widthMm < tearing ? 'error' : 'warning',
          where: { piece: piece.name, x, y },
          measured: width,
          wanted: limits.smallestWeb,
          unit: 'mm',
          message: `A web of ${piece.name} is ${width} mm wide over ${rounded(web.lengthMm)} mm, ${x} mm from its left and ${y} mm from its top; this process holds ${rounded(limits.smallestWeb)} mm.`,
          cure: 'Make the element larger or move it, take another seed, or cut by a finer process.',
        };
      });
  });

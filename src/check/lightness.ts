import { lightnessOf } from '../scene/colour.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Neighbouring cards nearer in CIE lightness than this let silhouettes drown. Common practice, no
 * source. */
const LEAST_STEP = 8;

/** Neighbouring cards should step in lightness. */
export const lightnessSteps: Rule = ({ book }) => {
  const findings: Finding[] = [];
  for (let i = 1; i < book.panels.length; i++) {
    const front = book.panels[i - 1].card;
    const deep = book.panels[i].card;
    const step = Math.abs(lightnessOf(front.colour) - lightnessOf(deep.colour));
    if (step >= LEAST_STEP) continue;
    findings.push({
      rule: 'lightness',
      severity: 'hint',
      where: { scene: ['cards'] },
      measured: rounded(step),
      wanted: LEAST_STEP,
      unit: 'L*',
      message: `The cards of panels ${i} and ${i + 1} differ by ${rounded(step)} in lightness: the silhouette of panel ${i} drowns.`,
      cure: 'Choose a lighter or darker card for one of them.',
    });
  }
  return findings;
};

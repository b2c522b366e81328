import { lightnessOf } from '../scene/colour.js';
import { type Rule, rounded } from './finding.js';

/** Neighbouring cards nearer in CIE lightness than this let silhouettes drown. Common practice, no
 * source. */
const LEAST_STEP = 8;

/** Neighbouring cards should step in lightness. Told once a book, of the least step. */
export const lightnessSteps: Rule = ({ book }) => {
  const steps = book.panels.slice(1).map((deep, i) => ({
    front: i + 1,
    step: Math.abs(lightnessOf(book.panels[i].card.colour) - lightnessOf(deep.card.colour)),
  }));
  const small = steps.filter(({ step }) => step < LEAST_STEP).sort((a, b) => a.step - b.step);
  if (small.length === 0) return [];
  const [{ front, step }] = small;
  const others = small.length === 1 ? '' : ` (and ${small.length - 1} other pairs by too little)`;
  return [
    {
      rule: 'lightness',
      severity: 'hint',
      where: { scene: ['cards'] },
      measured: rounded(step),
      wanted: LEAST_STEP,
      unit: 'L*',
      message: `The cards of panels ${front} and ${front + 1} differ by ${rounded(step)} in lightness${others}: silhouettes drown in the card behind.`,
      cure: 'Choose a lighter or darker card for one of the two, or fewer panels for the same range.',
    },
  ];
};

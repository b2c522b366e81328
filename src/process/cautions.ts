import type { Process } from './process.js';

const FIRST =
  "The machine's manual, local law and codes, and trained staff come first; where they differ from " +
  'this, they win.';
const BY_HAND =
  'By hand: a cutting mat, a safety ruler, the other hand behind the blade. Used blades go into a ' +
  'sharps box.';
const CHILDREN = 'Supervise children. Small parts and cut edges are not for the youngest.';

const OWN: Readonly<Record<Process['kind'], readonly string[]>> = {
  laser: [
    'Card burns. Never leave a running laser, not for a moment; watch for flame and stop the beam at once.',
    'One sheet at a time, bed and tray clear of offcuts, an extinguisher to hand and people who can use it.',
    'Extract the fumes. Never cut PVC, unknown plastics, or foiled, coated or laminated card.',
    'Never defeat an interlock or open a cover while it runs.',
  ],
  knife: [
    'Keep hands, hair and sleeves clear while it runs. Change blades with the machine off, and cap them.',
  ],
  press: [
    'Keep fingers clear of the rollers and of the edges of dies. Stop the press before you reach in.',
  ],
};

/** What can hurt, said before any work starts; no legal advice. After any machine, hands cut too. */
export const cautionsFor = ({ kind }: Pick<Process, 'kind'>): readonly string[] => [
  FIRST,
  ...OWN[kind],
  BY_HAND,
  CHILDREN,
];

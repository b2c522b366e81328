import type { ProcessName } from '../scene/scene.js';

/** They come before anything that is said here. */
const FIRST =
  "Your machine's manual, local law and codes and the people trained on it come first; where they differ from this, they win.";

/** The usual cautions, shown with whatever is made for a process; no legal advice. */
export const CAUTIONS: Readonly<Record<ProcessName, readonly string[]>> = {
  laser: [
    FIRST,
    'Card burns. Never leave a running laser, not for a moment; watch for flame and stop the beam at once.',
    'One sheet at a time, bed and tray clear of offcuts, an extinguisher to hand and people who can use it.',
    'Extract the fumes. Never cut PVC, unknown plastics, or foiled, coated or laminated card.',
    'Never defeat an interlock or open a cover while it runs.',
  ],
  knife: [
    FIRST,
    'Keep hands, hair and sleeves clear while it runs. Change blades with the machine off, and cap them.',
    'By hand: a cutting mat, a safety ruler, the other hand behind the blade. Used blades go into a sharps box.',
    'Supervise children. Small parts and cut edges are not for the youngest.',
  ],
  press: [
    FIRST,
    'Keep fingers clear of the rollers and of the edges of dies. Stop the press before you reach in.',
    'By hand: a cutting mat, a safety ruler, the other hand behind the blade. Used blades go into a sharps box.',
    'Supervise children. Small parts and cut edges are not for the youngest.',
  ],
};

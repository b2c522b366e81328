import type { Process } from '../../process/process.js';

const BURNS =
  'Card burns. Never leave a running laser alone, for any time; extract the fumes; keep an ' +
  'extinguisher to hand; cut single sheets on a bed clear of offcuts.';
const FUMES = 'Never cut PVC, vinyl, foil, coated card or any plastic you cannot name.';
const CUTS =
  'Blades cut fingers: use a mat and a safety ruler, keep the other hand behind the blade, cover ' +
  'it when idle.';
const CRUSHES = 'A press crushes: keep hands and cuffs out of the rollers.';
const CHILDREN =
  'Supervise children, and mind that small parts and cut edges are not for the very young.';
const FIRST =
  "The machine's manual, local law and codes, and trained staff come before anything written here.";

/** What can hurt, said before any work starts. Parts are freed and trimmed by hand after any process. */
export function cautionsFor({ kind }: Process): readonly string[] {
  const own = { knife: [], laser: [BURNS, FUMES], press: [CRUSHES] }[kind];
  return [...own, CUTS, CHILDREN, FIRST];
}

import { pitchFor } from '../book/spine.js';
import { type Rule, rounded } from './finding.js';

/** Between these angles a concertina stands by itself. Common practice, no source. */
const LEAST_DEG = 60;
const MOST_DEG = 100;

/** A spine pulled too flat goes slack; one too closed will not stay open at its spacing. */
export const standingAngle: Rule = ({ scene, book }) => {
  const { angleDeg, pitchMm } = book.spine;
  if (angleDeg >= LEAST_DEG && angleDeg <= MOST_DEG) return [];
  const flat = angleDeg > MOST_DEG;
  const wanted = flat ? MOST_DEG : LEAST_DEG;
  const pitch = rounded(pitchFor(book.spacing, wanted));
  const asked = scene.spine.angleDeg !== undefined;
  return [
    {
      rule: 'open-angle',
      severity: 'warning',
      where: { scene: ['spine'] },
      measured: rounded(angleDeg),
      wanted,
      unit: 'deg',
      message: `At a spacing of ${rounded(book.spacing)} mm and a pitch of ${rounded(pitchMm)} mm the spine stands open at ${rounded(angleDeg)} degrees: ${flat ? 'so flat that it goes slack' : 'so closed that it springs shut'}.`,
      cure: asked
        ? `Ask for an angle from ${LEAST_DEG} to ${MOST_DEG} degrees, or leave it out.`
        : `Make the pitch ${flat ? 'at least' : 'at most'} ${pitch} mm, or leave it out.`,
    },
  ];
};

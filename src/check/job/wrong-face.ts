import { type Face, type Layers, pieceLayers } from '../../process/layers.js';
import type { Process } from '../../process/process.js';
import type { Finding } from '../finding.js';
import type { JobRule } from './job-rule.js';

const FACES: readonly Face[] = ['front', 'back'];

/**
 * Work that belongs on a face the process does not reach. It is run from the other face all the
 * same: relief then goes the wrong way, and a groove lies inside its fold.
 */
export const wrongFace: JobRule = ({ sheet }, process) => {
  const missing = FACES.filter((face) => !sheet.faces.includes(face));
  // Copies are alike.
  const first = sheet.placements.filter(({ copy }) => copy === 1);
  return first.flatMap(({ piece }) =>
    missing.flatMap((face) =>
      wrongIn({ piece: piece.name, sheet: sheet.name }, face, pieceLayers(piece, [face]), process),
    ),
  );
};

function wrongIn(
  where: { readonly piece: string; readonly sheet: string },
  face: Face,
  { emboss, fold }: Layers,
  process: Process,
): Finding[] {
  const { piece } = where;
  const other = face === 'back' ? 'front' : 'back';
  const common = { where, wanted: 0, unit: 'parts' } as const;
  const relief: Finding = {
    ...common,
    rule: 'wrong-face',
    severity: 'error',
    measured: emboss.length,
    message: `${emboss.length} outlines or strokes of relief of ${piece} belong on its ${face}, but this process works the ${other} only: they would come out the wrong way.`,
    cure: `Let the process work the ${face} too, ${face === 'back' ? 'sink them ("frame: sink")' : 'raise them ("frame: raise")'} instead, or have them pressed by "stencils".`,
  };
  const folds: Finding = {
    ...common,
    rule: 'wrong-face',
    severity: 'warning',
    measured: fold.length,
    message: `${fold.length} folds of ${piece} belong on its ${face}, outside the fold, but this process works the ${other} only: the card may crack there.`,
    cure: 'Let the process work both faces or perforate folds; for thin card, after a trial, give the spine "scoring: front".',
  };
  const goesThrough = process.folds.how === 'perforation';
  return [
    ...(emboss.length > 0 ? [relief] : []),
    ...(fold.length > 0 && !goesThrough ? [folds] : []),
  ];
}
